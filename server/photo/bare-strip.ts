import type { PhotoPoint, Quad } from '../geometry/points.ts';
import { gridOf } from './apart-quads.ts';
import { shrunken } from './white-card.ts';

/**
 * Whether bare table runs along a side of an outline within it, and not all over it: then the outline lies beside its
 * sheet, on a print whose every line could be an edge.
 *
 *     +---------------+
 *     |# # # # # #|   |     a strip a tenth of the sheet wide is nearly all table, the middle is not
 *     | # # # # # |   |
 *     +---------------+
 *
 * Takes       the outline in pixels of the preview, which of these show table, and how wide the preview is.
 */
export function hasBareStrip(corners: Quad<'photo'>, reached: Uint8Array, width: number): boolean {
  const inner = shrunken(corners, SKIN);
  const middle = bareIn(gridOf(shrunken(corners, 0.25), GRID), reached, width);
  return inner.some((from, side) => {
    const [to, beyond, before] = [1, 2, 3].map((k) => inner[(side + k) % 4]!) as Three;
    const strip: Quad<'photo'> = [from, to, between(to, beyond), between(from, before)];
    return bareIn(gridOf(strip, GRID), reached, width) > middle + CLEARLY;
  });
}

type Three = [PhotoPoint, PhotoPoint, PhotoPoint];

/** Parts of a side: what is left out at the border, where a pixel may be either, and how wide the strip is. */
const SKIN = 0.02;
const WIDE = 0.08;
const GRID = 12;
/** Part of the strip that is bare, more than in the middle. */
const CLEARLY = 0.7;

function between(from: PhotoPoint, to: PhotoPoint): PhotoPoint {
  return { x: from.x + WIDE * (to.x - from.x), y: from.y + WIDE * (to.y - from.y) };
}

function bareIn(places: readonly PhotoPoint[], reached: Uint8Array, width: number): number {
  const height = reached.length / width;
  const bare = places.filter(
    ({ x, y }) =>
      x >= 0 &&
      y >= 0 &&
      x < width &&
      y < height &&
      reached[Math.floor(y) * width + Math.floor(x)] === 1,
  );
  return bare.length / places.length;
}
