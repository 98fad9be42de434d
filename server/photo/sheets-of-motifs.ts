import { polygonArea } from '../geometry/polygon.ts';
import { isConvex } from '../geometry/quad.ts';
import { isLikeSheet } from './find-sheets.ts';
import type { Candidate, Overview } from './find-sheets.ts';
import type { PhotoAsk } from './picture.ts';
import { quadOf } from './region-quad.ts';
import type { Region } from './regions.ts';
import { apartQuads } from './apart-quads.ts';

/** Sheets of which only the motifs stand out from the table, of the size that the others tell. */
export function byMotifs(
  overview: Overview,
  sized: readonly Candidate[],
  usual: number,
  ask: PhotoAsk,
): Candidate[] {
  // Without a sheet that stands alone a single motif could pass for one.
  if (sized.length === 0) return [];
  const likely = overview.motifs.filter(
    ({ corners, area }) =>
      isLikeSheet(corners, ask.sheetMillimetres) && area > 0.75 * usual && area < 1.25 * usual,
  );
  return apartQuads(
    likely,
    sized.map(({ corners }) => corners),
  );
}

/** Motifs that lie together in the outline of a sheet, of which neither ground nor border was seen. */
export function sheetsOfMotifs(
  strewn: readonly Region[],
  told: readonly Candidate[],
  one: number,
  width: number,
  ask: PhotoAsk,
  fill: number,
): Candidate[] {
  const quads = strewn.flatMap((region): Candidate[] => {
    const quad = quadOf(region, width);
    if (quad === null || quad.fill < fill || !isConvex(quad.corners)) return [];
    const area = polygonArea(quad.corners);
    const isSized = area > 0.6 * one && area < 1.3 * one;
    return isSized && isLikeSheet(quad.corners, ask.sheetMillimetres, 0.25)
      ? [{ ...quad, area, byMotifs: true, loose: true }]
      : [];
  });
  return apartQuads(
    quads,
    told.map(({ corners }) => corners),
  );
}

/** Part of its quad that a group of motifs fills at least. */
export const GROUPED = 0.72;
