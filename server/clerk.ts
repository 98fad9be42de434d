/**
 * The clerk works out what needs no search and yet takes longer than the event loop may stand still: how a pad
 * groups, what goes with a side, the guide for a screen. It sits in a thread of its own, beside the one where
 * plans are searched for, so that nobody waits for another's plan to see a pad.
 */
import type { Grouping, Sheet, Side } from './pad/pad.ts';
import type {
  AskInWords,
  ClassSetOfPlan,
  CompanionOf,
  CutsOnScreen,
  PairInWords,
} from './clerk-worker.ts';
import type { GuideOnScreen } from './guide/guide-on-screen.ts';
import type { StockNeed } from './guide/stock-needs.ts';
import { openLine } from './line.ts';
import type { Line } from './line.ts';
import { beside } from './running-code.ts';
import type { BestSupplies, Occasion } from './supplies/best-for.ts';
import type { Supply } from './supplies/supply.ts';
import { openThread } from './thread.ts';

export interface Clerk {
  group(sheets: readonly Sheet[]): Promise<Grouping>;
  /** The pairs of sides that go together best, so many of them. */
  pairs(sides: readonly Side[], most: number): Promise<PairInWords[]>;
  /** What goes with a side, the best first. */
  companions(side: Side, others: readonly Side[]): Promise<CompanionOf[]>;
  guideOnScreen(ask: AskInWords): Promise<GuideOnScreen>;
  cutsOnScreen(ask: AskInWords): Promise<CutsOnScreen>;
  /** A sheet of cardstock with its cuts as an SVG; null when the plan has no such sheet. */
  stockDrawing(ask: AskInWords, id: string): Promise<string | null>;
  classSet(ask: AskInWords): Promise<ClassSetOfPlan>;
  /** What cardstock a plan takes, or one card of it. */
  stockNeeds(ask: AskInWords, card: number | null): Promise<StockNeed[]>;
  /** The best of her supplies for these cards, and what is missing. */
  best(supplies: readonly Supply[], occasions: readonly Occasion[]): Promise<BestSupplies>;
}

/** More than this means a pad or a plan of a size that nobody has; it is refused then, in milliseconds. */
const PATIENCE = 60_000;
const WAITING = 256;

export function openClerk(): { readonly clerk: Clerk; readonly line: Line } {
  const thread = openThread(beside('clerk-worker'));
  const line = openLine(thread, { places: 1, waiting: WAITING, patience: PATIENCE, about: 'pad' });
  const clerk: Clerk = {
    group: (sheets) => line.run('group', sheets),
    pairs: (sides, most) => line.run('pairs', { sides, most }),
    companions: (side, others) => line.run('companions', { side, others }),
    guideOnScreen: (ask) => line.run('guide', ask),
    cutsOnScreen: (ask) => line.run('cuts', ask),
    stockDrawing: (ask, id) => line.run('stock', { ask, id }),
    classSet: (ask) => line.run('people', ask),
    stockNeeds: (ask, card) => line.run('needs', { ask, card }),
    best: (supplies, occasions) => line.run('best', { supplies, occasions }),
  };
  return { clerk, line };
}
