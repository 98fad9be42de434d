import { hexFromLab } from '../colour/spaces.ts';
import type { Lab } from '../colour/lab.ts';
import type { GuideAsk } from './ask.ts';
import { rectangle } from './drawing.ts';
import { likePaper } from './like-paper.ts';
import { HAIR, SIZES, SOFT } from './look.ts';
import { COLUMN, under } from './flow.ts';
import { noteBox, paragraph, ruleAcross } from './page.ts';
import type { Block } from './page.ts';
import { capital, cardsSaid, counted } from './said.ts';
import { stockSizeSaid } from './stock-size.ts';
import type { StockNeed } from './stock-needs.ts';
import { purchases } from './stock-purchases.ts';
import type { StockPurchase } from './stock-purchases.ts';

const NOTE =
  'These colours were read from photos; a photo is not a measurement. Take the papers along and hold them beside cardstock and ink in daylight before you buy.';

/** What she does not have yet, or not enough of: colours in words and by her papers, figures for a shop's instrument last. */
export function shoppingBlocks(ask: GuideAsk, needs: readonly StockNeed[]): Block[] {
  const all = purchases(ask, needs);
  if (all.length === 0) return [];
  const [first, ...others] = all.map((purchase) => purchaseBlock(ask, purchase));
  return [
    // The note does not end a column by itself.
    under(noteBox(NOTE, 0, 0, COLUMN), first!, 2.5),
    ...others,
    paragraph(figuresSaid(all), 0, 0, COLUMN, { size: SIZES.small, colour: SOFT }),
  ];
}

/** 'In figures, CIELAB (D65): light blue 80, -2, -20.' */
function figuresSaid(all: readonly StockPurchase[]): string {
  const colours = new Set(all.map(({ name, lab }) => `${name} ${figuresOf(lab)}`));
  return `In figures, CIELAB (D65): ${[...colours].join('; ')}.`;
}

function figuresOf({ l, a, b }: Lab): string {
  return [l, a, b].map((value) => Math.round(value)).join(', ');
}

/** '2 sheets of 8 1/2 x 11 in', '2 more sheets of 8 1/2 x 11 in: 3 are needed and 1 is left'; '' for an ink. */
export function sheetsToBuySaid({ ruler }: GuideAsk, purchase: StockPurchase): string {
  const { kind, sheets, more } = purchase;
  if (kind === 'ink') return '';
  if (sheets === null) return 'a piece is larger than the usual sheets; ask for a larger one';
  const size = stockSizeSaid(sheets.size, ruler);
  if (more === null) return `${counted(sheets.count, 'sheet')} of ${size}`;
  const { left, needed } = more;
  const is = left === 1 ? 'is' : 'are';
  return `${counted(sheets.count, 'more sheet')} of ${size}: ${needed} are needed and ${left} ${is} left`;
}

/** An area of so many square mm, rounded up. */
function areaSaid(area: number, { ruler }: GuideAsk): string {
  return ruler === 'in'
    ? counted(Math.ceil(area / SQUARE_INCH), 'square inch', 'square inches')
    : `${Math.ceil(area / 100)} square cm`;
}

/** In square mm. */
const SQUARE_INCH = 25.4 ** 2;

function purchaseBlock(ask: GuideAsk, purchase: StockPurchase): Block {
  const { kind, lab, name, cards, area, more } = purchase;
  const title = more === null ? `${capital(name)} ${kind}` : name;
  const words = paragraph(title, 22, 0, COLUMN - 22, { bold: true });
  const like = more === null ? likePaper(ask, lab, cards) : null;
  const close = like === null ? '' : ` Close to ${like}.`;
  const bought =
    kind === 'ink'
      ? `To stamp ${cardsSaid(cards)}.${close}`
      : `${capital(sheetsToBuySaid(ask, purchase))}. For ${cardsSaid(cards)}: about ${areaSaid(area, ask)} in all.${close}`;
  const small = paragraph(bought, 22, words.height + 1, COLUMN - 22, {
    size: SIZES.note,
    colour: SOFT,
  });
  const height = Math.max(15, words.height + small.height + 3);
  return {
    marks: [
      {
        kind: 'area',
        corners: rectangle(0, 0, 16, 12),
        fill: hexFromLab(lab),
        edge: { width: 0.2, colour: HAIR },
      },
      ...words.marks,
      ...small.marks,
      ruleAcross(0, height, COLUMN),
    ],
    height: height + 3,
  };
}
