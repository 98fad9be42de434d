import { rectangleQuad } from '../geometry/quad.ts';
import { hasBareSide } from './bare-side.ts';
import { isLikeSheet } from './find-sheets.ts';
import { isPrinted } from './printed.ts';
import type { Found, OpenedPixels, PhotoAsk, Picture } from './picture.ts';

/**
 * The whole picture as one sheet, for a photo in which no edge of a paper shows: cut close, or scanned.
 *
 * Gives   the picture's own corners, unsure, so that she is asked to look; null when the picture has not
 *         the shape of a sheet, for then it is more likely an empty table, and when a table shows along a side. A phone's picture has nearly the
 *         shape of an oblong sheet (4 : 3 beside the 1.41 of A5), which says less: then a print has to show too.
 */
export function wholePicture(
  { preview, scale }: OpenedPixels,
  size: PhotoAsk['sheetMillimetres'],
): Found | null {
  const corners = rectangleQuad<'photo'>(0, 0, preview.width * scale, preview.height * scale);
  if (size === null) return null;
  const isOblong = Math.abs(Math.log(size.width / size.height)) > 0.02;
  const isSheet = isOblong
    ? isLikeSheet(corners, size, ABOUT) && isPrinted(preview)
    : isLikeSheet(corners, size, 0.05);
  if (!isSheet || isCutOff(preview)) return null;
  return {
    corners,
    confidence: 0.4,
    notes: [
      'No edge of a paper shows, so the whole picture was taken for one sheet; drag its corners if it is not.',
    ],
  };
}

/** A print with a bare table along one side lies there whole or goes out of the picture, but does not fill it. */
export function isCutOff(preview: Picture): boolean {
  return isPrinted(preview) && hasBareSide(preview);
}

/** How far the shape of the picture may be off an oblong sheet's, as a logarithm: 3 : 2 and 4 : 3 beside A5. */
const ABOUT = 0.075;
