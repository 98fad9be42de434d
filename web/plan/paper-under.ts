import type { Layer, LayoutListing } from '../../server/contract/layouts.ts';
import { layerPath } from '../layouts/layer-path.ts';

/** What a drawing of a card leaves free around it for its shadow, in mm. */
export const ROOM = 2;

const pen = document.createElement('canvas').getContext('2d');

/**
 * The layer that is seen at a place of a card, or null beside it.
 *
 * Takes       the layout and the place in mm from the upper left corner of the card.
 */
export function layerUnder({ layers }: LayoutListing, x: number, y: number): Layer | null {
  const top = layers.findLast(
    (layer) => pen?.isPointInPath(new Path2D(layerPath(layer)), x, y) ?? false,
  );
  return top ?? null;
}
