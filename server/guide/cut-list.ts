import { piecesOf } from '../cutting/pieces-of.ts';
import { nameAmong } from '../layouts/layer-names.ts';
import type { GuideAsk } from './ask.ts';
import type { CardFacts, Facts } from './facts.ts';
import { COLUMN } from './flow.ts';
import { SIZES, SOFT } from './look.ts';
import { badge, paragraph } from './page.ts';
import type { Block } from './page.ts';
import { layerOf, sizeSaid } from './said.ts';
import { table } from './table.ts';

const INTRO =
  'All pieces, card by card, lowest layer first, with what each is cut from; what is stamped on it or cut with a die stands last. Width comes before height, as the piece lies on the card.';

/** The plain cutting list: every card with the sizes of its pieces and what they are cut from. */
export function cutListBlocks(ask: GuideAsk, facts: Facts): Block[] {
  const intro = paragraph(INTRO, 0, 0, COLUMN, { size: SIZES.note, colour: SOFT });
  return [intro, ...facts.cards.map((card) => cardBlock(ask, card))];
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
    { head: '', width: 27.5 },
    { head: '', width: 30, bold: true },
    { head: '', width: COLUMN - 57.5 },
  ];
  const name = paragraph(card.layout.name, 9.5, 1, COLUMN - 9.5, { size: SIZES.note, bold: true });
  const top = Math.max(7.4, name.height + 1.8) - LINE;
  const block = table(columns, [...rows, ...elements], 0, top, SIZES.note);
  return {
    marks: [...badge(String(card.number), 3.8, 3.2, 3.6), ...name.marks, ...block.marks],
    height: top + block.height + 2,
  };
}

/** A table without heads begins with its line so far below its upper edge, in mm. */
const LINE = 4.6;
