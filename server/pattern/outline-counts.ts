import type { Labels } from '../colour/label-pixels.ts';

/** Directions told apart, clockwise from the right (x right, y down). */
export const SECTORS = 24;
/** The sheet is cut into this many parts a side, whose scatter says how sure a count is. */
export const PARTS = 6;

/** Outline of one colour in each part of the sheet, counted by the direction that points out of it. */
export type OutlineCount = readonly Float64Array[];

/**
 * Counts the outline of each colour by the direction in which it faces.
 *
 * A colour's closed shapes face up as much as down in sum, but shapes that point one way do so
 * differently: a triangle has one broad side below and two slanted ones above.
 *
 * Takes       which colour each pixel shows, and how many colours there are.
 * Gives       for each colour PARTS x PARTS lists of SECTORS counts, in pixels of outline.
 */
export function countOutlines({ width, height, of }: Labels, colours: number): OutlineCount[] {
  const counts = Array.from({ length: colours }, () =>
    Array.from({ length: PARTS * PARTS }, () => new Float64Array(SECTORS)),
  );
  for (let y = AROUND; y < height - AROUND; y++) {
    const row = Math.floor((y * PARTS) / height) * PARTS;
    for (let x = AROUND; x < width - AROUND; x++) {
      const at = y * width + x;
      const label = of[at]!;
      if (
        label === of[at + 1] &&
        label === of[at - 1] &&
        label === of[at + width] &&
        label === of[at - width]
      )
        continue;
      const sector = facing(of, at, width, label);
      if (sector >= 0) counts[label]![row + Math.floor((x * PARTS) / width)]![sector]! += 1;
    }
  }
  return counts;
}

/** Half the side of the window in which the slant of an outline is judged. */
const AROUND = 2;

/** The sector away from a colour's own pixels around, or -1 where they lie evenly. */
function facing(of: Uint8Array, at: number, width: number, label: number): number {
  let [x, y] = [0, 0];
  for (let dy = -AROUND; dy <= AROUND; dy++)
    for (let dx = -AROUND; dx <= AROUND; dx++)
      if (of[at + dy * width + dx] !== label) {
        x += dx;
        y += dy;
      }
  if (x === 0 && y === 0) return -1;
  const turn = Math.atan2(y, x) / (2 * Math.PI);
  return Math.floor((turn < 0 ? turn + 1 : turn) * SECTORS) % SECTORS;
}
