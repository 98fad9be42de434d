import type { GuideAsk } from './ask.ts';
import { CAUTIONS } from './cautions.ts';
import type { Mark } from './drawing.ts';
import { SIZES } from './look.ts';
import { PAGE, noteBox, paragraph } from './page.ts';
import type { Block } from './page.ts';
import { printRuler } from './print-ruler.ts';
import { roundingNote } from './rounding.ts';

/** All cautions, and the ruler that the print is checked by. */
export function beginBlock(ask: GuideAsk): Block {
  const marks: Mark[] = [];
  let y = 0;
  for (const { head, text } of CAUTIONS) {
    marks.push({ kind: 'words', x: 0, y: y + 3.4, text: head, size: SIZES.body, bold: true });
    const box = noteBox(text, 0, y + 5, PAGE.width);
    marks.push(...box.marks);
    y += box.height + 8;
  }
  const rounding = roundingNote(ask);
  if (rounding !== null) {
    const note = paragraph(rounding, 0, y, PAGE.width, { size: SIZES.note });
    marks.push(...note.marks);
    y += note.height + 2;
  }
  marks.push(...printRuler(2, y + 9, ask.ruler));
  return { marks, height: y + 13.5 };
}
