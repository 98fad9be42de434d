import { rectangleQuad } from '../geometry/quad.ts';
import { bareSides } from './bare-side.ts';
import { isLikeSheet } from './find-sheets.ts';
import { isPrinted } from './printed.ts';
import type { Found, OpenedPixels, PhotoAsk, Picture } from './picture.ts';

/**
 * The whole picture as one sheet, for a photo in which no edge of a paper shows: cut close, or scanned.
 *
 * Gives   the picture's own corners, unsure, so that she is asked to look; null when the picture has not the shape of a
 *         sheet, for then it is more likely an empty table, and when a table shows along two sides and more. A plain
 *         strip along one side may be the sheet's own border: she is told of it. A phone's picture has nearly the shape
 *         of an oblong sheet (4 : 3 beside the 1.41 of A5), which says less: then a print has to show too.
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
  const bare = isSheet ? sidesOfTable(preview) : 0;
  if (!isSheet || bare > BORDER) return null;
  return {
    corners,
    confidence: 0.4,
    notes: [
      'No edge of a paper shows, so the whole picture was taken for one sheet; drag its corners if it is not.',
      ...(bare === 0
        ? []
        : [
            'A plain strip runs along one side: if it is the table, the sheet is cut off, so photograph it again whole; if it is the sheet’s own border, all is well.',
          ]),
    ],
  };
}

/** Whether a paper with a bare table along sides lies there whole or goes out of the picture, and does not fill it. */
export function isBesideTable(preview: Picture): boolean {
  return bareSides(preview) > 0;
}

/** Sides along which a scanned or close-cut sheet may have a plain border of its own. */
const BORDER = 1;

function sidesOfTable(preview: Picture): number {
  return isPrinted(preview) ? bareSides(preview) : 0;
}

/** How far the shape of the picture may be off an oblong sheet's, as a logarithm: 3 : 2 and 4 : 3 beside A5. */
const ABOUT = 0.075;
