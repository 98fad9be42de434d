import type { PhotoPoint, Quad } from '../geometry/points.ts';
import { middleOf } from './find-sheets.ts';
import { median } from './surface.ts';

/** A place in the rows and columns of the sheets in which no sheet was told. */
export interface FreePlace {
  readonly corners: Quad<'photo'>;
  /** Between two sheets of a row or column; completing a corner of three; or one step on from the end of a row. */
  readonly kind: 'between' | 'corner' | 'beyond';
}

/**
 * Where another sheet would lie if the rows and columns of the sheets were full.
 *
 *     +---+ +---+ +---+
 *     |   | |   | |   |      x  between two sheets of a row
 *     +---+ +---+ +---+      y  beside one sheet and below another
 *     +---+       +---+      z  beyond the end of a column; so are the places all round
 *     |   |   x   |   |
 *     +---+       +---+
 *     +---+
 *     |   |   y
 *     +---+
 *       z
 *
 * Takes       the sheets that were told, in pixels of the picture, corners in reading order. Those turned out of line
 *             with the most count for nothing.
 * Gives       quads, each place once; some may reach out of the picture.
 */
export function freePlaces(sheets: readonly Quad<'photo'>[]): FreePlace[] {
  const laid = inRows(sheets);
  if (laid.length < FEWEST) return [];
  const across = pitchOf(laid, (p, q) => [q.s - p.s, q.t - p.t]);
  const down = pitchOf(laid, (p, q) => [q.t - p.t, q.s - p.s]);
  const places: (FreePlace & Spot)[] = [];
  const add = (spot: Spot, corners: Quad<'photo'>, kind: FreePlace['kind']): void => {
    if ([...laid, ...places].some((other) => apart(other, spot) < TAKEN)) return;
    places.push({ ...spot, corners, kind });
  };
  for (const p of laid)
    for (const q of laid) {
      const isTwoOn =
        (across !== null && isAt(p, q, 2 * across, 0)) ||
        (down !== null && isAt(p, q, 0, 2 * down));
      if (isTwoOn)
        add(
          { s: (p.s + q.s) / 2, t: (p.t + q.t) / 2 },
          combined([p, q], (x) => (x[0]! + x[1]!) / 2),
          'between',
        );
    }
  if (across === null || down === null) return places;
  for (const corner of laid)
    for (const side of laid)
      for (const below of laid)
        if (
          [across, -across].some((ds) => isAt(corner, side, ds, 0)) &&
          [down, -down].some((dt) => isAt(corner, below, 0, dt))
        )
          add(
            { s: side.s + below.s - corner.s, t: side.t + below.t - corner.t },
            combined([side, below, corner], (x) => x[0]! + x[1]! - x[2]!),
            'corner',
          );
  for (const end of laid)
    for (const [ds, dt] of [
      [across, 0],
      [-across, 0],
      [0, down],
      [0, -down],
    ] as const)
      for (const before of laid)
        // A step on from a sheet that has a next one behind it, as far as from that one.
        if (isAt(before, end, ds, dt))
          add(
            { s: 2 * end.s - before.s, t: 2 * end.t - before.t },
            combined([end, before], (x) => 2 * x[0]! - x[1]!),
            'beyond',
          );
  return places;
}

/** Fewer sheets make no rows. */
const FEWEST = 3;
/** Radians by which a sheet in a row may be turned out of line. */
const IN_LINE = 0.2;
/** Sides of a sheet within which a place is taken, and by which one may be off its row. */
const TAKEN = 0.6;
const OFF_ROW = 0.3;
/** Steps from sheet to sheet, in sides: one upon the other none lies, and further apart there are no rows. */
const NEAREST = 0.9;
const FURTHEST = 1.7;

/** A place in sides of a sheet, along the rows and down the columns. */
interface Spot {
  readonly s: number;
  readonly t: number;
}

interface Laid extends Spot {
  readonly corners: Quad<'photo'>;
}

function inRows(sheets: readonly Quad<'photo'>[]): Laid[] {
  if (sheets.length < FEWEST) return [];
  const rightOf = ([a, b, c, d]: Quad<'photo'>): PhotoPoint => ({
    x: (b.x - a.x + c.x - d.x) / 2,
    y: (b.y - a.y + c.y - d.y) / 2,
  });
  const downOf = ([a, b, c, d]: Quad<'photo'>): PhotoPoint => ({
    x: (d.x - a.x + c.x - b.x) / 2,
    y: (d.y - a.y + c.y - b.y) / 2,
  });
  const usual = (of: (quad: Quad<'photo'>) => PhotoPoint): PhotoPoint => ({
    x: median(sheets.map((quad) => of(quad).x)),
    y: median(sheets.map((quad) => of(quad).y)),
  });
  const [right, down] = [usual(rightOf), usual(downOf)];
  const determinant = right.x * down.y - right.y * down.x;
  if (Math.abs(determinant) < 1) return [];
  const turn = Math.atan2(right.y, right.x);
  return sheets
    .filter((quad) => Math.abs(Math.atan2(rightOf(quad).y, rightOf(quad).x) - turn) < IN_LINE)
    .map((corners) => {
      const { x, y } = middleOf(corners);
      return {
        corners,
        s: (x * down.y - y * down.x) / determinant,
        t: (right.x * y - right.y * x) / determinant,
      };
    });
}

/** The usual step from a sheet to the next one along a row, or down a column; null when none has a next one. */
function pitchOf(
  laid: readonly Laid[],
  step: (p: Laid, q: Laid) => readonly [number, number],
): number | null {
  const steps = laid.flatMap((p) =>
    laid.flatMap((q) => {
      const [along, off] = step(p, q);
      return along > NEAREST && along < FURTHEST && Math.abs(off) < OFF_ROW ? [along] : [];
    }),
  );
  return steps.length === 0 ? null : median(steps);
}

function isAt(p: Spot, q: Spot, ds: number, dt: number): boolean {
  return Math.abs(q.s - p.s - ds) < OFF_ROW && Math.abs(q.t - p.t - dt) < OFF_ROW;
}

function apart(p: Spot, q: Spot): number {
  return Math.max(Math.abs(p.s - q.s), Math.abs(p.t - q.t));
}

function combined(laid: readonly Laid[], of: (values: readonly number[]) => number): Quad<'photo'> {
  return [0, 1, 2, 3].map((at) => ({
    x: of(laid.map(({ corners }) => corners[at]!.x)),
    y: of(laid.map(({ corners }) => corners[at]!.y)),
  })) as unknown as Quad<'photo'>;
}
