import type { Piece } from '../cutting/piece.ts';
import type { Size } from '../lengths/length.ts';
import { toMillimetres } from '../lengths/length.ts';
import { missingFor } from '../supplies/best-for.ts';
import { shoppingList } from '../supplies/shopping-list.ts';
import type { Purchase, Wanted } from '../supplies/shopping-list.ts';
import type { GuideAsk } from './ask.ts';
import { occasionsOf } from './occasions.ts';
import { stockScheme } from './stock-needs.ts';
import type { StockNeed } from './stock-needs.ts';

/** Something to buy: cardstock by the sheet, or an ink. */
export interface StockPurchase extends Purchase {
  /** How many sheets of which size; null for an ink, and when a piece is larger than the usual sheets. */
  readonly sheets: { readonly count: number; readonly size: Size } | null;
  /** A cardstock of hers that runs short; null for a colour that she does not have. */
  readonly more: Short | null;
}

export interface Short {
  readonly supply: string;
  readonly left: number;
  readonly needed: number;
}

/** All that is to buy for a batch, wherever it is told: its cardstock, then the inks that its stamping takes. */
export function purchases(ask: GuideAsk, needs: readonly StockNeed[]): StockPurchase[] {
  const inks = missingFor(ask.supplies, occasionsOf(ask)).filter(({ kind }) => kind === 'ink');
  return [
    ...stockPurchases(ask, needs),
    ...inks.map((ink): StockPurchase => ({ ...ink, sheets: null, more: null })),
  ];
}

type WantedPiece = Wanted & { readonly piece: Piece };

/**
 * What cardstock is to buy for a batch: colours that she does not have, merged so that one purchase serves
 * several cards and its pieces share sheets; and more of what she has where fewer sheets are left than it takes.
 *
 * Takes       the needs of one person; for several they are counted person by person. A cardstock of which
 *             she has not said how many sheets are left is taken to be enough.
 */
export function stockPurchases(ask: GuideAsk, needs: readonly StockNeed[]): StockPurchase[] {
  const wanted = needs
    .filter(({ stock }) => stock.toBuy)
    .flatMap(({ stock, pieces }) => pieces.map((piece) => wish(stock.lab, piece)));
  return [
    ...shoppingList(wanted).map((purchase) => newColour(ask, purchase)),
    ...needs.flatMap((need) => runsShort(ask, need) ?? []),
  ];
}

/** Sheets that a cardstock takes for all people, and their size; null when a piece is larger than a sheet. */
export function sheetsTaken(
  { people = 1 }: GuideAsk,
  scheme: StockNeed['scheme'],
): StockPurchase['sheets'] {
  return scheme === null ? null : { count: people * scheme.slots.length, size: scheme.sheet };
}

function newColour(ask: GuideAsk, purchase: Purchase<WantedPiece>): StockPurchase {
  const pieces = purchase.serves.map(({ piece }) => piece);
  const sheets = sheetsTaken(ask, stockScheme(ask, pieces));
  return { ...purchase, area: (ask.people ?? 1) * purchase.area, sheets, more: null };
}

function runsShort(ask: GuideAsk, { stock, pieces, scheme }: StockNeed): StockPurchase | null {
  const left = ask.supplies.find(({ id }) => id === stock.key)?.sheets ?? null;
  const taken = sheetsTaken(ask, scheme);
  if (stock.toBuy || left === null || taken === null || taken.count <= left) return null;
  const serves = pieces.map((piece) => wish(stock.lab, piece));
  return {
    kind: 'cardstock',
    lab: stock.lab,
    name: stock.name,
    cards: [...new Set(serves.map(({ card }) => card))].sort((a, b) => a - b),
    area: (ask.people ?? 1) * serves.reduce((sum, { area }) => sum + area, 0),
    serves,
    sheets: { ...taken, count: taken.count - left },
    more: { supply: stock.key, left, needed: taken.count },
  };
}

function wish(lab: Wanted['lab'], piece: Piece): WantedPiece {
  const { card, size } = piece;
  const area = toMillimetres(size.width) * toMillimetres(size.height);
  return { kind: 'cardstock', lab, card, area, piece };
}
