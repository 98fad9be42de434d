import type { GuideAsk } from './ask.ts';
import type { Facts, SlotFacts } from './facts.ts';
import { SIZES } from './look.ts';
import type { Block } from './page.ts';
import { layerSaid, sizeSaid } from './said.ts';
import { layersOf } from './slot-pages.ts';
import { table } from './table.ts';

/** The pieces that a sheet gives, to check off: card, layer, size, and the side that shows. */
export function pieceRows(
  ask: GuideAsk,
  facts: Facts,
  one: SlotFacts,
  y: number,
  width: number,
): Block {
  const layers = layersOf(facts, one);
  const rows = one.slot.pieces
    .map(({ piece }) => piece)
    .sort((a, b) => a.card - b.card)
    .map((piece) => [
      String(piece.card),
      layerSaid(piece.layer),
      sizeSaid(piece.size, ask.ruler),
      layers.get(piece.id)?.paper?.face ?? 'front',
    ]);
  const columns = [
    { head: 'Card', width: 12, bold: true },
    { head: 'Piece', width: width - 74 },
    { head: 'Width x height on the card', width: 46, bold: true },
    { head: 'Shows', width: 16 },
  ];
  const size = rows.length > 8 ? SIZES.small : SIZES.body;
  return table(columns, rows, 0, y, size);
}
