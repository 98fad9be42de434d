import type { GuideAsk } from './ask.ts';
import { CAUTIONS } from './cautions.ts';
import type { Mark } from './drawing.ts';
import type { Facts } from './facts.ts';
import { SIZES } from './look.ts';
import { BODY, PAGE, noteBox, paragraph } from './page.ts';
import type { GuidePage } from './page.ts';
import { printRuler } from './print-ruler.ts';
import { roundingNote } from './rounding.ts';
import { sheetsGrid, sheetsPages } from './sheets-page.ts';

/** Room under the ruler for the table of sheets. */
const LOWEST = BODY.bottom + 6;

/** All cautions and the ruler on one page, with the table of sheets against cards where it fits below. */
export function beginPages(ask: GuideAsk, facts: Facts): GuidePage[] {
  const marks: Mark[] = [];
  let y = BODY.top - 2;
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
  const grid = sheetsGrid(facts, y + 21.5);
  const name = 'Before you begin';
  if (grid === null || grid.bottom > LOWEST) return [{ name, marks }, ...sheetsPages(facts)];
  return [{ name, marks: [...marks, ...grid.marks] }];
}
