import type { Labels } from './label-pixels.ts';

/**
 * Which colour the others are printed on: the one that fills much, reaches the edges of the sheet and
 * lies everywhere on it. A big motif may fill more than its ground, but not all three.
 *
 * Takes       which colour each pixel shows, and how many colours there are (1 or more).
 * Gives       the index of the ground.
 */
export function groundOf({ width, height, of }: Labels, colours: number): number {
  const area = new Float64Array(colours);
  const tiles = new Float64Array(colours);
  const inTile = new Uint32Array(TILES * TILES * colours);
  const column = Uint8Array.from({ length: width }, (_, x) => Math.floor((x * TILES) / width));
  for (let y = 0, pixel = 0; y < height; y++) {
    const row = Math.floor((y * TILES) / height) * TILES;
    for (let x = 0; x < width; x++, pixel++) inTile[(row + column[x]!) * colours + of[pixel]!]!++;
  }
  for (let at = 0; at < inTile.length; at++) area[at % colours]! += inTile[at]!;
  const { edge, edgePixels } = onRim({ width, height, of }, colours);
  const tilePixels = (width * height) / TILES ** 2;
  for (let tile = 0; tile < TILES ** 2; tile++)
    for (let c = 0; c < colours; c++)
      tiles[c]! += Math.min(1, inTile[tile * colours + c]! / (PRESENT * tilePixels)) / TILES ** 2;
  let best = 0;
  let most = -1;
  for (let c = 0; c < colours; c++) {
    const score = area[c]! / (width * height) + edge[c]! / Math.max(1, edgePixels) + tiles[c]!;
    if (score > most) {
      most = score;
      best = c;
    }
  }
  return best;
}

/** How many pixels of each colour lie along the edges of the sheet, and how many lie there at all. */
function onRim(
  { width, height, of }: Labels,
  colours: number,
): { edge: Float64Array; edgePixels: number } {
  const edge = new Float64Array(colours);
  const rim = Math.max(1, Math.round(RIM * Math.min(width, height)));
  let edgePixels = 0;
  for (let y = 0; y < height; y++) {
    const whole = y < rim || y >= height - rim || 2 * rim >= width;
    for (let x = 0; x < width; x++) {
      // From the left rim on to the right one.
      if (!whole && x === rim) x = width - rim;
      edge[of[y * width + x]!]! += 1;
      edgePixels++;
    }
  }
  return { edge, edgePixels };
}

const TILES = 8;
/** A colour that fills this part of a tile counts as lying there. */
const PRESENT = 0.25;
/** Width of the rim, as a part of the sheet. */
const RIM = 0.02;
