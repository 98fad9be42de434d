import { labOfBytes } from '../colour/spaces.ts';
import { polygonArea } from '../geometry/polygon.ts';
import type { PhotoPoint, Quad } from '../geometry/points.ts';
import { isConvex, rectangleQuad } from '../geometry/quad.ts';
import type { Picture } from './picture.ts';
import { quadOf } from './region-quad.ts';
import type { Region } from './regions.ts';

/** What lies under a touch: its outline in pixels of the same picture, and whether that outline is its own. */
export interface TouchedPatch {
  readonly corners: Quad<'photo'>;
  /** False when it has no clear four corners and a square well inside it was taken instead. */
  readonly whole: boolean;
}

/**
 * The plain patch around a place that she touched: a card, a square of cardstock, a scrap, a smear.
 *
 * Takes       a small picture (some 1000 pixels) and a place in its pixels.
 * Gives       the four corners of the patch of one colour around the place, as far as it reaches without
 *             crossing an edge; where it has no four corners, the largest upright square around
 *             the place that it fills. Null when the place lies outside, or on nothing plain.
 * Good up to  one colour under even light; a patch that runs into a table of its colour counts with it.
 */
export function patchAround(picture: Picture, at: PhotoPoint): TouchedPatch | null {
  const { width, height } = picture;
  const x = Math.floor(at.x);
  const y = Math.floor(at.y);
  if (!(x >= 2 && y >= 2 && x < width - 2 && y < height - 2)) return null;
  const region = plainRegion(picture, x, y);
  if (region.pixels.length < LEAST) return null;
  const quad = quadOf(region, width);
  if (
    quad !== null &&
    quad.fill > 0.88 &&
    isConvex(quad.corners) &&
    isInside(quad.corners, picture)
  )
    return { corners: quad.corners, whole: true };
  const corners = squareIn(region, picture, x, y);
  return polygonArea(corners) < LEAST ? null : { corners, whole: false };
}

/** Fewer pixels tell no colour. */
const LEAST = 49;
/** How far, in CIELAB units, the patch may drift from what was touched, and from pixel to pixel. */
const DRIFT = 12;
const EDGE = 5;

function plainRegion({ width, height, rgb, primaries }: Picture, x: number, y: number): Region {
  const lab = labOfBytes(rgb, primaries);
  const here = [0, 0, 0];
  for (let dy = -1; dy <= 1; dy++)
    for (let dx = -1; dx <= 1; dx++)
      for (let c = 0; c < 3; c++) here[c]! += lab[3 * ((y + dy) * width + x + dx) + c]! / 9;
  const seen = new Uint8Array(width * height);
  const queue = new Int32Array(width * height);
  let end = 0;
  let [left, top, right, bottom] = [x, y, x, y];
  const visit = (pixel: number, from: number): void => {
    if (seen[pixel] === 1) return;
    const [p, q] = [3 * pixel, 3 * from];
    const step = Math.hypot(
      lab[p]! - lab[q]!,
      lab[p + 1]! - lab[q + 1]!,
      lab[p + 2]! - lab[q + 2]!,
    );
    const drift = Math.hypot(lab[p]! - here[0]!, lab[p + 1]! - here[1]!, lab[p + 2]! - here[2]!);
    if (step > EDGE || drift > DRIFT) return;
    seen[pixel] = 1;
    queue[end++] = pixel;
  };
  visit(y * width + x, y * width + x);
  for (let next = 0; next < end; next++) {
    const pixel = queue[next]!;
    const px = pixel % width;
    const py = (pixel - px) / width;
    if (px < left) left = px;
    if (px > right) right = px;
    if (py < top) top = py;
    if (py > bottom) bottom = py;
    if (px > 0) visit(pixel - 1, pixel);
    if (px < width - 1) visit(pixel + 1, pixel);
    if (py > 0) visit(pixel - width, pixel);
    if (py < height - 1) visit(pixel + width, pixel);
  }
  return { pixels: queue.slice(0, end), left, top, right, bottom };
}

function isInside(corners: Quad<'photo'>, { width, height }: Picture): boolean {
  return corners.every(({ x, y }) => x > 1 && y > 1 && x < width - 1 && y < height - 1);
}

/** Grows a square around the place while nearly all that it takes in belongs to the patch. */
function squareIn(
  { pixels }: Region,
  { width, height }: Picture,
  x: number,
  y: number,
): Quad<'photo'> {
  const own = new Set(pixels);
  let reach = 0;
  let held = 1;
  for (;;) {
    const next = reach + 1;
    if (x - next < 0 || y - next < 0 || x + next >= width || y + next >= height) break;
    let ring = 0;
    for (let k = -next; k <= next; k++)
      for (const [dx, dy] of [
        [k, -next],
        [k, next],
        [-next, k],
        [next, k],
      ] as const)
        if (own.has((y + dy) * width + x + dx)) ring++;
    // The four corners of the ring are counted twice.
    if (held + ring < 0.97 * ((2 * next + 1) ** 2 + 4 * next) || ring < 0.85 * (8 * next + 4))
      break;
    held += ring;
    reach = next;
  }
  return rectangleQuad<'photo'>(x - reach, y - reach, 2 * reach + 1, 2 * reach + 1);
}
