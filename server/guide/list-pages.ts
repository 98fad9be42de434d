import { piecesOf } from '../cutting/pieces-of.ts';
import type { GuideAsk } from './ask.ts';
import type { CardFacts, Facts } from './facts.ts';
import { chapter, flow } from './flow.ts';
import { SIZES } from './look.ts';
import { BODY, PAGE, badge, paragraph } from './page.ts';
import type { Block, GuidePage } from './page.ts';
import { layerSaid, sizeSaid } from './said.ts';
import { table } from './table.ts';

/** The plain cutting list: every card with the sizes of its pieces and what they are cut from. */
export function listPages(ask: GuideAsk, facts: Facts): GuidePage[] {
  const intro = paragraph(
    'All pieces, card by card, lowest layer first. Width comes before height, as the piece lies on the card.',
    0,
    0,
    PAGE.width,
  );
  const blocks = [intro, ...facts.cards.map((card) => cardBlock(ask, card))];
  return chapter('Cutting list', flow(blocks, { top: BODY.top - 3.5, bottom: BODY.bottom }, 5));
}

function cardBlock(ask: GuideAsk, card: CardFacts): Block {
  const pieces = piecesOf([{ number: card.number, layout: card.layout }]);
  const sizes = new Map(
    [...pieces.patterned, ...pieces.cardstock].map(({ layer, size }) => [layer, size]),
  );
  const rows = card.layers.map(({ layer, from }) => [
    layerSaid(layer.id),
    sizeSaid(sizes.get(layer.id)!, ask.ruler),
    from,
  ]);
  const columns = [
    { head: card.layout.name, width: 46 },
    { head: 'Width x height', width: 50, bold: true },
    { head: 'From', width: PAGE.width - 12 - 96 },
  ];
  const block = table(columns, rows, 12, 0, SIZES.small * 1.1);
  return {
    marks: [...badge(String(card.number), 4.4, 5, 4.4), ...block.marks],
    height: block.height,
  };
}
