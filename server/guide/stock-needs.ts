import { cardstockSettings } from '../cutting/settings.ts';
import { cutScheme } from '../cutting/cut-scheme.ts';
import { piecesOf } from '../cutting/pieces-of.ts';
import type { CuttingScheme, Piece } from '../cutting/piece.ts';
import type { Size } from '../lengths/length.ts';
import { parseSize } from '../lengths/parse-size.ts';
import { Refusal } from '../refusals/refusal.ts';
import type { GuideAsk } from './ask.ts';
import type { Facts, StockFacts } from './facts.ts';
import { cardsSaid, pieceSaid, sizeSaid } from './said.ts';
import { stockSize } from './stock-size.ts';

/** A cardstock colour with all pieces cut from it, and its sheets. */
export interface StockNeed {
  readonly stock: StockFacts;
  readonly pieces: readonly Piece[];
  /** Null when a piece is larger than a sheet. */
  readonly scheme: CuttingScheme | null;
}

/** What cardstock the batch takes, colour by colour. */
export function stockNeeds(ask: GuideAsk, facts: Facts): StockNeed[] {
  const needs = new Map<string, { stock: StockFacts; pieces: Piece[] }>();
  for (const card of facts.cards) {
    const { cardstock, patterned } = piecesOf([{ number: card.number, layout: card.layout }]);
    for (const { layer, stock } of card.layers) {
      if (stock === null) continue;
      const piece = [...cardstock, ...patterned].find((one) => one.layer === layer.id)!;
      const need = needs.get(stock.key) ?? { stock, pieces: [] };
      need.pieces.push(piece);
      needs.set(stock.key, need);
    }
  }
  return [...needs.values()].map(({ stock, pieces }) => ({
    stock,
    pieces,
    scheme: stockScheme(ask, pieces),
  }));
}

/** The sheets that pieces of one colour are cut from; null when one is larger than a sheet. */
export function stockScheme(ask: GuideAsk, pieces: readonly Piece[]): CuttingScheme | null {
  for (const sheet of sheetsFor(ask)) {
    try {
      return cutScheme(pieces, sheet, { ...cardstockSettings(ask.ruler), steps: 40 });
    } catch (fault) {
      if (!(fault instanceof Refusal && fault.kind === 'does-not-fit')) throw fault;
    }
  }
  return null;
}

function sheetsFor({ ruler, stock }: GuideAsk): Size[] {
  return [stock ?? stockSize(undefined, ruler), parseSize('12 x 12 in')];
}

/** Pieces of one size. */
export interface StockRow {
  readonly count: number;
  readonly size: string;
  /** 'base of cards 1, 2 and 5; mat of card 3'. */
  readonly use: string;
}

/** Pieces of one size in one row, the largest first. */
export function stockRows({ ruler }: GuideAsk, { pieces }: StockNeed): StockRow[] {
  const sizes = new Map<string, Piece[]>();
  for (const piece of pieces) {
    const key = sizeSaid(piece.size, ruler);
    sizes.set(key, [...(sizes.get(key) ?? []), piece]);
  }
  return [...sizes]
    .sort(([, a], [, b]) => area(b[0]!) - area(a[0]!))
    .map(([size, alike]) => ({ count: alike.length, size, use: wherefore(alike) }));
}

function area({ size }: Piece): number {
  return size.width * size.height;
}

/** 'base of cards 1, 2 and 5; mat of card 3'. */
function wherefore(pieces: readonly Piece[]): string {
  const layers = new Map<string, number[]>();
  for (const piece of pieces) {
    const name = pieceSaid(piece);
    layers.set(name, [...(layers.get(name) ?? []), piece.card]);
  }
  return [...layers].map(([layer, cards]) => `${layer} of ${cardsSaid(cards)}`).join('; ');
}
