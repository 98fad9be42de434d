import type { LabImage } from '../colour/lab.ts';
import type { Quad } from '../geometry/points.ts';
import { gridOf } from './apart-quads.ts';
import type { Overview } from './find-sheets.ts';
import { shrunken } from './white-card.ts';

/**
 * Whether a place that has the table's colours is much smoother or much rougher than the table: a wash on a patterned
 * cloth, or kraft on wood, of which no pixel differs from the table for sure.
 *
 * Takes       what was seen, and the place in pixels of the preview.
 */
export function isOtherGrain({ image, table }: Overview, place: Quad<'photo'>): boolean {
  const { width, height } = image;
  const there = meanOf(
    gridOf(shrunken(place, RIM), GRID).flatMap(({ x, y }) => roughnessAt(image, x, y)),
  );
  const own: number[] = [];
  for (let y = 4; y < height - 4; y += EVERY)
    for (let x = 4; x < width - 4; x += EVERY)
      if (table.reached[y * width + x] === 1 && table.reached[y * width + x + 2] === 1)
        own.push(...roughnessAt(image, x, y));
  const bare = meanOf(own);
  return own.length > ENOUGH && (there < bare / TIMES || there > bare * TIMES);
}

/** Part of the place left out all round, since it is a guess. */
const RIM = 0.12;
const GRID = 60;
/** Pixels of the preview from one sample of the table to the next, and how many tell how rough it is. */
const EVERY = 5;
const ENOUGH = 500;
/** How many times smoother or rougher: light and the unevenness of one table stay within. */
const TIMES = 1.8;

/** How much neighbours differ, in CIELAB units; nothing outside the picture. */
function roughnessAt({ lab, width, height }: LabImage, x: number, y: number): number[] {
  const [column, row] = [Math.floor(x), Math.floor(y)];
  if (column < 0 || row < 0 || column >= width - 2 || row >= height - 2) return [];
  const at = 3 * (row * width + column);
  const [across, down] = [at + 6, at + 6 * width];
  return [Math.abs(lab[across]! - lab[at]!) + Math.abs(lab[down]! - lab[at]!)];
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
}
