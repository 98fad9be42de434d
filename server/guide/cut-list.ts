import { piecesOf } from '../cutting/pieces-of.ts';
import { nameAmong } from '../layouts/layer-names.ts';
import type { GuideAsk } from './ask.ts';
import type { CardFacts, Facts } from './facts.ts';
import { COLUMN } from './flow.ts';
import { widthOf } from './letters.ts';
import { SIZES, SOFT } from './look.ts';
import { badge, paragraph } from './page.ts';
import type { Block } from './page.ts';
import { layerOf, sizeSaid } from './said.ts';
import { table } from './table.ts';
import type { Column } from './table.ts';

const INTRO =
  'All pieces, card by card, lowest layer first, with what each is cut from; what is stamped on it or cut with a die stands last. Width comes before height, as the piece lies on the card.';

/** The plain cutting list: every card with the sizes of its pieces and what they are cut from. */
export function cutListBlocks(ask: GuideAsk, facts: Facts): Block[] {
  const intro = paragraph(INTRO, 0, 0, COLUMN, { size: SIZES.note, colour: SOFT });
  const rows = facts.cards.map((card) => ({ card, rows: rowsOf(ask, card) }));
  const [name, size] = [0, 1].map((column) =>
    Math.max(
      ...rows.flatMap((one) =>
        one.rows.map((row) => widthOf(row[column]!, SIZES.note, column === 1)),
      ),
    ),
  );
  // As wide as the longest word takes, so that what a piece is cut from seldom goes on in a second line.
  const columns = [
    { head: '', width: Math.min(name! + AIR, 32) },
    { head: '', width: Math.min(size! + AIR, 34), bold: true },
  ];
  const rest = COLUMN - columns.reduce((sum, { width }) => sum + width, 0);
  return [
    intro,
    ...rows.map((one) => cardBlock(one.card, one.rows, [...columns, { head: '', width: rest }])),
  ];
}

/** Between two columns, in mm. */
const AIR = 3.2;

/** Each piece with its size and what it is cut from. */
function rowsOf(ask: GuideAsk, card: CardFacts): string[][] {
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
  return [...rows, ...elements];
}

function cardBlock(
  card: CardFacts,
  rows: readonly (readonly string[])[],
  columns: readonly Column[],
): Block {
  const name = paragraph(card.layout.name, 9.5, 1, COLUMN - 9.5, { size: SIZES.note, bold: true });
  const top = Math.max(7.4, name.height + 1.8) - LINE;
  const block = table(columns, rows, 0, top, SIZES.note);
  return {
    marks: [...badge(String(card.number), 3.8, 3.2, 3.6), ...name.marks, ...block.marks],
    height: top + block.height + 2,
  };
}

/** A table without heads begins with its line so far below its upper edge, in mm. */
const LINE = 4.6;
