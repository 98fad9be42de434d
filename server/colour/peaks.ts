import { STEP_A, STEP_L, onGrid } from './histogram.ts';
import type { Histogram } from './histogram.ts';
import type { Lab } from './lab.ts';

export interface Peak {
  /** Mean colour of the boxes that climb to this peak. */
  readonly lab: Lab;
  /** Pixels that climb to this peak. */
  readonly weight: number;
}

/**
 * The hills of a histogram: printed flat colours stand out as hills with valleys between them.
 *
 * Boxes are taken from the fullest down; each joins the hill beside it, and where two hills meet the
 * lower one is swallowed unless it rises clearly above the saddle. So the number of colours is
 * found, not given, and the ripple of noise or paper grain on one hill makes no second one.
 *
 * Takes       a histogram and how far a hill must rise above its saddle (a ratio > 1).
 * Gives       the hills, heaviest first.
 * Source      persistence-based clustering: Chazal, Guibas, Oudot, Skraba (2013), J. ACM 60(6),
 *             article 41, doi:10.1145/2535927, algorithm 1 with a ratio in place of a difference.
 */
export function peaksOf(histogram: Histogram, rise: number): Peak[] {
  return onGrid(histogram, (grid) => peaksOn(grid, histogram, rise));
}

function peaksOn(grid: Int32Array, histogram: Histogram, rise: number): Peak[] {
  const height = blurred(grid, histogram);
  const order = Array.from({ length: histogram.size }, (_, box) => box).sort(
    (p, q) => height[q]! - height[p]! || p - q,
  );
  const parent = new Int32Array(histogram.size).fill(-1);
  const rootOf = (box: number): number => {
    let root = box;
    while (parent[root] !== root) root = parent[root]!;
    parent[box] = root;
    return root;
  };
  for (const box of order) {
    let top = -1;
    const met: number[] = [];
    for (const step of NEIGHBOURS) {
      const beside = grid[histogram.cell[box]! + step]!;
      if (beside < 0 || parent[beside]! < 0) continue;
      const root = rootOf(beside);
      met.push(root);
      if (top < 0 || height[root]! > height[top]!) top = root;
    }
    parent[box] = top < 0 ? box : top;
    for (const root of met)
      if (root !== top && height[root]! < rise * height[box]!) parent[root] = top;
  }
  return gather(histogram, rootOf);
}

/** The 26 boxes around a box. */
const NEIGHBOURS = [-1, 0, 1].flatMap((l) =>
  [-1, 0, 1].flatMap((a) =>
    [-1, 0, 1].filter((b) => l !== 0 || a !== 0 || b !== 0).map((b) => l * STEP_L + a * STEP_A + b),
  ),
);

/** How full each box is, smoothed over its neighbours so that a hill cut by box walls stays one hill. */
function blurred(grid: Int32Array, { size, weight, cell }: Histogram): Float64Array {
  const height = new Float64Array(size);
  for (let box = 0; box < size; box++) {
    let sum = 4 * weight[box]!;
    for (const step of NEIGHBOURS) {
      const beside = grid[cell[box]! + step]!;
      if (beside >= 0) sum += weight[beside]!;
    }
    height[box] = sum;
  }
  return height;
}

function gather({ size, lab, weight }: Histogram, rootOf: (box: number) => number): Peak[] {
  const sums = new Map<number, [l: number, a: number, b: number, weight: number]>();
  for (let box = 0; box < size; box++) {
    const root = rootOf(box);
    const sum = sums.get(root) ?? [0, 0, 0, 0];
    const w = weight[box]!;
    sum[0] += w * lab[3 * box]!;
    sum[1] += w * lab[3 * box + 1]!;
    sum[2] += w * lab[3 * box + 2]!;
    sum[3] += w;
    sums.set(root, sum);
  }
  return [...sums.values()]
    .map(([l, a, b, w]) => ({ lab: { l: l / w, a: a / w, b: b / w }, weight: w }))
    .sort((p, q) => q.weight - p.weight);
}
