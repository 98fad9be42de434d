import type { ClassSet } from '../../server/contract/class-sets.ts';
import type { LeftoverList } from '../../server/contract/leftovers.ts';
import type { PlanCuts, PlanGuide } from '../../server/contract/plan-guides.ts';
import type { OnTable } from '../plan/table-of.ts';
import type { PrintPaper, Ruler } from '../table/settings.ts';
import { guideWords } from '../words/guide.ts';
import { cardStep } from './card-steps.ts';
import { numberStep } from './number-step.ts';
import { paperStep, sparedStep, stockSteps } from './paper-steps.ts';
import type { Stack, Step } from './step.ts';

/** All that the guide is made from. */
export interface GuideBook {
  readonly table: OnTable;
  readonly cuts: PlanCuts;
  readonly guide: PlanGuide;
  readonly kept: LeftoverList;
  /** The batch for several people; null for one. */
  readonly set: ClassSet | null;
  /** Sheets under the blade at once. */
  readonly stack: number;
  readonly ruler: Ruler;
  /** The sheets that her cardstock comes in. */
  readonly stock: PrintPaper;
}

/** The order of the work: the numbers of the sheets, what to mind, every sheet, the cardstock, every card, what is left. */
export function stepsOf({
  table,
  cuts,
  guide,
  kept,
  set,
  stack,
  ruler,
  stock: sheet,
}: GuideBook): Step[] {
  const people = set?.people ?? 1;
  const stacks = stacksOf(set, stack);
  return [
    ...numberStep(table.pad, cuts, people === 1 ? kept.spared : [], people),
    beforeStep(guide, cuts, people),
    ...cuts.slots.map((slot) =>
      people === 1 && kept.spared.includes(slot.slot)
        ? sparedStep(slot, ruler, kept)
        : paperStep(slot, stacks),
    ),
    ...guide.cardstock.flatMap((stock) => stockSteps(stock, people, sheet)),
    ...guide.cards.map((card) => cardStep(card, table, people)),
    ...leftStep(cuts, people === 1 ? kept.spared : []),
  ];
}

/** What it takes is counted for one person; for several, that stands where they are told. */
function beforeStep({ cautions, takes }: PlanGuide, { rounding }: PlanCuts, people: number): Step {
  return {
    id: 'before',
    kind: 'before',
    title: guideWords.beforeCut,
    picture: null,
    lines: [...cautions, ...(rounding === null ? [] : [rounding])],
    acts: [],
    stacks: [],
    ...(people === 1 && { takes }),
  };
}

/** A stack is named by what it depends on, so that a tick does not pass to another one. */
function stacksOf(set: ClassSet | null, most: number): Stack[] {
  if (set === null) return [];
  return set.stacks.map(({ of }, at) => ({
    id: `stack-${set.people}-${most}-${at + 1}`,
    number: at + 1,
    of,
  }));
}

/** A sheet that stays whole leaves nothing. */
function leftStep({ slots }: PlanCuts, spared: readonly string[]): Step[] {
  const lines = slots
    .filter(({ slot, left }) => left.length > 0 && !spared.includes(slot))
    .map(({ name, left }) => guideWords.leftOf(name, left));
  if (spared.length > 0) lines.push(guideWords.partsUsed);
  if (lines.length === 0) return [];
  const title = guideWords.leftTitle;
  return [{ id: 'left', kind: 'left', title, picture: null, lines, acts: [], stacks: [] }];
}
