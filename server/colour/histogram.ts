/** Colours, each standing for a number of pixels. */
export interface WeighedColours {
  readonly size: number;
  /** l, a, b of each colour. */
  readonly lab: Float64Array;
  readonly weight: Float64Array;
}

/**
 * Pixels counted in small boxes of CIELAB, each with the exact mean of its pixels: a few thousand weighed colours
 * that stand for a hundred thousand pixels.
 */
export interface Histogram extends WeighedColours {
  /** Address of each box in the grid. */
  readonly cell: Int32Array;
}

/** Side of a box in CIELAB units. */
export const BOX = 2;
/** Colours beyond these limits are counted in the outermost boxes, with their exact mean. */
const L_BOXES = 54;
const AB_BOXES = 116;
/** Steps in the grid from one box to the next in l, a and b. */
export const STEP_L = AB_BOXES * AB_BOXES;
export const STEP_A = AB_BOXES;

/**
 * Box at each address of the grid, or -1. One grid serves all calls, each of which leaves it empty: to make a new
 * one takes longer than to count a picture.
 */
const grid = new Int32Array(L_BOXES * STEP_L).fill(-1);

/** Works with the boxes laid out in the grid, where each finds its neighbours. */
export function onGrid<Result>(
  { size, cell }: Histogram,
  work: (grid: Int32Array) => Result,
): Result {
  for (let box = 0; box < size; box++) grid[cell[box]!] = box;
  try {
    return work(grid);
  } finally {
    for (let box = 0; box < size; box++) grid[cell[box]!] = -1;
  }
}

/** Counts the pixels whose flag is as wanted, or all of them when there are no flags. */
export function histogramOf(
  lab: Float32Array,
  flags: Uint8Array | null,
  wanted: 0 | 1 = 1,
): Histogram {
  let room = 4096;
  let cells = new Int32Array(room);
  let sums = new Float64Array(4 * room);
  let size = 0;
  const halfAb = AB_BOXES / 2;
  // Neighbours mostly lie in the same box.
  let cell = -1;
  let box = -1;
  for (let pixel = 0, p = 0; p < lab.length; pixel++, p += 3) {
    if (flags !== null && flags[pixel] !== wanted) continue;
    const l = lab[p]!;
    const a = lab[p + 1]!;
    const b = lab[p + 2]!;
    const address =
      within(l / BOX + 2, L_BOXES) * STEP_L +
      within(a / BOX + halfAb, AB_BOXES) * STEP_A +
      within(b / BOX + halfAb, AB_BOXES);
    if (address !== cell) {
      cell = address;
      box = grid[cell]!;
      if (box < 0) {
        if (size === room) {
          room *= 2;
          cells = grown(cells, new Int32Array(room));
          sums = grown(sums, new Float64Array(4 * room));
        }
        box = grid[cell] = size++;
        cells[box] = cell;
      }
    }
    const sum = 4 * box;
    sums[sum]! += l;
    sums[sum + 1]! += a;
    sums[sum + 2]! += b;
    sums[sum + 3]! += 1;
  }
  for (let box = 0; box < size; box++) grid[cells[box]!] = -1;
  return { ...meansOf(sums, size), cell: cells.slice(0, size) };
}

/** The colours of both, as they are: a box of either stays a box. */
export function joined(one: WeighedColours, other: WeighedColours): WeighedColours {
  const lab = new Float64Array(one.lab.length + other.lab.length);
  lab.set(one.lab);
  lab.set(other.lab, one.lab.length);
  const weight = new Float64Array(one.size + other.size);
  weight.set(one.weight);
  weight.set(other.weight, one.size);
  return { size: one.size + other.size, lab, weight };
}

function grown<T extends Int32Array | Float64Array>(old: T, roomy: T): T {
  roomy.set(old);
  return roomy;
}

/** A box index, kept one box away from the rim so that every box has all its neighbours. */
function within(place: number, boxes: number): number {
  const box = place | 0;
  return box < 1 ? 1 : box > boxes - 2 ? boxes - 2 : box;
}

function meansOf(sums: Float64Array, size: number): WeighedColours {
  const lab = new Float64Array(3 * size);
  const weight = new Float64Array(size);
  for (let box = 0; box < size; box++) {
    const count = sums[4 * box + 3]!;
    weight[box] = count;
    for (let axis = 0; axis < 3; axis++) lab[3 * box + axis] = sums[4 * box + axis]! / count;
  }
  return { size, lab, weight };
}
