import { labFromCss, labFromHex, hexFromLab, linearFromLab } from '../../server/colour/spaces.ts';
import { difference } from '../../server/colour/difference.ts';
import { between, chanceOf, oneOf, seedFor, shuffled } from '../chance.ts';
import type { Chance } from '../chance.ts';
import { drawings } from '../drawing/catalogue.ts';
import type { Drawing } from '../drawing/drawing.ts';
import { patternOf } from '../paper/paper-side.ts';
import type { PaperSide } from '../paper/paper-side.ts';
import type { PaperPad } from './paper-pad.ts';
import { SHEET } from './paper-pad.ts';

/** The few colours of a pad: two light ones that papers have as ground, then the others. */
export interface Story {
  readonly grounds: readonly string[];
  readonly inks: readonly string[];
}

/**
 * A pad of made-up papers: some drawings come in two or three colourways, two sides are tonal, one in
 * eight papers is kraft, each other drawing comes once.
 *
 * Takes       a seed, the story (or none: one is made up), and how many sheets.
 * Gives       the same pad for the same arguments.
 */
export function makePad(seed: number, story = makeStory(seed), sheets = 6): PaperPad {
  const chance = chanceOf(seedFor(seed, 'pad'));
  const sides: Omit<PaperSide, 'id'>[] = [];
  const left = shuffled(chance, drawings);
  const sets = Math.max(1, Math.round(sheets / 3));
  const tonal = Math.max(1, Math.round(sheets / 6));
  for (let set = 0; set < sets; set++) {
    const print = printOf(left.pop()!, chance);
    const ways = set === 0 && sheets > 4 ? 3 : 2;
    for (let way = 0; way < ways; way++) sides.push(coloured(print, story, chance));
  }
  for (let wash = 0; wash < tonal; wash++) sides.push(washed(story, chance, wash));
  while (sides.length < 2 * sheets) {
    if (left.length === 0) left.push(...shuffled(chance, drawings));
    sides.push(coloured(printOf(left.pop()!, chance), story, chance));
  }
  return { name: `Pad ${seed}`, sheet: SHEET, sheets: dealt(sides.slice(0, 2 * sheets), chance) };
}

/** Sheets in any order, but never one pattern on both faces of a sheet. */
function dealt(sides: readonly Omit<PaperSide, 'id'>[], chance: Chance): PaperPad['sheets'] {
  const pattern = (side: Omit<PaperSide, 'id'>): string => patternOf({ id: '', ...side });
  for (;;) {
    const order = shuffled(chance, sides);
    const fronts = order.slice(0, sides.length / 2);
    const backs = order.slice(sides.length / 2);
    if (fronts.some((front, index) => pattern(front) === pattern(backs[index]!))) continue;
    return fronts.map((front, index) => ({
      front: { id: `sheet-${index + 1}-front`, ...front },
      back: { id: `sheet-${index + 1}-back`, ...backs[index]! },
    }));
  }
}

interface PrintWithDrawing {
  readonly drawing: Drawing;
  readonly seed: number;
  readonly repeat: number;
}

function printOf(drawing: Drawing, chance: Chance): PrintWithDrawing {
  const [least, most] = drawing.repeat;
  return {
    drawing,
    seed: Math.floor(1e6 * chance()),
    repeat: Math.round(10 * between(chance, least, most)) / 10,
  };
}

/** Lays colours of the story into the slots; no two of one side look alike. */
function coloured(
  { drawing, seed, repeat }: PrintWithDrawing,
  story: Story,
  chance: Chance,
): Omit<PaperSide, 'id'> {
  const kraft = chance() < 1 / 8;
  const dark = !kraft && chance() < 0.3;
  const ground = kraft ? KRAFT : oneOf(chance, dark ? story.inks : story.grounds);
  const colours = [ground];
  for (const hex of shuffled(chance, [...story.inks, ...story.grounds])) {
    if (colours.length === drawing.slots) break;
    if (colours.every((other) => apart(hex, other) >= 14)) colours.push(hex);
  }
  while (colours.length < drawing.slots)
    colours.push(colours[1 + Math.floor((colours.length - 1) * chance())] ?? ground);
  return {
    design: { kind: 'print', drawing: drawing.name, seed, repeat, cutAt: [chance(), chance()] },
    colours,
    stock: kraft ? 'kraft' : 'smooth',
  };
}

const KRAFT = '#b58d62';

function washed(story: Story, chance: Chance, index: number): Omit<PaperSide, 'id'> {
  const deep = labFromHex(oneOf(chance, story.inks));
  const tint = (l: number, part: number): string =>
    hexFromLab({ l, a: deep.a * part, b: deep.b * part });
  const lightest = Math.min(93, deep.l + 34);
  return {
    design: {
      kind: 'wash',
      texture: index % 2 === 0 ? 'watercolour' : 'linen',
      seed: Math.floor(1e6 * chance()),
    },
    colours: [tint(lightest, 0.35), tint(lightest - 9, 0.6), tint(lightest - 19, 0.85)],
    stock: 'smooth',
  };
}

/** Two light grounds and six inks that differ clearly from each other. */
function makeStory(seed: number): Story {
  const chance = chanceOf(seedFor(seed, 'story'));
  const hue = 360 * chance();
  const grounds = [
    inGamut(between(chance, 0.95, 0.985), between(chance, 0.004, 0.02), 60 + 40 * chance()),
    inGamut(between(chance, 0.87, 0.92), between(chance, 0.02, 0.05), hue + 360 * chance()),
  ];
  const inks: string[] = [];
  while (inks.length < 6) {
    const k = inks.length;
    const light = k === 0 ? between(chance, 0.28, 0.38) : between(chance, 0.42, 0.82);
    const colourful = k === 5 ? between(chance, 0.01, 0.03) : between(chance, 0.06, 0.16);
    const ink = inGamut(light, colourful, hue + 60 * k + between(chance, -25, 25));
    if ([...grounds, ...inks].every((other) => apart(ink, other) >= 14)) inks.push(ink);
  }
  return { grounds, inks };
}

function apart(one: string, other: string): number {
  return difference(labFromHex(one), labFromHex(other));
}

/** Less colourful, if need be, until sRGB can show it. */
function inGamut(light: number, colourful: number, hue: number): string {
  const lab = labFromCss(`oklch(${light} ${colourful} ${hue % 360})`);
  const { r, g, b } = linearFromLab(lab);
  const fits = [r, g, b].every((channel) => channel >= 0 && channel <= 1);
  return fits ? hexFromLab(lab) : inGamut(light, 0.92 * colourful, hue);
}
