import { polygonArea } from '../geometry/polygon.ts';
import { isConvex } from '../geometry/quad.ts';
import type { Candidate, Overview } from './find-sheets.ts';
import { quadOf } from './region-quad.ts';
import { regionsOf } from './regions.ts';
import type { Mask, Region } from './regions.ts';
import { withoutThin } from './spread.ts';

/**
 * Plain squares and cards that a line of the table has caught: the dark seam between two boards runs into
 * them on both sides, and no four corners are clear, or they seem to reach out of the picture.
 *
 *     ────┌────┐────┌────┐────        ┌────┐    ┌────┐
 *         │    │    │    │       ->   │    │    │    │
 *         └────┘    └────┘            └────┘    └────┘
 *
 * Gives       those that have four clear corners once what is narrow is taken away, besides the candidates
 *             that have them already.
 * Good up to  things without narrow parts of their own: squares and cards, not printed sheets.
 */
export function withoutWhiskers({ things, unclear, cutOff }: Overview): Candidate[] {
  const { width, height } = things;
  const caught: Mask = { width, height, of: new Uint8Array(width * height) };
  let left: readonly Region[] = [...unclear, ...cutOff];
  const freed: Candidate[] = [];
  for (const part of NARROW) {
    if (left.length === 0) break;
    caught.of.fill(0);
    for (const { pixels } of left) for (const pixel of pixels) caught.of[pixel] = 1;
    const by = Math.round(part * Math.max(width, height));
    const rest: Region[] = [];
    for (const region of regionsOf(withoutThin(caught, by), (4 * by) ** 2)) {
      const found = clearCorners(region, caught);
      if (found === null) rest.push(region);
      else freed.push(found);
    }
    left = rest;
  }
  return freed;
}

function clearCorners(region: Region, { width, height }: Mask): Candidate | null {
  const { left, top, right, bottom } = region;
  if (left <= 2 || top <= 2 || right >= width - 3 || bottom >= height - 3) return null;
  const quad = quadOf(region, width);
  return quad === null || quad.fill < WHOLE || !isConvex(quad.corners)
    ? null
    : { ...quad, area: polygonArea(quad.corners) };
}

/** Half the width, as a part of the picture's long side, of what is taken away: a seam, a shadow, a shadow beside a seam. */
const NARROW = [1 / 90, 1 / 45, 1 / 28];
/** Part of its quad that a plain thing fills; its corners are rounded a little. Two that a shadow joins fill less. */
const WHOLE = 0.957;
