import { workRoom } from '../colour/work-room.ts';

/** One connected area of a mask. */
export interface Region {
  readonly pixels: Int32Array;
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export interface Mask {
  readonly width: number;
  readonly height: number;
  readonly of: Uint8Array;
}

const [fromRoom, endRoom, parentRoom, sizeRoom] = [0, 1, 2, 3].map(() =>
  workRoom((length) => new Int32Array(length)),
) as [Room, Room, Room, Room];
type Room = (length: number) => Int32Array;

/**
 * The connected areas of a mask with at least so many pixels, largest first; the pixels of each row by row.
 *
 * Method      runs of a row, joined with those of the row above that they touch. Of each area the run that comes first
 *             stands for all (union by the least; Hopcroft and Ullman 1973, doi:10.1137/0202024).
 */
export function regionsOf(mask: Mask, least: number): Region[] {
  const { width, height } = mask;
  const most = ((width + 1) >> 1) * height;
  const runs: Runs = { from: fromRoom(most), end: endRoom(most), parent: parentRoom(most) };
  const count = joinRuns(mask, runs);
  const { from, end, parent } = runs;
  const sizes = sizeRoom(count).fill(0);
  for (let run = 0; run < count; run++) {
    // The one that stands for a run comes before it, and is settled.
    parent[run] = parent[parent[run]!]!;
    sizes[parent[run]!]! += end[run]! - from[run]!;
  }
  const regions = new Map<number, Growing>();
  for (let run = 0; run < count; run++) {
    const first = parent[run]!;
    if (sizes[first]! < least) continue;
    let region = regions.get(first);
    if (region === undefined) {
      const top = Math.floor(from[run]! / width);
      region = {
        pixels: new Int32Array(sizes[first]!),
        filled: 0,
        left: width,
        right: 0,
        top,
        bottom: top,
      };
      regions.set(first, region);
    }
    add(region, from[run]!, end[run]!, width);
  }
  return [...regions.values()]
    .map(({ pixels, left, top, right, bottom }) => ({ pixels, left, top, right, bottom }))
    .sort((p, q) => q.pixels.length - p.pixels.length);
}

/** Where each run begins, where it is over, and an earlier or the same one of its area. */
interface Runs {
  readonly from: Int32Array;
  readonly end: Int32Array;
  readonly parent: Int32Array;
}

/** Finds all runs, row by row, and joins those that touch. Gives how many there are. */
function joinRuns({ width, height, of }: Mask, { from, end, parent }: Runs): number {
  let count = 0;
  let above = 0;
  for (let y = 0, at = 0; y < height; y++) {
    const [row, over] = [count, (y + 1) * width];
    while (at < over) {
      if (of[at] === 0) {
        at++;
        continue;
      }
      const start = at;
      while (at < over && of[at] === 1) at++;
      from[count] = start;
      end[count] = at;
      parent[count] = count;
      while (above < row && end[above]! <= start - width) above++;
      // The last one it touches may touch the next one too.
      for (let other = above; other < row && from[other]! < at - width; other++)
        join(parent, other, count);
      count++;
    }
    above = row;
  }
  return count;
}

function join(parent: Int32Array, one: number, other: number): void {
  const [p, q] = [firstOf(parent, one), firstOf(parent, other)];
  if (p < q) parent[q] = p;
  else parent[p] = q;
}

function firstOf(parent: Int32Array, run: number): number {
  let first = run;
  while (parent[first] !== first) {
    parent[first] = parent[parent[first]!]!;
    first = parent[first]!;
  }
  return first;
}

interface Growing {
  readonly pixels: Int32Array;
  filled: number;
  left: number;
  right: number;
  readonly top: number;
  bottom: number;
}

function add(region: Growing, from: number, end: number, width: number): void {
  const { pixels } = region;
  let at = region.filled;
  for (let pixel = from; pixel < end; pixel++) pixels[at++] = pixel;
  region.filled = at;
  region.bottom = Math.floor(from / width);
  const start = from - region.bottom * width;
  if (start < region.left) region.left = start;
  const last = start + (end - from) - 1;
  if (last > region.right) region.right = last;
}
