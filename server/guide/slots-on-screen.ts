import { cutSteps } from '../cutting/cut-steps.ts';
import { worthKeeping } from '../cutting/leftovers.ts';
import { toMillimetres } from '../lengths/length.ts';
import type { GuideAsk } from './ask.ts';
import { factsOf } from './facts.ts';
import { timesSaid } from './left-blocks.ts';
import { sizeSaid } from './said.ts';
import { layingOf, slotMarks } from './slot-pages.ts';
import { stepWords } from './step-words.ts';
import type { StepWords } from './step-words.ts';
import { svgOf } from './svg.ts';

/** What the page of a slot says, for a screen at the table. */
export interface SlotOnScreen {
  readonly slot: string;
  readonly sheet: string;
  readonly laying: string;
  readonly steps: StepWords[];
  /** Sizes of what is left of the sheet and worth keeping, the largest first. */
  readonly left: string[];
}

/** Every sheet of the plan with its cuts in the order of the hands, as the printed guide says them. */
export function slotsOnScreen(ask: GuideAsk): SlotOnScreen[] {
  const facts = factsOf(ask);
  return facts.slots.map((one) => ({
    slot: one.slot.id,
    sheet: one.sheet.id,
    laying: layingOf(ask, facts, one),
    steps: stepWords(cutSteps(one.slot), one.slot, ask.ruler),
    left: timesSaid(worthKeeping(one.slot).map((size) => sizeSaid(size, ask.ruler))),
  }));
}

/** Drawn as wide as on paper, where numbers and labels have their right size. */
const WIDTH = 118;
const ROOM = 3;

/** A sheet with its numbered cuts, as an SVG; refuses nothing, so `slot` must be one of the scheme. */
export function slotDrawing(ask: GuideAsk, slot: string): string {
  const facts = factsOf(ask);
  const one = facts.slots.find((each) => each.slot.id === slot);
  if (one === undefined) throw new RangeError(`Expected a slot of the scheme but received ${slot}`);
  const { width, height } = ask.scheme.sheet;
  const scale = WIDTH / toMillimetres(width);
  const size = { width: WIDTH + 2 * ROOM, height: scale * toMillimetres(height) + 2 * ROOM };
  return svgOf(slotMarks(ask, facts, one, scale), size, { x: -ROOM, y: -ROOM }, `slot-${slot}`);
}
