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
  /** Box at an address of the grid, or -1. */
  readonly at: Int32Array;
}

/** Side of a box in CIELAB units. */
export const BOX = 2;
/** Colours beyond these limits are counted in the outermost boxes, with their exact mean. */
const L_BOXES = 54;
const AB_BOXES = 116;
/** Steps in the grid from one box to the next in l, a and b. */
export const STEP_L = AB_BOXES * AB_BOXES;
export const STEP_A = AB_BOXES;

/** Counts the pixels with `keep` 1, or all of them when `keep` is null. */
export function histogramOf(lab: Float32Array, keep: Uint8Array | null): Histogram {
  const at = new Int32Array(L_BOXES * STEP_L).fill(-1);
  let room = 4096;
  let cells = new Int32Array(room);
  let sums = new Float64Array(4 * room);
  let size = 0;
  const halfAb = AB_BOXES / 2;
  for (let pixel = 0, p = 0; p < lab.length; pixel++, p += 3) {
    if (keep !== null && keep[pixel] === 0) continue;
    const l = lab[p]!;
    const a = lab[p + 1]!;
    const b = lab[p + 2]!;
    const cell =
      within(l / BOX + 2, L_BOXES) * STEP_L +
      within(a / BOX + halfAb, AB_BOXES) * STEP_A +
      within(b / BOX + halfAb, AB_BOXES);
    let box = at[cell]!;
    if (box < 0) {
      if (size === room) {
        room *= 2;
        cells = grown(cells, new Int32Array(room));
        sums = grown(sums, new Float64Array(4 * room));
      }
      box = at[cell] = size++;
      cells[box] = cell;
    }
    const sum = 4 * box;
    sums[sum]! += l;
    sums[sum + 1]! += a;
    sums[sum + 2]! += b;
    sums[sum + 3]! += 1;
  }
  return { ...meansOf(sums, size), cell: cells.slice(0, size), at };
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
