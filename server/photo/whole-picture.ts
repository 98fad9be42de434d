import { rectangleQuad } from '../geometry/quad.ts';
import { isLikeSheet } from './find-sheets.ts';
import type { Found, OpenedPixels, PhotoAsk } from './picture.ts';

/**
 * The whole picture as one sheet, for a photo in which no edge of a paper shows: cut close, or scanned.
 *
 * Gives   the picture's own corners, unsure, so that she is asked to look; null when the picture has not
 *         the shape of a sheet, for then it is more likely an empty table.
 */
export function wholePicture(
  { preview, scale }: OpenedPixels,
  size: PhotoAsk['sheetMillimetres'],
): Found | null {
  const corners = rectangleQuad<'photo'>(0, 0, preview.width * scale, preview.height * scale);
  if (size === null || !isLikeSheet(corners, size, 0.05)) return null;
  return {
    corners,
    confidence: 0.4,
    notes: [
      'No edge of a paper shows, so the whole picture was taken for one sheet; drag its corners if it is not.',
    ],
  };
}
