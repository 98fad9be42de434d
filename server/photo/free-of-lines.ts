import { polygonArea } from '../geometry/polygon.ts';
import { isConvex } from '../geometry/quad.ts';
import { endsAtRim, isLikeSheet } from './find-sheets.ts';
import type { Candidate, Overview } from './find-sheets.ts';
import type { PhotoAsk } from './picture.ts';
import { quadOf } from './region-quad.ts';
import { regionsOf } from './regions.ts';
import type { Mask, Region } from './regions.ts';
import { withoutThin } from './spread.ts';

/**
 * Sheets that a line of the table has caught: the dark seam between two boards, the grain of wood. Such a line runs
 * into them, so that no four corners are clear, or runs on to the rim, so that they seem to reach out of the picture.
 *
 *       ┌────────┐                ┌────────┐
 *     ──│        │──────    ->    │        │      what stays of the thing once thin parts are taken away
 *       │        │──              │        │
 *       └────────┘                └────────┘
 *
 * Takes       what was seen and the size of a sheet.
 * Gives       the same, the sheets that came free among the candidates. A thing of which no sheet comes free, or
 *             little stays, is left as it was: motifs on a ground like the table are no more than thin parts.
 */
export function freeOfLines(overview: Overview, ask: PhotoAsk): Overview {
  const { things, image } = overview;
  const least = LEAST_PART * image.width * image.height;
  const freed: Candidate[] = [];
  const parted = { unclear: [] as Region[], cutOff: [] as Region[] };
  const gone = new Set<Region>();
  for (const region of [...overview.cutOff, ...overview.unclear]) {
    if (region.pixels.length < least) continue;
    const parts = partsOf(region, things, least);
    if (parts === null) continue;
    const sheets = parts.map((part) => sheetOf(part, image, ask));
    if (sheets.every((sheet) => sheet === null)) continue;
    gone.add(region);
    sheets.forEach((sheet, at) => {
      const part = parts[at]!;
      if (sheet !== null) freed.push(sheet);
      else (endsAtRim(part, image) ? parted.cutOff : parted.unclear).push(part);
    });
  }
  if (gone.size === 0) return overview;
  const left = (regions: readonly Region[]): Region[] => regions.filter((one) => !gone.has(one));
  return {
    ...overview,
    candidates: [...overview.candidates, ...freed],
    unclear: [...left(overview.unclear), ...parted.unclear],
    cutOff: [...left(overview.cutOff), ...parted.cutOff],
    blocks: [...left(overview.blocks), ...parted.unclear],
  };
}

/** Part of the picture that a sheet covers at least: a sixth of what each of twelve does. */
const LEAST_PART = 0.01;
/** Half the width, as a part of the picture's long side, of what is taken away: a seam; a seam in a shadow. */
const NARROW = [1 / 170, 1 / 90, 1 / 45];
/** Part of a thing that stays when nothing but lines of the table is taken away. */
const STAYS = 0.85;
/** Part of its quad that a sheet fills; its corners are rounded a little. */
const WHOLE = 0.957;

/** What stays of a thing without its thin parts, at the least width that takes its lines away. */
function partsOf(region: Region, { width, height }: Mask, least: number): Region[] | null {
  const { pixels } = region;
  const widths = NARROW.map((part) => Math.round(part * Math.max(width, height)));
  const around = cutOut(region, { width, height }, Math.max(...widths) + 1);
  for (const by of widths) {
    const parts = regionsOf(withoutThin(around.mask, by), least).map((part) => around.back(part));
    const stays = parts.reduce((sum, region) => sum + region.pixels.length, 0);
    if (stays < STAYS * pixels.length) return null;
    if (parts.some((region) => wholeQuad(region, { width, height }) !== null)) return parts;
  }
  return null;
}

/** A thing with so many empty pixels around it as the picture holds, and the way back from there into the picture. */
function cutOut(
  { pixels, left, top, right, bottom }: Region,
  { width, height }: Pick<Mask, 'width' | 'height'>,
  rim: number,
): { readonly mask: Mask; readonly back: (part: Region) => Region } {
  const [x, y] = [Math.max(0, left - rim), Math.max(0, top - rim)];
  const across = Math.min(width, right + rim + 1) - x;
  const down = Math.min(height, bottom + rim + 1) - y;
  const of = new Uint8Array(across * down);
  const perWidth = 1 / width;
  for (let at = pixels.length - 1; at >= 0; at--) {
    const row = ((pixels[at]! + 0.5) * perWidth) | 0;
    of[(row - y) * across + pixels[at]! - row * width - x] = 1;
  }
  const perAcross = 1 / across;
  return {
    mask: { width: across, height: down, of },
    back: (part) => ({
      pixels: part.pixels.map((pixel) => {
        const row = ((pixel + 0.5) * perAcross) | 0;
        return (row + y) * width + pixel - row * across + x;
      }),
      left: part.left + x,
      right: part.right + x,
      top: part.top + y,
      bottom: part.bottom + y,
    }),
  };
}

/** The corners of a thing that is whole and that straight sides go around; null for others. */
function wholeQuad(
  region: Region,
  picture: Pick<Mask, 'width' | 'height'>,
): ReturnType<typeof quadOf> {
  if (endsAtRim(region, picture)) return null;
  const quad = quadOf(region, picture.width);
  return quad !== null && quad.fill >= WHOLE && isConvex(quad.corners) ? quad : null;
}

function sheetOf(
  region: Region,
  picture: Pick<Mask, 'width' | 'height'>,
  ask: PhotoAsk,
): Candidate | null {
  const quad = wholeQuad(region, picture);
  return quad !== null && isLikeSheet(quad.corners, ask.sheetMillimetres)
    ? { ...quad, area: polygonArea(quad.corners) }
    : null;
}
