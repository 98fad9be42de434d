import type { GuideAsk } from './ask.ts';
import { factsOf } from './facts.ts';
import type { Facts, SlotFacts } from './facts.ts';
import { sheetDrawing, sheetOnScreen } from './sheet-on-screen.ts';
import type { SheetOnScreen } from './sheet-on-screen.ts';
import { followed, slotStacks } from './slot-stacks.ts';
import { layingOf, lyingOf, slotMarks } from './slot-pages.ts';

/** What the page of a slot says, for a screen at the table. */
export interface SlotOnScreen extends SheetOnScreen {
  readonly slot: string;
  readonly sheet: string;
  /** The sheet's label, and which copy of it where there are more. */
  readonly name: string;
  readonly laying: string;
  /** The name of the first sheet of its stack, after which it comes; null for that sheet and for one by itself. */
  readonly follows: string | null;
}

/** Drawn as wide as on paper. */
const WIDTH = 118;

/** Every sheet of the plan with its cuts in the order of the hands, as the printed guide says them. */
export function slotsOnScreen(ask: GuideAsk): SlotOnScreen[] {
  const facts = factsOf(ask);
  return slotStacks(ask, facts)
    .flat()
    .map((one) => slotOnScreen(ask, facts, one));
}

function slotOnScreen(ask: GuideAsk, facts: Facts, one: SlotFacts): SlotOnScreen {
  const { slot, sheet, name } = one;
  const lying = lyingOf(facts, one);
  const shown = { slot, together: [slot], size: ask.scheme.sheet, width: WIDTH, ...lying };
  return {
    slot: slot.id,
    sheet: sheet.id,
    name,
    laying: layingOf(ask, facts, one),
    follows: followed(ask, facts, one)?.name ?? null,
    ...sheetOnScreen(shown, ask.ruler),
  };
}

/** A sheet with its numbered cuts, as an SVG; refuses nothing, so `slot` must be one of the scheme. */
export function slotDrawing(ask: GuideAsk, slot: string): string {
  const facts = factsOf(ask);
  const one = facts.slots.find((each) => each.slot.id === slot);
  if (one === undefined) throw new RangeError(`Expected a slot of the scheme but received ${slot}`);
  const marks = (scale: number): ReturnType<typeof slotMarks> => slotMarks(ask, facts, one, scale);
  return sheetDrawing(ask.scheme.sheet, WIDTH, marks, `slot-${slot}`);
}
