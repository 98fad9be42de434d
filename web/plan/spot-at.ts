import { millimetres } from '../lengths/lengths.ts';
import { layerCalled } from '../layouts/layer-names.ts';
import { layoutOf } from './layout-of.ts';
import { layerUnder, ROOM } from './paper-under.ts';
import type { Spot } from './swap-papers.ts';
import type { OnTable } from './table-of.ts';

/** Which card, and which of its papers, is drawn at a place of the window; null beside the cards. */
export function spotAt(x: number, y: number, table: OnTable): Spot | null {
  const place = document
    .elementFromPoint(x, y)
    ?.closest('.planned-card')
    ?.querySelector('.card-place');
  if (!(place instanceof HTMLElement)) return null;
  const card = table.plan.cards.find(({ number }) => String(number) === place.dataset.card);
  const layout = card && layoutOf(table, card);
  if (!layout) return null;
  const box = place.getBoundingClientRect();
  const scale = ((millimetres(layout.card.width) ?? 0) + 2 * ROOM) / box.width;
  const layer = layerUnder(layout, (x - box.left) * scale - ROOM, (y - box.top) * scale - ROOM);
  const paper = layer?.material === 'patterned';
  return {
    card: card.number,
    layer: paper ? layer.id : null,
    ...(layer && !paper && { plain: layerCalled(layout, layer.id) }),
  };
}
