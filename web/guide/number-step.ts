import type { PlanCuts } from '../../server/contract/plan-guides.ts';
import type { Pad, Sheet } from '../../server/contract/pads.ts';
import { guideWords } from '../words/guide.ts';
import type { Step } from './step.ts';

/** A sheet that is cut, and how many of it. */
export interface NumberedSheet {
  readonly sheet: Sheet;
  readonly count: number;
}

/** The first work at the table: to find every sheet that is cut, and to put its number on it. */
export function numberStep(
  pad: Pad,
  { slots }: PlanCuts,
  spared: readonly string[],
  people: number,
): Step[] {
  const cut = slots.filter(({ slot }) => !spared.includes(slot));
  const sheets = pad.sheets.flatMap((sheet): NumberedSheet[] => {
    const count = cut.filter((one) => one.sheet === sheet.id).length * people;
    return count === 0 ? [] : [{ sheet, count }];
  });
  if (sheets.length === 0) return [];
  return [
    {
      id: 'number',
      kind: 'number',
      title: guideWords.numberSheets,
      picture: null,
      lines: guideWords.numberHow,
      acts: [],
      stacks: [],
      sheets,
    },
  ];
}
