import { nameOf } from '../../colour/names.ts';
import type * as Wire from '../../contract/supplies.ts';
import type { GuideAsk } from '../../guide/ask.ts';
import { likePaper } from '../../guide/like-paper.ts';
import { sheetsToBuySaid } from '../../guide/shopping-blocks.ts';
import { stockSizeSaid } from '../../guide/stock-size.ts';
import type { StockNeed } from '../../guide/stock-needs.ts';
import { purchases, sheetsTaken } from '../../guide/stock-purchases.ts';
import type { StockPurchase } from '../../guide/stock-purchases.ts';
import type { RankedCardstock } from '../../supplies/best-cardstock.ts';
import type { BestSupplies, SharedAccent, SharedStrip } from '../../supplies/best-for.ts';
import type { RankedInk } from '../../supplies/best-ink.ts';
import { INK_RANGE, inkOnPaper } from '../../supplies/ink-on-paper.ts';
import type { Purchase } from '../../supplies/shopping-list.ts';
import { CAUTION } from '../caution.ts';
import { colourOnWire } from './colours.ts';

/** The cardstock that planned cards are cut from, and for whom it is counted. */
export interface Cardstock {
  readonly ask: GuideAsk;
  readonly needs: readonly StockNeed[];
}

export function bestOnWire(best: BestSupplies, cardstock: Cardstock | null): Wire.BestSupplies {
  return {
    cardstock: best.cardstock.map(cardstockOnWire),
    accents: best.accents.map(accentOnWire),
    greetings: best.greetings.map(greetingOnWire),
    missing: cardstock === null ? best.missing.map((one) => purchaseOnWire(one)) : toBuy(cardstock),
    takes: cardstock === null ? [] : cardstock.needs.map((need) => takenOnWire(cardstock, need)),
    range: INK_RANGE,
    caution: CAUTION,
  };
}

function cardstockOnWire(ranked: RankedCardstock): Wire.BestSupplies['cardstock'][number] {
  const { supply, use, worth, match, alike } = ranked;
  return {
    supply: supply.id,
    name: supply.name,
    colour: colourOnWire(supply.lab),
    use,
    worth,
    verdict: match.verdict,
    nearest: colourOnWire(match.nearest.lab),
    difference: match.difference,
    uncertainty: match.uncertainty,
    why: whyOf(ranked),
    alike: alike.map(({ id, name }) => ({ supply: id, name })),
  };
}

function whyOf({ use, match }: RankedCardstock): string {
  if (use === 'quiet') return 'A quiet neutral: it keeps the papers apart without joining in.';
  if (use !== 'odd') return match.reason;
  return `${match.verdict === 'apart' ? 'Not in these papers' : 'In few of these papers'}: ${match.reason}`;
}

function accentOnWire({ accent, cards, best }: SharedAccent): Wire.BestSupplies['accents'][number] {
  return {
    accent: colourOnWire(accent.lab),
    cards: numbers(cards),
    best:
      best === null
        ? null
        : {
            ink: best.ink.id,
            name: best.ink.name,
            verdict: best.match.verdict,
            difference: best.match.difference,
            uncertainty: best.match.uncertainty,
            reason: best.match.reason,
          },
  };
}

function greetingOnWire({ strip, cards, inks }: SharedStrip): Wire.Greeting {
  return {
    strip: colourOnWire(strip),
    cards: numbers(cards),
    inks: inks.map((one) => stampedOnWire(one, strip)),
  };
}

function stampedOnWire(
  { ink, printed, reads, match }: RankedInk,
  strip: SharedStrip['strip'],
): Wire.StampedInk {
  const near = match?.verdict === 'match' || match?.verdict === 'close';
  return {
    ink: ink.id,
    name: ink.name,
    printed: colourOnWire(printed),
    uncertainty: inkOnPaper(ink.lab, strip).uncertainty,
    reads: reads.verdict,
    contrast: reads.contrast,
    lighter: reads.lighter,
    reason: reads.reason,
    picksUp: near ? nameOf(match.nearest.lab).words : null,
  };
}

/** The shopping list of the guide. */
function toBuy({ ask, needs }: Cardstock): Wire.Purchase[] {
  return purchases(ask, needs).map((purchase) => ({
    ...purchaseOnWire(purchase),
    like: purchase.more === null ? likePaper(ask, purchase.lab, purchase.cards) : null,
    sheets: sheetsToBuySaid(ask, purchase) || null,
    more: purchase.more === null ? null : { ...purchase.more, name: purchase.name },
  }));
}

function purchaseOnWire({ kind, lab, cards, area }: Purchase | StockPurchase): Wire.Purchase {
  return {
    kind,
    colour: colourOnWire(lab),
    like: null,
    cards: numbers(cards),
    area: area === 0 ? null : Math.ceil(area / 100),
    sheets: null,
    more: null,
  };
}

function takenOnWire({ ask }: Cardstock, { stock, scheme }: StockNeed): Wire.StockTaken {
  const sheets = sheetsTaken(ask, scheme);
  return {
    name: stock.name,
    colour: colourOnWire(stock.lab),
    supply: stock.toBuy ? null : stock.key,
    sheets: sheets && { count: sheets.count, size: stockSizeSaid(sheets.size, ask.ruler) },
    left: ask.supplies.find(({ id }) => id === stock.key)?.sheets ?? null,
  };
}

/** A side by itself is no card. */
function numbers(cards: readonly number[]): number[] {
  return cards.filter((card) => card > 0);
}
