import type { CutStep } from '../cutting/cut-steps.ts';
import type { FinishingStep } from '../cutting/finishing-steps.ts';
import type { PlacedPiece, Slot } from '../cutting/piece.ts';
import { shapeCorners } from '../layouts/outline.ts';
import type { Spot } from './drawing.ts';
import { fromCardToSheet, laidPiece } from './laid.ts';
import type { Lying } from './laid.ts';
import { placeOfMark } from './step-words.ts';
import type { Track } from './track.ts';

/** Where a piece is finished, in mm from the upper left corner of the sheet that it still lies on. */
export interface FinishLine {
  readonly number: number;
  /** What is cut, one line after the other: a slant, the two sides of a notch, four round corners. */
  readonly tracks: readonly Track[];
  /** The two pencil marks of a slant; none for other finishes. */
  readonly marks: readonly Spot[];
}

/** The slants, notches and round cuts of a sheet's pieces as they lie on the sheet; two triangles of one rectangle have one. */
export function finishLines(steps: readonly CutStep[], slot: Slot, lying: Lying): FinishLine[] {
  return steps.flatMap((step): FinishLine[] => {
    if (step.kind === 'cut') return [];
    const placed = slot.pieces.find(({ piece }) => piece.id === step.piece);
    if (placed === undefined) return [];
    const onSheet = fromCardToSheet(laidPiece(placed, lying));
    const tracks = tracksOf(step, placed).map((track) => track.map(onSheet));
    return [{ number: step.number, tracks, marks: step.kind === 'slant' ? tracks.flat() : [] }];
  });
}

/** What is cut, on the piece as it lies on its card. */
function tracksOf(step: FinishingStep, { piece }: PlacedPiece): Spot[][] {
  if (step.kind === 'slant')
    return [[step.from, step.to].map((mark) => placeOfMark(mark, piece.size))];
  const corners = shapeCorners(piece.shape, piece.size);
  const edges = corners.map((from, at) => ({ from, to: corners[(at + 1) % corners.length]! }));
  const tracks: Spot[][] = [];
  let before: Spot | null = null;
  for (const { from, to } of edges) {
    if (isAlong(from, to, piece.size)) {
      before = null;
      continue;
    }
    if (before === null) tracks.push([from]);
    tracks.at(-1)!.push(to);
    before = to;
  }
  return tracks;
}

/** An edge of a shape that lies on an edge of its rectangle was cut by the trimmer. */
function isAlong(from: Spot, to: Spot, { width, height }: PlacedPiece['piece']['size']): boolean {
  return (
    (from.x === to.x && (from.x === 0 || from.x === width)) ||
    (from.y === to.y && (from.y === 0 || from.y === height))
  );
}
