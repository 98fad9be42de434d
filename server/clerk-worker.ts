/** What the clerk does in its thread, values in and values out. */

import type { GuideAsk } from './guide/ask.ts';
import { classFacts } from './guide/class-facts.ts';
import type { ClassFacts } from './guide/class-facts.ts';
import { factsOf } from './guide/facts.ts';
import { guideOnScreen, stockDrawing } from './guide/guide-on-screen.ts';
import type { GuideOnScreen } from './guide/guide-on-screen.ts';
import { roundingNote } from './guide/rounding.ts';
import { slotsOnScreen } from './guide/slots-on-screen.ts';
import { stockNeeds } from './guide/stock-needs.ts';
import type { StockNeed } from './guide/stock-needs.ts';
import { answerWith } from './line.ts';
import type { Answer } from './line.ts';
import { groupPad } from './pad/group-pad.ts';
import type { Grouping, Sheet, Side } from './pad/pad.ts';
import { coordination, coordinationOf } from './plan/coordination/coordination.ts';
import { bestFor } from './supplies/best-for.ts';
import type { BestSupplies, Occasion } from './supplies/best-for.ts';
import type { Supply } from './supplies/supply.ts';

/** What a guide is made from where it is told without pictures; a function does not travel to a thread. */
export type AskInWords = Omit<GuideAsk, 'picture'>;

export interface PairInWords {
  readonly a: string;
  readonly b: string;
  readonly score: number;
  readonly words: readonly string[];
}

export interface CompanionOf {
  readonly side: string;
  readonly score: number;
  readonly words: readonly string[];
}

export interface ClassSetOfPlan {
  readonly set: ClassFacts;
  /** What the sheet of each slot is called. */
  readonly labels: Readonly<Record<string, string>>;
}

/** How the sheets of a plan are cut, for a screen. */
export interface CutsOnScreen {
  readonly rounding: ReturnType<typeof roundingNote>;
  readonly slots: ReturnType<typeof slotsOnScreen>;
}

export function group(sheets: readonly Sheet[]): Promise<Answer<Grouping>> {
  return answerWith(() => groupPad(sheets));
}

export function pairs(task: {
  readonly sides: readonly Side[];
  readonly most: number;
}): Promise<Answer<PairInWords[]>> {
  return answerWith(() =>
    coordinationOf(task.sides)
      .slice(0, task.most)
      .map(({ a, b, score, words }) => ({ a, b, score, words })),
  );
}

/** How the paper that she has open and one of the list below it are called. */
const OPEN_AND_OTHER = { a: 'the open paper', b: 'this one' };

export function companions(task: {
  readonly side: Side;
  readonly others: readonly Side[];
}): Promise<Answer<CompanionOf[]>> {
  return answerWith(() =>
    task.others
      .map((other) => {
        const { score, words } = coordination(task.side, other, undefined, OPEN_AND_OTHER);
        return { side: other.id, score, words };
      })
      .sort((p, q) => q.score - p.score),
  );
}

export function guide(ask: AskInWords): Promise<Answer<GuideOnScreen>> {
  return answerWith(() => guideOnScreen(withoutPictures(ask)));
}

export function cuts(given: AskInWords): Promise<Answer<CutsOnScreen>> {
  return answerWith(() => {
    const ask = withoutPictures(given);
    return { rounding: roundingNote(ask), slots: slotsOnScreen(ask) };
  });
}

export function stock(task: {
  readonly ask: AskInWords;
  readonly id: string;
}): Promise<Answer<string | null>> {
  return answerWith(() => stockDrawing(withoutPictures(task.ask), task.id));
}

export function people(given: AskInWords): Promise<Answer<ClassSetOfPlan>> {
  return answerWith(() => {
    const ask = withoutPictures(given);
    const facts = factsOf(ask);
    const labels = facts.slots.map(({ slot, sheet }) => [slot.id, sheet.label]);
    return {
      set: classFacts(ask, facts, stockNeeds(ask, facts)),
      labels: Object.fromEntries(labels) as Record<string, string>,
    };
  });
}

export function needs(task: {
  readonly ask: AskInWords;
  readonly card: number | null;
}): Promise<Answer<StockNeed[]>> {
  return answerWith(() => {
    const ask = withoutPictures(task.ask);
    const facts = factsOf(ask);
    const cards = facts.cards.filter(({ number }) => task.card === null || number === task.card);
    return stockNeeds(ask, { ...facts, cards });
  });
}

export function best(task: {
  readonly supplies: readonly Supply[];
  readonly occasions: readonly Occasion[];
}): Promise<Answer<BestSupplies>> {
  return answerWith(() => bestFor(task.supplies, task.occasions));
}

function withoutPictures(ask: AskInWords): GuideAsk {
  return { ...ask, picture: () => null };
}
