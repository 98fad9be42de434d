import type { PartOfSide } from '../colour/colour-map.ts';
import type { PlacedPiece } from '../cutting/piece.ts';
import type { Size } from '../lengths/length.ts';

/**
 * Which part of a side a piece shows. A piece that shows the face that lies down is cut through the sheet and lies
 * mirrored there, as the sheet is turned over sideways, like a page.
 */
export function placeOn(
  { piece, x, y, turned }: PlacedPiece,
  sheet: Size,
  otherFace: boolean,
): PartOfSide {
  const [across, down] = turned
    ? [piece.size.height, piece.size.width]
    : [piece.size.width, piece.size.height];
  return {
    x: (otherFace ? sheet.width - x - across : x) / sheet.width,
    y: y / sheet.height,
    width: across / sheet.width,
    height: down / sheet.height,
  };
}
