import { piecesOf } from '../cutting/pieces-of.ts';
import type { GuideAsk } from './ask.ts';
import type { Mark } from './drawing.ts';
import type { CardFacts, Facts } from './facts.ts';
import { chapter, flow } from './flow.ts';
import { SIZES, SOFT } from './look.ts';
import { BODY, PAGE, badge, paragraph } from './page.ts';
import type { Block, GuidePage } from './page.ts';
import { layerSaid, sizeSaid } from './said.ts';
import { table } from './table.ts';

const GAP = 6;
const COLUMN = (PAGE.width - GAP) / 2;

/** The plain cutting list: every card with the sizes of its pieces and what they are cut from. */
export function listPages(ask: GuideAsk, facts: Facts): GuidePage[] {
  const intro = paragraph(
    'All pieces, card by card, lowest layer first, with what each is cut from. Width comes before height, as the piece lies on the card.',
    0,
    BODY.top - 3.5,
    PAGE.width,
    { size: SIZES.small, colour: SOFT },
  );
  const blocks = facts.cards.map((card) => cardBlock(ask, card));
  const top = BODY.top - 3.5 + intro.height + 3;
  const columns = flow(blocks, { top, bottom: BODY.bottom + 6 }, 4);
  const pages: Mark[][] = [];
  for (let at = 0; at < columns.length; at += 2)
    pages.push([
      ...intro.marks,
      ...columns[at]!,
      { kind: 'group', x: COLUMN + GAP, y: 0, marks: columns[at + 1] ?? [] },
    ]);
  return chapter('Cutting list', pages);
}

function cardBlock(ask: GuideAsk, card: CardFacts): Block {
  const pieces = piecesOf([{ number: card.number, layout: card.layout }]);
  const sizes = new Map(
    [...pieces.patterned, ...pieces.cardstock].map(({ layer, size }) => [layer, size]),
  );
  const rows = card.layers.map(({ layer, from }) => [
    layerSaid(layer.id),
    sizeSaid(sizes.get(layer.id)!, ask.ruler),
    from.replace(/ cardstock$/, ''),
  ]);
  const columns = [
    { head: card.layout.name, width: 29 },
    { head: '', width: 26.5, bold: true },
    { head: '', width: COLUMN - 10 - 55.5 },
  ];
  const block = table(columns, rows, 10, 0, SIZES.small);
  return {
    marks: [...badge(String(card.number), 4.2, 5, 4), ...block.marks],
    height: block.height,
  };
}
