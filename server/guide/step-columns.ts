import type { Mark } from './drawing.ts';
import { COLUMN } from './flow.ts';
import { PAGE } from './page.ts';
import type { Block } from './page.ts';
import { stepBlock } from './step-block.ts';
import type { StepWords } from './step-words.ts';

export interface StepColumn extends Block {
  readonly marks: Mark[];
  /** How many steps found room. */
  readonly count: number;
}

/** Steps one under the other, as many as fit in a height. All in mm. */
export function columnOf(steps: readonly StepWords[], width: number, room: number): StepColumn {
  const marks: Mark[] = [];
  let y = 0;
  let count = 0;
  for (const step of steps) {
    const block = stepBlock(step, width);
    if (y + block.height > room) break;
    marks.push({ kind: 'group', x: 0, y, marks: block.marks });
    y += block.height;
    count += 1;
  }
  return { marks, height: y, count };
}

/** Steps in two columns across the page, down the left one, then down the right one; as many as fit in a height. */
export function inTwoColumns(steps: readonly StepWords[], room: number): StepColumn {
  const heights = steps.map((step) => stepBlock(step, COLUMN).height);
  const sum = (from: number, to: number): number =>
    heights.slice(from, to).reduce((total, height) => total + height, 0);
  let count = columnOf(steps, COLUMN, room).count;
  count += columnOf(steps.slice(count), COLUMN, room).count;
  const splits = Array.from({ length: count + 1 }, (_, at) => at);
  const low = (at: number): number => Math.max(sum(0, at), sum(at, count));
  // The fuller column stands left where two splits are alike.
  const split = splits.reduce((best, at) => (low(at) <= low(best) ? at : best), count);
  const left = columnOf(steps.slice(0, split), COLUMN, Infinity);
  const right = columnOf(steps.slice(split, count), COLUMN, Infinity);
  return {
    marks: [...left.marks, { kind: 'group', x: PAGE.width - COLUMN, y: 0, marks: right.marks }],
    height: Math.max(left.height, right.height),
    count,
  };
}
