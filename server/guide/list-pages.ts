import { piecesOf } from '../cutting/pieces-of.ts';
import { nameAmong } from '../layouts/layer-names.ts';
import type { GuideAsk } from './ask.ts';
import type { CardFacts, Facts } from './facts.ts';
import { COLUMN, chapter, flowInTwo } from './flow.ts';
import { SIZES, SOFT } from './look.ts';
import { BODY, PAGE, badge, paragraph } from './page.ts';
import type { Block, GuidePage } from './page.ts';
import { layerOf, sizeSaid } from './said.ts';
import { table } from './table.ts';

/** The plain cutting list: every card with the sizes of its pieces and what they are cut from. */
export function listPages(ask: GuideAsk, facts: Facts): GuidePage[] {
  const intro = paragraph(
    'All pieces, card by card, lowest layer first, with what each is cut from; what is stamped on it or cut with a die stands last. Width comes before height, as the piece lies on the card.',
    0,
    BODY.top - 3.5,
    PAGE.width,
    { size: SIZES.note, colour: SOFT },
  );
  const blocks = facts.cards.map((card) => cardBlock(ask, card));
  const top = BODY.top - 3.5 + intro.height + 3;
  const pages = flowInTwo(blocks, { top, bottom: BODY.bottom + 7 }, 3.4);
  return chapter(
    'Cutting list',
    pages.map((marks) => [...intro.marks, ...marks]),
  );
}

function cardBlock(ask: GuideAsk, card: CardFacts): Block {
  const pieces = piecesOf([{ number: card.number, layout: card.layout }]);
  const sizes = new Map(
    [...pieces.patterned, ...pieces.cardstock].map(({ layer, size }) => [layer, size]),
  );
  const rows = card.layers.map(({ layer, from }) => [
    layerOf(card.layout, layer.id),
    sizeSaid(sizes.get(layer.id)!, ask.ruler),
    from.replace(/ cardstock$/, ''),
  ]);
  const elements = (card.layout.elements ?? []).map(({ id, kind, box }, _, all) => [
    nameAmong(
      all.map((one) => one.id),
      id,
    ),
    sizeSaid(box, ask.ruler),
    kind === 'stamp' ? 'stamped' : 'cut with its die',
  ]);
  const columns = [
    { head: card.layout.name, width: 27.5 },
    { head: '', width: 28.5, bold: true },
    { head: '', width: COLUMN - 10 - 56 },
  ];
  const block = table(columns, [...rows, ...elements], 10, 0, SIZES.note);
  return {
    marks: [...badge(String(card.number), 4.2, 5, 4), ...block.marks],
    height: block.height,
  };
}
