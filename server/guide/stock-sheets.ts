import { cutSteps } from '../cutting/cut-steps.ts';
import type { CutStep } from '../cutting/cut-steps.ts';
import type { BatchCard } from '../cutting/pieces-of.ts';
import type { CuttingScheme, PlacedPiece, Slot } from '../cutting/piece.ts';
import { stacksOf } from '../cutting/stacks.ts';
import { hexFromLab } from '../colour/spaces.ts';
import type { Fold } from '../layouts/layout.ts';
import { toMillimetres } from '../lengths/length.ts';
import type { Ruler, Size } from '../lengths/length.ts';
import { cutPicture } from './cut-picture.ts';
import type { Extent, Mark } from './drawing.ts';
import { rectangle } from './drawing.ts';
import type { StockFacts } from './facts.ts';
import type { Lying } from './laid.ts';
import { capital, cardsSaid, counted, listed } from './said.ts';
import { stockSizeSaid } from './stock-size.ts';
import type { StockNeed } from './stock-needs.ts';
import { sheetDrawing, sheetOnScreen } from './sheet-on-screen.ts';
import type { SheetOnScreen } from './sheet-on-screen.ts';

/** Most sheets of heavy cardstock under the blade at once: common practice, no source. */
const STACK = 2;

/** Sheets of one cardstock that are cut alike, together, with their cuts in the order of the hands. */
export interface StockSheet {
  /** '1-2': the second stack of the first cardstock, in the order in which its sheets were filled. */
  readonly id: string;
  readonly stock: StockFacts;
  readonly scheme: CuttingScheme;
  readonly together: readonly Slot[];
  /** As they are counted among the sheets of their cardstock, from 1. */
  readonly numbers: readonly number[];
  /** The first of the stack, whose pieces the picture names. */
  readonly slot: Slot;
  readonly steps: readonly CutStep[];
  readonly foldOf: (placed: PlacedPiece) => Fold | null;
}

/** Every stack of cardstock sheets; a cardstock whose pieces fit no sheet has none. */
export function stockSheets(
  needs: readonly StockNeed[],
  cards: readonly BatchCard[],
): StockSheet[] {
  const foldOf = ({ piece }: PlacedPiece): Fold | null => {
    const fold = cards.find(({ number }) => number === piece.card)?.layout.fold;
    return piece.role === 'base' && fold !== undefined ? fold : null;
  };
  return needs.flatMap(({ stock, scheme }, need) => {
    if (scheme === null) return [];
    const stacks = stacksOf(scheme, STACK)
      .map(({ slots }, at) => {
        const together = scheme.slots.filter(({ id }) => slots.includes(id));
        const steps = cutSteps(together[0]!);
        return { id: `${need + 1}-${at + 1}`, together, slot: together[0]!, steps };
      })
      // Those of few cuts first: such sheets share a page.
      .sort((a, b) => a.steps.length - b.steps.length);
    let before = 0;
    return stacks.map((stack): StockSheet => {
      const numbers = stack.together.map(() => ++before);
      return { ...stack, numbers, stock, scheme, foldOf };
    });
  });
}

/** 'Shell cardstock, sheet 2 of 3, 8 1/2 x 11 in. Lay the longer side upright.'; an only sheet has no number. */
export function stockSheetSaid(
  { stock, scheme, together, numbers }: StockSheet,
  ruler: Ruler,
): string {
  const all = scheme.slots.length;
  const sheets = `${together.length === 1 ? 'sheet' : 'sheets'} ${listed(numbers.map(String))} of ${all}`;
  const which = all === 1 ? stock.name : `${stock.name}, ${sheets}`;
  return `${which}, ${stockSizeSaid(scheme.sheet, ruler)}.${layingSaid(together, scheme.sheet)}`;
}

/** Whether a piece of the sheet is folded later: its picture has dotted lines. */
export function isScored({ slot, foldOf }: StockSheet): boolean {
  return slot.pieces.some((placed) => (foldOf(placed)?.scores.length ?? 0) > 0);
}

/** Said wherever such a sheet is drawn. */
export const DOTTED = 'Dotted lines are scored, not cut.';

/** The sheet with its numbered cuts, from 0, 0; `scale` is printed mm for a mm of the sheet. */
export function stockSheetMarks(
  { slot, scheme, steps, stock, foldOf }: StockSheet,
  scale: number,
): Mark[] {
  const { width, height } = sizeOf(scheme);
  return cutPicture({
    slot,
    sheet: scheme.sheet,
    steps,
    scale,
    face: [{ kind: 'area', corners: rectangle(0, 0, width, height), fill: hexFromLab(stock.lab) }],
    ...PLAIN,
    foldOf,
  });
}

/** Cardstock has no up, and both of its sides are alike. */
export const PLAIN: Lying = { turnOf: () => null, showsOther: () => false };

/** Size of the sheets in mm. */
export function sizeOf({ sheet }: CuttingScheme): Extent {
  return { width: toMillimetres(sheet.width), height: toMillimetres(sheet.height) };
}

/** Drawn so wide that numbers and labels have their right size. */
const WIDTH = 140;

/** The same as an SVG for the screen. */
export function stockSheetDrawing(sheet: StockSheet): string {
  const marks = (scale: number): Mark[] => stockSheetMarks(sheet, scale);
  return sheetDrawing(sheet.scheme.sheet, WIDTH, marks, `stock-${sheet.id}`);
}

/** Its cuts and pieces for the screen. */
export function stockSheetOnScreen(
  { slot, together, scheme, foldOf }: StockSheet,
  ruler: Ruler,
): SheetOnScreen {
  const shown = { slot, together, size: scheme.sheet, width: WIDTH, ...PLAIN, foldOf };
  return sheetOnScreen(shown, ruler);
}

/** Sheets in one stack are cut alike, but their pieces go to different cards. */
function layingSaid(together: readonly Slot[], { width, height }: Size): string {
  const upright = width === height ? '' : ' Lay the longer side upright.';
  if (together.length === 1) return upright;
  const [first, ...others] = together.map(cardsOf);
  return `${upright} ${capital(counted(together.length, 'sheet'))} on each other, cut alike. The picture names the pieces of the first (${cardsSaid(first!)}); the others give the same pieces to ${others.map(cardsSaid).join(' and ')}.`;
}

function cardsOf({ pieces }: Slot): number[] {
  return [...new Set(pieces.map(({ piece }) => piece.card))].sort((a, b) => a - b);
}
