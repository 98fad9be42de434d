import type { CutStep, TrimmerStep, Yield } from '../cutting/cut-steps.ts';
import { toMillimetres } from '../lengths/length.ts';
import type { Size } from '../lengths/length.ts';
import type { Outline, Spot } from './drawing.ts';
import { rectangle } from './drawing.ts';

/** A cut as it lies on the sheet, in mm from the sheet's upper left corner. */
export interface CutLine {
  readonly number: number;
  readonly from: Spot;
  readonly to: Spot;
  /** The part of the sheet that is cut. */
  readonly part: Part;
}

export interface CutDrawing {
  readonly lines: readonly CutLine[];
  /** What is left over. */
  readonly rests: readonly Outline[];
}

export interface Part {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Follows the trimmer's cuts over the sheet, part by part, and draws each where it falls. */
export function cutLines(steps: readonly CutStep[], sheet: Size): CutDrawing {
  const parts = new Map<string, Part>([
    [
      'sheet',
      { x: 0, y: 0, width: toMillimetres(sheet.width), height: toMillimetres(sheet.height) },
    ],
  ]);
  const lines: CutLine[] = [];
  const rests: Outline[] = [];
  for (const step of steps) {
    const part = step.kind === 'cut' ? parts.get(step.part) : undefined;
    if (step.kind !== 'cut' || part === undefined) continue;
    lines.push(lineOf(step, part));
    for (const [given, where] of halves(step, part)) {
      if (given.kind === 'part') parts.set(given.name, where);
      if (given.kind === 'rest') rests.push(rectangle(where.x, where.y, where.width, where.height));
    }
  }
  return { lines, rests };
}

function lineOf({ number, way, at }: TrimmerStep, part: Part): CutLine {
  const away = toMillimetres(at);
  return way === 'vertical'
    ? {
        number,
        part,
        from: { x: part.x + away, y: part.y },
        to: { x: part.x + away, y: part.y + part.height },
      }
    : {
        number,
        part,
        from: { x: part.x, y: part.y + away },
        to: { x: part.x + part.width, y: part.y + away },
      };
}

function halves({ way, at, first, second }: TrimmerStep, part: Part): [Yield, Part][] {
  const away = toMillimetres(at);
  return way === 'vertical'
    ? [
        [first, { ...part, width: away }],
        [second, { ...part, x: part.x + away, width: part.width - away }],
      ]
    : [
        [first, { ...part, height: away }],
        [second, { ...part, y: part.y + away, height: part.height - away }],
      ];
}
