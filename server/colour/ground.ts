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
  const edge = new Float64Array(colours);
  const tiles = new Float64Array(colours);
  const inTile = new Uint32Array(TILES * TILES * colours);
  const rim = Math.max(1, Math.round(RIM * Math.min(width, height)));
  let edgePixels = 0;
  const column = Uint8Array.from({ length: width }, (_, x) => Math.floor((x * TILES) / width));
  for (let y = 0, pixel = 0; y < height; y++) {
    const row = Math.floor((y * TILES) / height) * TILES;
    const onRim = y < rim || y >= height - rim;
    for (let x = 0; x < width; x++, pixel++) {
      const label = of[pixel]!;
      area[label]! += 1;
      if (onRim || x < rim || x >= width - rim) {
        edge[label]! += 1;
        edgePixels++;
      }
      inTile[(row + column[x]!) * colours + label]! += 1;
    }
  }
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

const TILES = 8;
/** A colour that fills this part of a tile counts as lying there. */
const PRESENT = 0.25;
/** Width of the rim, as a part of the sheet. */
const RIM = 0.02;
