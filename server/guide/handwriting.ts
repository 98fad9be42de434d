import type { Spot } from './drawing.ts';

/** A letter as the pen goes, y upward, the height of an 'e' being 1; the last spot is where the next letter begins. */
const LETTERS = {
  g: [
    [0.72, 0.92],
    [0.4, 1.02],
    [0.1, 0.7],
    [0.12, 0.2],
    [0.38, 0.02],
    [0.66, 0.35],
    [0.78, 0.95],
    [0.76, 0.1],
    [0.7, -0.75],
    [0.42, -1.05],
    [0.2, -0.8],
    [0.5, -0.3],
    [0.98, 0.12],
  ],
  r: [
    [0.22, 0.62],
    [0.34, 1.12],
    [0.48, 0.9],
    [0.76, 0.94],
    [0.72, 0.4],
    [0.84, 0.04],
    [1.08, 0.14],
  ],
  e: [
    [0.34, 0.42],
    [0.54, 0.8],
    [0.36, 1.02],
    [0.14, 0.7],
    [0.16, 0.22],
    [0.42, 0],
    [0.74, 0.16],
  ],
  t: [
    [0.22, 0.6],
    [0.38, 1.5],
    [0.4, 1.78],
    [0.34, 1],
    [0.32, 0.3],
    [0.48, 0],
    [0.76, 0.16],
  ],
  i: [
    [0.16, 0.55],
    [0.28, 1],
    [0.24, 0.4],
    [0.36, 0.02],
    [0.62, 0.16],
  ],
  n: [
    [0.1, 0.6],
    [0.2, 1],
    [0.2, 0.5],
    [0.18, 0.04],
    [0.3, 0.7],
    [0.52, 1],
    [0.68, 0.8],
    [0.66, 0.3],
    [0.78, 0.02],
    [1.02, 0.16],
  ],
} as const;

/** What is put to a letter when the word is written: the bar of the t, the dot of the i. */
const AFTER = {
  t: [
    [0.02, 1.12],
    [0.4, 1.2],
    [0.78, 1.16],
  ],
  i: [
    [0.33, 1.48],
    [0.37, 1.54],
  ],
} as const;

const WORD = ['g', 'r', 'e', 'e', 't', 'i', 'n', 'g'] as const;
/** How far a letter leans over its height. */
const LEAN = 0.22;
/** Parts of a curve between two spots. */
const PARTS = 4;

/**
 * The word 'greeting' in a hand of our own, which stands where words will be stamped.
 *
 * Gives       the pen's strokes, y downward; the word is 1 long and begins at 0, 0 with its upper left corner.
 */
export function writtenGreeting(): Spot[][] {
  const pen: Spot[] = [{ x: 0, y: 0.1 }];
  const after: Spot[][] = [];
  let start = 0;
  for (const letter of WORD) {
    const spots = LETTERS[letter].map(([x, y]) => ({ x: start + x, y }));
    pen.push(...spots);
    if (letter === 't' || letter === 'i')
      after.push(AFTER[letter].map(([x, y]) => ({ x: start + x, y })));
    start = spots.at(-1)!.x;
  }
  const leaning = [pen, ...after].map((stroke) =>
    curved(stroke).map(({ x, y }) => ({ x: x + LEAN * y, y: -y })),
  );
  return toUnit(leaning);
}

/**
 * A smooth way through all spots.
 *
 * Source      Catmull, Rom (1974), A class of local interpolating splines, uniform, tension 1/2.
 */
function curved(spots: readonly Spot[]): Spot[] {
  const at = (index: number): Spot => spots[Math.min(Math.max(index, 0), spots.length - 1)]!;
  const way = spots.slice(1).flatMap((_, index) =>
    Array.from({ length: PARTS }, (_, part): Spot => {
      const four = [at(index - 1), at(index), at(index + 1), at(index + 2)] as const;
      const t = part / PARTS;
      return {
        x: between(
          four.map(({ x }) => x),
          t,
        ),
        y: between(
          four.map(({ y }) => y),
          t,
        ),
      };
    }),
  );
  return [...way, spots.at(-1)!];
}

function between(four: readonly number[], t: number): number {
  const [a, b, c, d] = four as [number, number, number, number];
  return (
    (2 * b +
      (c - a) * t +
      (2 * a - 5 * b + 4 * c - d) * t ** 2 +
      (3 * b - a - 3 * c + d) * t ** 3) /
    2
  );
}

function toUnit(strokes: readonly (readonly Spot[])[]): Spot[][] {
  const xs = strokes.flat().map(({ x }) => x);
  const ys = strokes.flat().map(({ y }) => y);
  const [left, top, long] = [Math.min(...xs), Math.min(...ys), Math.max(...xs) - Math.min(...xs)];
  return strokes.map((stroke) =>
    stroke.map(({ x, y }) => ({ x: (x - left) / long, y: (y - top) / long })),
  );
}
