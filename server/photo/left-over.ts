import { contains, polygonArea } from '../geometry/polygon.ts';
import { rectangleQuad } from '../geometry/quad.ts';
import type { Candidate, Overview } from './find-sheets.ts';
import { quadOf } from './region-quad.ts';
import type { Region } from './regions.ts';
import { strewnOver } from './strewn.ts';

/** Pixels of things that are not table and not yet told to be sheets. */
export function unexplained(
  { unclear, candidates }: Overview,
  known: readonly Candidate[],
): number {
  const unclearArea = unclear.reduce((sum, { pixels }) => sum + pixels.length, 0);
  const oddArea = candidates
    .filter((candidate) => !known.includes(candidate))
    .reduce((sum, { area }) => sum + area, 0);
  const divided = known
    .filter((sheet) => !candidates.includes(sheet))
    .reduce((sum, { area }) => sum + area, 0);
  return Math.max(0, unclearArea + oddArea - divided);
}

/** A sheet that looks like the table for the most part: shreds of it are left, or its motifs alone. */
export function isSeenInParts(
  overview: Overview,
  whole: readonly Candidate[],
  usual: number,
): boolean {
  if (usual === 0) return false;
  const seen = overview.candidates.filter((candidate) => whole.includes(candidate));
  return (
    unexplained({ ...overview, candidates: seen }, whole) > SHREDS * usual ||
    strewnOver(overview, whole, usual).inside.length > 0
  );
}

/** Shreds of this part of a sheet make it worth while to look for straight lines around them. */
export const SHREDS = 0.1;

export interface LeftOver extends Candidate {
  /** Pixels of it that lie in no sheet. */
  readonly pixels: number;
}

/** Unclear things on the table that no sheet accounts for. */
export function leftOver({ unclear, image }: Overview, sheets: readonly Candidate[]): LeftOver[] {
  const { width } = image;
  return unclear.flatMap((region): LeftOver[] => {
    const some = region.pixels.filter((_, index) => index % 37 === 0);
    const free = some.filter((pixel) => {
      const place = { x: (pixel % width) + 0.5, y: Math.floor(pixel / width) + 0.5 };
      return !sheets.some(({ corners }) => contains(corners, place));
    });
    // A rim of shadow around a sheet that was told is nothing left over.
    if (free.length < 0.6 * some.length) return [];
    const { left, top, right, bottom } = region;
    const corners =
      quadOf(region, width)?.corners ??
      rectangleQuad<'photo'>(left, top, right - left + 1, bottom - top + 1);
    const area = polygonArea(corners);
    const pixels = (region.pixels.length * free.length) / some.length;
    return [{ corners, area, fill: region.pixels.length / area, pixels }];
  });
}

/** Those regions whose middle lies in no sheet. */
export function notWithin(
  regions: readonly Region[],
  sheets: readonly Pick<Candidate, 'corners'>[],
): readonly Region[] {
  return regions.filter(({ left, right, top, bottom }) => {
    const middle = { x: (left + right) / 2, y: (top + bottom) / 2 };
    return !sheets.some(({ corners }) => contains(corners, middle));
  });
}

/** Pixels of strewn things that lie in no sheet. */
export function strewnLeft(strewn: readonly Region[], sheets: readonly Candidate[]): number {
  return notWithin(strewn, sheets).reduce((sum, { pixels }) => sum + pixels.length, 0);
}
