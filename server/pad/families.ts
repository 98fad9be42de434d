import type { Lab } from '../colour/lab.ts';
import { nameOf } from '../colour/names.ts';
import type { PaletteColour } from '../colour/palette.ts';
import { gather } from './gather.ts';
import type { Family, Side } from './pad.ts';

/**
 * The sides led by one colour, named by the 13 groups of ISCC-NBS.
 *
 * Takes       the sides of a pad.
 * Gives       families, the one with most sides first; each side stands in exactly one.
 */
export function familiesOf(sides: readonly Side[]): Family[] {
  const led = sides.map((side) => ({ lab: leadOf(side).lab, weight: 1, items: [side.id] }));
  const families = new Map<string, { lab: Lab; sides: string[] }>();
  for (const { lab, items } of gather(led, ONE_LEAD).sort((p, q) => q.weight - p.weight)) {
    const name = nameOf(lab).group;
    const family = families.get(name);
    if (family === undefined) families.set(name, { lab, sides: [...items] });
    else family.sides.push(...items);
  }
  return [...families]
    .map(([name, family]) => ({ name, ...family }))
    .sort((p, q) => q.sides.length - p.sides.length);
}

/**
 * The colour that one would call a side by: its ground, unless the ground is a neutral that only carries a
 * clear colour.
 */
export function leadOf({ palette }: Pick<Side, 'palette'>): PaletteColour {
  const ground = palette.colours.find(({ role }) => role === 'ground') ?? palette.colours[0]!;
  const accents = palette.colours.filter(
    (colour) => colour !== ground && colour.share >= CLEAR && !quiet(colour.lab),
  );
  if (!quiet(ground.lab) || accents.length === 0) return ground;
  return accents.reduce((lead, colour) => (pull(colour) > pull(lead) ? colour : lead));
}

/** Leads closer than this are one family even when a name's border runs between them. */
const ONE_LEAD = 8;
/** An accent that may lead fills at least this part of the side. */
const CLEAR = 0.06;

/**
 * White, cream, grey and black carry colours rather than being one. Chroma in CIELAB units: a 'bluish gray' does, a
 * 'grayish blue' is a colour; SP 440 parts the two near Munsell chroma 1.5 (from memory), at 4 to 6 units a step.
 */
function quiet({ l, a, b }: Lab): boolean {
  return Math.hypot(a, b) < (l > 80 ? 18 : 8);
}

function pull({ lab, share }: PaletteColour): number {
  return share * Math.hypot(lab.a, lab.b);
}
