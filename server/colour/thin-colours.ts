import type { WeighedColours } from './histogram.ts';
import type { Lab } from './lab.ts';
import { liesOn, linesOf } from './lines.ts';

/**
 * Colours that are printed in strokes so thin that hardly a pixel is pure.
 *
 * A mixed pixel lies in colour on the line between the two inks that it mixes. Pixels that lie on no line
 * between known colours betray a further one: the colour that, with lines to the known ones, explains
 * most of them. It is sought among the pixels themselves, as near to the known colours as explains
 * nearly as many, since beyond it there is only noise.
 *
 * Takes       the histogram of all pixels, the known colours, the noise of one pixel (CIELAB units), the
 *             part of all pixels that a colour must explain, and how many colours may be added.
 * Gives       the colours to add, the one that explains most first.
 */
export function thinColours(
  histogram: WeighedColours,
  known: readonly Lab[],
  noise: number,
  least: number,
  most: number,
): Lab[] {
  const near = (NEAR + 2 * noise) ** 2;
  const colours = [...known];
  let total = 0;
  for (let box = 0; box < histogram.size; box++) total += histogram.weight[box]!;
  // Most pixels are those of the known colours themselves; they are told first.
  const own = known.map((colour) => [colour, colour] as const);
  const between = known.flatMap((p, i) => known.slice(i + 1).map((q) => [p, q] as const));
  const lines = linesOf([...own, ...between]);
  let open: number[] = [];
  for (let box = 0; box < histogram.size; box++)
    if (!liesOn(lines, histogram.lab, 3 * box, near)) open.push(box);
  while (colours.length < known.length + most) {
    if (weightOf(histogram, open) < least * total) break;
    const found = bestEnd(histogram, open, colours, near, least * total);
    if (found === null) break;
    const further = linesOf(colours.map((colour) => [colour, found] as const));
    open = open.filter((box) => !liesOn(further, histogram.lab, 3 * box, near));
    colours.push(found);
  }
  return colours.slice(known.length);
}

/** Pixels nearer than this to a line between two colours may be a mixture of them, in CIELAB units. */
const NEAR = 6;
/** Candidates tried, and the part of the best one's gain that is enough for a nearer one. */
const TRIED = 48;
const ENOUGH = 0.93;

function bestEnd(
  histogram: WeighedColours,
  open: readonly number[],
  colours: readonly Lab[],
  near: number,
  needed: number,
): Lab | null {
  const { lab, weight } = histogram;
  const at = (box: number): Lab => ({
    l: lab[3 * box]!,
    a: lab[3 * box + 1]!,
    b: lab[3 * box + 2]!,
  });
  const tried = [...open].sort((p, q) => weight[q]! - weight[p]!).slice(0, TRIED * 4);
  const stride = Math.max(1, Math.floor(tried.length / TRIED));
  const candidates = tried
    .filter((_, index) => index < TRIED / 2 || index % stride === 0)
    .map((box) => {
      const end = at(box);
      const lines = linesOf(colours.map((known) => [known, end] as const));
      let gain = 0;
      for (const other of open) if (liesOn(lines, lab, 3 * other, near)) gain += weight[other]!;
      const reach = Math.min(
        ...colours.map(({ l, a, b }) => Math.hypot(l - end.l, a - end.a, b - end.b)),
      );
      return { end, gain, reach };
    });
  const most = Math.max(0, ...candidates.map(({ gain }) => gain));
  if (most < needed) return null;
  const { end } = candidates
    .filter(({ gain }) => gain >= ENOUGH * most)
    .reduce((best, next) => (next.reach < best.reach ? next : best));
  return purest(histogram, open, colours, near, end);
}

/** The far end of the pixels along the line on which most of them lie: the purest of the stroke. */
function purest(
  { lab, weight }: WeighedColours,
  open: readonly number[],
  colours: readonly Lab[],
  near: number,
  end: Lab,
): Lab {
  const lines = colours.map((from) => {
    const along = { l: end.l - from.l, a: end.a - from.a, b: end.b - from.b };
    const far = { l: from.l + 2 * along.l, a: from.a + 2 * along.a, b: from.b + 2 * along.b };
    const whole = linesOf([[from, far]]);
    const boxes = open.filter((box) => liesOn(whole, lab, 3 * box, near));
    const length = along.l ** 2 + along.a ** 2 + along.b ** 2;
    const part = (box: number): number =>
      ((lab[3 * box]! - from.l) * along.l +
        (lab[3 * box + 1]! - from.a) * along.a +
        (lab[3 * box + 2]! - from.b) * along.b) /
      length;
    return { from, along, weight: weightOf({ weight }, boxes), boxes, part };
  });
  const line = lines.reduce((best, next) => (next.weight > best.weight ? next : best));
  const { from, along, part } = line;
  const ordered = line.boxes.sort((p, q) => part(p) - part(q));
  let left = PUREST * line.weight;
  const last = ordered.find((box) => (left -= weight[box]!) <= 0);
  const t = last === undefined ? 1 : Math.max(1, part(last));
  return { l: from.l + t * along.l, a: from.a + t * along.a, b: from.b + t * along.b };
}

/** This part of a stroke's pixels is less pure than the colour taken for it. */
const PUREST = 0.93;

function weightOf({ weight }: Pick<WeighedColours, 'weight'>, boxes: readonly number[]): number {
  return boxes.reduce((sum, box) => sum + weight[box]!, 0);
}
