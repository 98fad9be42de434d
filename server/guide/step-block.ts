import { CUT, SIZES } from './look.ts';
import { badge, paragraph } from './page.ts';
import type { Block } from './page.ts';
import type { StepWords } from './step-words.ts';

/** A numbered step: what to set or mark, large; what comes of it, small. */
export function stepBlock(step: StepWords, width: number): Block {
  const text = 8.5;
  const main = paragraph(step.main, text, 0, width - text, { bold: true });
  const small = paragraph(step.small, text, main.height, width - text, {
    size: SIZES.note,
  });
  return {
    marks: [...badge(String(step.number), 3.2, 2.7, 3, CUT), ...main.marks, ...small.marks],
    height: main.height + small.height + 1.7,
  };
}
