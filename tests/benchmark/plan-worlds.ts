import type { Lab } from '../../server/colour/lab.ts';
import type { PaletteColour } from '../../server/colour/palette.ts';
import type { PlacedPiece, Slot } from '../../server/cutting/piece.ts';
import { catalogue } from '../../server/layouts/catalogue.ts';
import type { Layout } from '../../server/layouts/layout.ts';
import { papersOf } from '../../server/layouts/papers-of.ts';
import { INCH, units } from '../../server/lengths/length.ts';
import type { Sheet, Side } from '../../server/pad/pad.ts';
import type { PlanAsk } from '../../server/plan/ask.ts';
import { chance } from '../../server/plan/network/local-search.ts';
import type { Supply } from '../../server/supplies/supply.ts';

/**
 * Worlds of chance for the benchmark: a pad whose sides draw on a story of six colours (with the
 * noise of reading), cards from our catalogue, and slots that give each card its papers. The places
 * of the pieces on the sheets play no part in the plan and are left at the corner.
 */
export interface WorldSize {
  readonly designs: number;
  readonly copies: number;
  readonly slots: number;
  readonly cards: number;
}

type Random = () => number;

export function worldOf(seed: number, size: WorldSize): PlanAsk {
  const random = chance(seed);
  const story = storyOf(random);
  const sheets = Array.from({ length: size.designs }, (_, at): Sheet => ({
    id: `sheet-${at + 1}`,
    label: `Sheet ${at + 1}`,
    copies: size.copies,
    front: sideOf(`sheet-${at + 1}-front`, story, random),
    back: sideOf(`sheet-${at + 1}-back`, story, random),
  }));
  const inch = units(6 * INCH);
  // The first twenty alone, so that a new design does not change the worlds.
  const layouts = catalogue.filter((layout) => layout.id.endsWith('-us')).slice(0, 20);
  const slots: PlacedPiece[][] = Array.from({ length: size.slots }, () => []);
  const cards = Array.from({ length: size.cards }, (_, at) => {
    const layout = pick(layouts, random);
    deal(slots, at + 1, layout, random);
    return { number: at + 1, layout };
  });
  return {
    pad: { id: 'pad', name: 'Pad', sheetSize: { width: inch, height: inch }, sheets },
    cards,
    scheme: {
      sheet: { width: inch, height: inch },
      slots: slots.map((pieces, at): Slot => ({
        id: `slot-${at + 1}`,
        pieces,
        cuts: { kind: 'rest', size: { width: inch, height: inch } },
      })),
      fewestSheets: size.slots,
      proven: false,
    },
    supplies: suppliesOf(story, random),
    pins: [],
    without: [],
    taste: { contrast: 0, busy: 0, bold: 0 },
    seed,
    limit: { steps: 1e9 },
  };
}

/** Six colours that can be told apart, one of them light, as printed pads have. */
export function storyOf(random: Random): Lab[] {
  const turn = random() * 2 * Math.PI;
  const hues = [0, 0.6, 2.2, 2.9, 4.2].map((hue) => turn + hue + 0.4 * random());
  const colours = hues.map((hue): Lab => {
    const chroma = 12 + 45 * random();
    return {
      l: 28 + 58 * random(),
      a: chroma * Math.cos(hue),
      b: chroma * Math.sin(hue),
    };
  });
  const tint = 8 * random();
  return [{ l: 92 + 5 * random(), a: 0, b: tint }, ...colours];
}

/** A side printed with two to five colours of the story on one of them. */
export function sideOf(id: string, story: readonly Lab[], random: Random): Side {
  const order = [...story].sort(() => random() - 0.5);
  const ground = random() < 0.5 ? story[0]! : order[0]!;
  const count = 1 + Math.floor(random() * 4);
  const accents = order.filter((lab) => lab !== ground).slice(0, count);
  const weights = [1 + 2 * random(), ...accents.map(() => 0.2 + random())];
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const noisy = (lab: Lab): Lab => ({
    l: lab.l + gauss(random),
    a: lab.a + gauss(random),
    b: lab.b + gauss(random),
  });
  const colours = [ground, ...accents].map((lab, at): PaletteColour => ({
    lab: noisy(lab),
    share: weights[at]! / total,
    role: at === 0 ? 'ground' : 'accent',
    uncertainty: 1,
  }));
  return {
    id,
    photo: 'photo',
    corners: [
      { x: 0, y: 0 },
      { x: 1, y: 0 },
      { x: 1, y: 1 },
      { x: 0, y: 1 },
    ],
    palette: { colours: [...colours].sort((a, b) => b.share - a.share), tonal: false },
    pattern: {
      repeat: null,
      scale: 2 * 2 ** (4 * random()),
      direction: pick(['none', 'none', 'two-way', 'one-way'] as const, random),
      up: 0,
      busyness: random() < 0.2 ? 0.05 : 0.15 + 0.75 * random(),
      descriptor: [],
    },
    confidence: 1,
    notes: [],
  };
}

function suppliesOf(story: readonly Lab[], random: Random): Supply[] {
  const colours: Lab[] = [
    { l: 96, a: 0, b: 0 },
    { l: 93, a: 0, b: 9 },
    { l: 70, a: 7, b: 22 },
    { l: 30, a: 0, b: -2 },
    ...story.slice(1, 4).map((lab) => ({ ...lab, l: lab.l + 2 * gauss(random) })),
  ];
  return colours.map((lab, at) => ({
    id: `cardstock-${at + 1}`,
    kind: 'cardstock',
    name: `Cardstock ${at + 1}`,
    lab,
    uncertainty: 1,
    photo: null,
    sheets: null,
  }));
}

/** Gives every paper of a card a slot of its own. */
function deal(slots: PlacedPiece[][], card: number, layout: Layout, random: Random): void {
  const free = slots.map((_, at) => at);
  for (const paper of papersOf(layout)) {
    const [slot] = free.splice(Math.floor(random() * free.length), 1);
    for (const layer of layout.layers) {
      if (layer.material !== 'patterned' || layer.paper !== paper) continue;
      slots[slot!]!.push({
        piece: {
          id: `${card}-${layer.id}`,
          card,
          layer: layer.id,
          size: { width: layer.box.width, height: layer.box.height },
          shape: layer.shape,
          paper,
          role: layer.role,
        },
        x: units(0),
        y: units(0),
        turned: random() < 0.3,
      });
    }
  }
}

function pick<T>(list: readonly T[], random: Random): T {
  return list[Math.floor(random() * list.length)]!;
}

/** About normal, mean 0, standard deviation 1. */
function gauss(random: Random): number {
  let sum = 0;
  for (let at = 0; at < 12; at++) sum += random();
  return sum - 6;
}
