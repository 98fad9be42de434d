import type { GuideAsk } from './ask.ts';
import { chapter } from './flow.ts';
import { BODY, bladeReminder, drawingReminder } from './page.ts';
import type { GuidePage } from './page.ts';
import { fewestPages, setDown } from './fewest-pages.ts';
import type { EndList, Way } from './fewest-pages.ts';
import { sheetWays, smallestOf } from './sheet-block.ts';
import type { SheetAsk } from './sheet-block.ts';
import { stepWords } from './step-words.ts';
import type { StockNeed } from './stock-needs.ts';
import {
  DOTTED,
  PLAIN,
  isScored,
  sizeOf,
  stockSheetMarks,
  stockSheetSaid,
  stockSheets,
} from './stock-sheets.ts';
import type { StockSheet } from './stock-sheets.ts';

const SHEETS = { top: BODY.top - 0.5, bottom: BODY.bottom + 6 } as const;
const GAP = 5;
const ROOM = SHEETS.bottom - SHEETS.top;
const PICTURE = { width: 108, height: 140 } as const;

/** The cuts of each sheet of cardstock; sheets that are cut alike are drawn once. */
export function stockSheetPages(ask: GuideAsk, needs: readonly StockNeed[]): GuidePage[] {
  return pagesOf(ask, needs, waysOf(ask, needs));
}

/** The same, with a list at the end of the last page; null where that takes a page more. */
export function stockSheetPagesWith(
  ask: GuideAsk,
  needs: readonly StockNeed[],
  { name, block }: EndList,
): GuidePage[] | null {
  const ways = waysOf(ask, needs);
  const list: Way = { height: block.height, worth: 0, draw: () => block.marks };
  const all = [...ways, [list]];
  if (fewestPages(all, ROOM, GAP).length > fewestPages(ways, ROOM, GAP).length) return null;
  const pages = pagesOf(ask, needs, all);
  const last = pages.at(-1)!;
  return [...pages.slice(0, -1), { ...last, name: `${last.name}, and ${name}` }];
}

function waysOf(ask: GuideAsk, needs: readonly StockNeed[]): Way[][] {
  const place = { picture: PICTURE, room: ROOM };
  return stockSheets(needs, ask.cards).flatMap((sheet) => sheetWays(sheetOf(ask, sheet), place));
}

function pagesOf(
  ask: GuideAsk,
  needs: readonly StockNeed[],
  ways: readonly (readonly Way[])[],
): GuidePage[] {
  const dots = stockSheets(needs, ask.cards).some(isScored) ? DOTTED : '';
  const pages = fewestPages(ways, ROOM, GAP).map((page) => [
    bladeReminder(),
    drawingReminder(dots),
    ...setDown(page, SHEETS.top, ROOM, GAP),
  ]);
  return chapter('Cardstock, sheet by sheet', pages);
}

function sheetOf({ ruler }: GuideAsk, sheet: StockSheet): SheetAsk {
  return {
    title: stockSheetSaid(sheet, ruler),
    draw: (scale) => stockSheetMarks(sheet, scale),
    sheet: sizeOf(sheet.scheme),
    smallest: smallestOf(sheet.slot),
    steps: stepWords(sheet.steps, sheet.slot, ruler, PLAIN),
  };
}
