import { toMillimetres } from '../lengths/length.ts';
import type { Layout } from '../layouts/layout.ts';
import { CARD_ROOM, cardMarks } from './card-marks.ts';
import type { Paint } from './paint.ts';
import { svgOf } from './svg.ts';

/**
 * A picture of a card front, in true proportion, with the real papers in its layers: an SVG.
 *
 * Takes       the layout and what each layer shows. `name` keeps ids apart where several pictures stand
 *             on one page. Addresses of swatches are taken as they are: a picture that is to be shown
 *             or turned into pixels away from the page needs them as data addresses.
 */
export function cardPicture(
  layout: Layout,
  paint: (layerId: string) => Paint,
  name = `card-${layout.id}`,
): string {
  const size = {
    width: toMillimetres(layout.card.width) + 2 * CARD_ROOM,
    height: toMillimetres(layout.card.height) + 2 * CARD_ROOM,
  };
  return svgOf(cardMarks(layout, paint), size, { x: -CARD_ROOM, y: -CARD_ROOM }, name);
}
