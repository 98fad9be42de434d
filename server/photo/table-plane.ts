import { boundsOf } from '../geometry/bounds.ts';
import type { PhotoPoint, Quad } from '../geometry/points.ts';
import { solve } from './surface.ts';

/**
 * The table as a camera sees it that looks at it from anywhere: where a place of the picture lies on it, in shorter
 * sides of a sheet. But for a turn and a shift, which no sheet tells, five numbers say all of it.
 *
 *     onto the table:  (s e^k x + h y, s e^-k y) / (1 + p x + q y)      x, y from the middle, in `reach`
 */
export interface TablePlane {
  readonly centre: PhotoPoint;
  readonly reach: number;
  /** ln s, k, h over s, p, q. */
  readonly of: readonly number[];
}

/** An outline of a sheet, and how far it is trusted: 1 in full, 0 not at all. */
export interface Told {
  readonly corners: Quad<'photo'>;
  readonly trust: number;
}

export interface PlaneTold {
  readonly plane: TablePlane;
  /** How many outlines, each as far as it is trusted, are of the size that the plane gives them. */
  readonly agree: number;
}

/**
 * The table on which as many of the outlines as can be are sheets of the one size.
 *
 * Takes       outlines in pixels, some of them wrong, and longer over shorter side of a sheet.
 * Gives       null without any. From each trusted outline in turn the others that agree are gathered; most wins.
 * Source      a plane in a pinhole camera; least squares by Gauss and Newton, those that do not fit weighing less and
 *             less. Cameras are mostly held so that a square looks nearly square, which speaks where few sheets do.
 */
export function tablePlane(told: readonly Told[], aspect: number): PlaneTold | null {
  const trusted = told.filter(({ trust }) => trust > 0);
  if (trusted.length === 0) return null;
  const { left, right, top, bottom } = boundsOf(trusted.flatMap(({ corners }) => corners));
  const centre = { x: (left + right) / 2, y: (top + bottom) / 2 };
  const reach = Math.max(right - left, bottom - top) / 2;
  const starts = [...trusted].sort((p, q) => q.trust - p.trust).slice(0, STARTS);
  let best: PlaneTold | null = null;
  for (const start of starts) {
    const of = [Math.log(sizeOf(start.corners, reach)), 0, 0, 0, 0];
    const weights = trusted.map((one) => (one === start ? 1 : 0));
    const told = gathered(trusted, weights, { centre, reach, of }, aspect);
    if (told !== null && (best === null || told.agree > best.agree)) best = told;
  }
  return best;
}

/** The plane that those agree on which agree with a first one; null where a step leads to where none agrees any more. */
function gathered(
  trusted: readonly Told[],
  first: readonly number[],
  from: TablePlane,
  aspect: number,
): PlaneTold | null {
  let weights = first;
  let plane = from;
  for (let round = 0; round < ROUNDS; round++) {
    const of = fitted(trusted, weights, plane, aspect);
    if (!of.every(Number.isFinite)) return null;
    plane = { ...plane, of };
    const limit = LIMIT * (round < ROUNDS / 2 ? WIDER : 1);
    weights = trusted.map(
      ({ corners, trust }) => trust / (1 + (offPlane(plane, corners, aspect) / limit) ** 4),
    );
  }
  const agree = weights.reduce((sum, weight) => sum + weight, 0);
  return Number.isFinite(agree) ? { plane, agree } : null;
}

const ROUNDS = 8;
/** The most trusted outlines, from each of which is begun. */
const STARTS = 5;
/** Part of a side by which an outline that is right is off its size, and how much more is let pass at first. */
const LIMIT = 0.006;
const WIDER = 3;
/** How far, one in three, the shape and the slant of a table seen from above are off, against `LIMIT`. */
const SHAPE = 0.03;
const SLANT = 0.15;

/** Where a place of the picture lies on the table. */
export function ontoPlane({ centre, reach, of }: TablePlane, { x, y }: PhotoPoint): Spot {
  const [size, shape, skew, p, q] = of as Five;
  const [u, v] = [(x - centre.x) / reach, (y - centre.y) / reach];
  const by = Math.exp(size) / (1 + p * u + q * v);
  return { u: by * (Math.exp(shape) * u + skew * v), v: by * Math.exp(-shape) * v };
}

/** And back. */
export function fromPlane({ centre, reach, of }: TablePlane, { u, v }: Spot): PhotoPoint {
  const [size, shape, skew, p, q] = of as Five;
  const b = (v / Math.exp(size)) * Math.exp(shape);
  const a = (u / Math.exp(size) - skew * b) / Math.exp(shape);
  const by = reach / (1 - p * a - q * b);
  return { x: centre.x + by * a, y: centre.y + by * b };
}

/** A place on the table, in shorter sides of a sheet. */
export interface Spot {
  readonly u: number;
  readonly v: number;
}

type Five = [number, number, number, number, number];

/** How far the sides of an outline are off a sheet's, each as a part of its length; the most of them. */
export function offPlane(plane: TablePlane, corners: Quad<'photo'>, aspect: number): number {
  return Math.max(...misfits(plane, corners, aspect).slice(0, 4).map(Math.abs));
}

/** Logarithms of length over true length of the four sides and both diagonals. */
function misfits(plane: TablePlane, corners: Quad<'photo'>, aspect: number): number[] {
  const spots = corners.map((corner) => ontoPlane(plane, corner));
  const length = (from: number, to: number): number =>
    Math.hypot(spots[to]!.u - spots[from]!.u, spots[to]!.v - spots[from]!.v);
  const sides = [length(0, 1), length(1, 2), length(2, 3), length(3, 0)] as const;
  const isWide = sides[0] + sides[2] > sides[1] + sides[3];
  return [
    ...sides.map((side, at) => Math.log(side / (isWide === (at % 2 === 0) ? aspect : 1))),
    Math.log(length(0, 2) / Math.hypot(1, aspect)),
    Math.log(length(1, 3) / Math.hypot(1, aspect)),
  ];
}

function sizeOf(corners: Quad<'photo'>, reach: number): number {
  const [a, b, c] = corners;
  return reach / Math.min(Math.hypot(b.x - a.x, b.y - a.y), Math.hypot(c.x - b.x, c.y - b.y));
}

/** One step of Gauss and Newton from a plane, its derivatives by differences. */
function fitted(
  told: readonly Told[],
  weights: readonly number[],
  plane: TablePlane,
  aspect: number,
): readonly number[] {
  const rows = Array.from(plane.of, () => new Float64Array(plane.of.length + 1));
  const add = (terms: readonly number[], value: number, weight: number): void =>
    terms.forEach((one, r) => {
      terms.forEach((other, c) => (rows[r]![c]! += weight * one * other));
      rows[r]![5]! -= weight * one * value;
    });
  told.forEach(({ corners }, at) => {
    if (weights[at]! < 1e-3) return;
    const here = misfits(plane, corners, aspect);
    const moved = plane.of.map((value, k) =>
      misfits(
        { ...plane, of: plane.of.map((other, j) => (j === k ? value + TINY : other)) },
        corners,
        aspect,
      ),
    );
    here.forEach((value, i) =>
      add(
        moved.map((there) => (there[i]! - value) / TINY),
        value,
        weights[at]!,
      ),
    );
  });
  [0, SHAPE, SHAPE, SLANT, SLANT].forEach((usual, k) => {
    if (usual === 0) return;
    add(
      plane.of.map((_, j) => (j === k ? 1 : 0)),
      plane.of[k]!,
      (LIMIT / usual) ** 2,
    );
  });
  const step = solve(rows);
  return plane.of.map((value, k) => value + step[k]!);
}

const TINY = 1e-5;
