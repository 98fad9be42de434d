import type { CutPlan, Kind } from './packings.ts';
import { seeded } from './seeded.ts';

/**
 * A first try at cutting pieces from one sheet by rules of thumb: the largest piece goes into the
 * corner of a part that it fills best, the part falls into two by one of the two cuts along it, and
 * so on. Gives null when none of the rules finds room for all, which proves nothing.
 */
export function quickPacking(
  kinds: readonly Kind[],
  width: number,
  height: number,
): CutPlan | null {
  const first = quickPackings(kinds, width, height).next();
  return first.done === true ? null : first.value;
}

/** The plans of all the rules that find room, one by one. */
export function* quickPackings(
  kinds: readonly Kind[],
  width: number,
  height: number,
): Generator<CutPlan, void> {
  const pieces = kinds.flatMap(({ count }, kind) => Array<number>(count).fill(kind));
  for (const measure of MEASURES) {
    const order = [...pieces].sort((a, b) => measure(kinds[b]!) - measure(kinds[a]!) || a - b);
    for (const rule of RULES) {
      const plan = place(kinds, order, width, height, rule);
      if (plan !== null) yield plan;
    }
  }
}

/**
 * The same rules with some luck: each try disturbs the order of the pieces, and now and then cuts a part the
 * other way. Gives the first plan that has room for all, or null, which proves nothing.
 */
export function luckyPacking(
  kinds: readonly Kind[],
  width: number,
  height: number,
  tries: number,
): CutPlan | null {
  const random = seeded(1);
  const pieces = kinds.flatMap(({ count }, kind) => Array<number>(count).fill(kind));
  for (let at = 0; at < tries; at++) {
    const measure = MEASURES[at % MEASURES.length]!;
    const stray = random() * MOST_STRAY;
    const sizes = pieces.map((kind) => measure(kinds[kind]!) * Math.exp(stray * (random() - 0.5)));
    const order = pieces
      .map((_, piece) => piece)
      .sort((a, b) => sizes[b]! - sizes[a]!)
      .map((piece) => pieces[piece]!);
    const rule: Rule = (...part) => RULES[0]!(...part) !== random() < OTHER_WAY;
    const plan = place(kinds, order, width, height, rule);
    if (plan !== null) return plan;
  }
  return null;
}

/** How far the order strays from that by size, in the logarithm of the size, and how often the cut goes the other way. */
const MOST_STRAY = 1.2;
const OTHER_WAY = 0.35;

type Measure = (kind: Kind) => number;
const MEASURES: readonly Measure[] = [
  (kind) => kind.width * kind.height,
  (kind) => Math.max(kind.width, kind.height),
  (kind) => kind.width + kind.height,
];

/** Which way a part is cut beside a piece: true for a vertical cut first. */
type Rule = (spareWidth: number, spareHeight: number, width: number, height: number) => boolean;
const RULES: readonly Rule[] = [
  (spareWidth, spareHeight) => spareWidth >= spareHeight,
  (spareWidth, spareHeight) => spareWidth < spareHeight,
  (spareWidth, spareHeight, width, height) => spareWidth * height >= spareHeight * width,
];

interface Part {
  readonly width: number;
  readonly height: number;
  filled: Filled | null;
}

interface Filled {
  readonly kind: number;
  readonly turned: boolean;
  /** The part beside the piece alone, and the part along both; which is which says `vertical`. */
  readonly beside: Part;
  readonly along: Part;
  readonly vertical: boolean;
}

function place(
  kinds: readonly Kind[],
  order: readonly number[],
  width: number,
  height: number,
  rule: Rule,
): CutPlan | null {
  const root: Part = { width, height, filled: null };
  const free: Part[] = [root];
  for (const kind of order) {
    const spot = bestSpot(kinds[kind]!, free);
    if (spot === null) return null;
    const { part, turned } = spot;
    const filled = fill(part, kind, kinds[kind]!, turned, rule);
    part.filled = filled;
    free.splice(free.indexOf(part), 1, filled.beside, filled.along);
  }
  return planOf(root);
}

function bestSpot(kind: Kind, free: readonly Part[]): { part: Part; turned: boolean } | null {
  let best: { part: Part; turned: boolean } | null = null;
  let least = Infinity;
  for (const part of free)
    for (const turned of kind.turn ? [false, true] : [false]) {
      const [width, height] = turned ? [kind.height, kind.width] : [kind.width, kind.height];
      if (width > part.width || height > part.height) continue;
      const spare = Math.min(part.width - width, part.height - height);
      if (spare < least) [best, least] = [{ part, turned }, spare];
    }
  return best;
}

function fill(part: Part, kind: number, size: Kind, turned: boolean, rule: Rule): Filled {
  const [width, height] = turned ? [size.height, size.width] : [size.width, size.height];
  const [spareWidth, spareHeight] = [part.width - width, part.height - height];
  const vertical = rule(spareWidth, spareHeight, width, height);
  const open = (w: number, h: number): Part => ({ width: w, height: h, filled: null });
  return vertical
    ? {
        kind,
        turned,
        vertical,
        beside: open(width, spareHeight),
        along: open(spareWidth, part.height),
      }
    : {
        kind,
        turned,
        vertical,
        beside: open(spareWidth, height),
        along: open(part.width, spareHeight),
      };
}

function planOf({ filled }: Part): CutPlan | null {
  if (filled === null) return null;
  const { kind, turned, vertical } = filled;
  const piece = joined(
    { kind, turned },
    planOf(filled.beside),
    vertical ? 'horizontal' : 'vertical',
  );
  return joined(piece, planOf(filled.along), vertical ? 'vertical' : 'horizontal');
}

function joined(first: CutPlan, second: CutPlan | null, way: 'vertical' | 'horizontal'): CutPlan {
  return second === null ? first : { way, first, second };
}
