import type { PhotoPoint, Quad } from '../geometry/points.ts';
import { sidesOf } from '../geometry/quad.ts';
import { scoresOf } from './lines-through-profiles.ts';
import type { Picture } from './picture.ts';
import { poseOf, sheetAt } from './sheet-of-size.ts';
import type { SheetSides } from './sheet-of-size.ts';
import { SAMPLES, profilesOf } from './side-profiles.ts';
import type { TablePlane } from './table-plane.ts';

/** Where a sheet of the known size is borne out best. */
export interface PlacedBySize {
  readonly corners: Quad<'photo'>;
  /** How well edges bear out all four sides, 0 to 1. */
  readonly worth: number;
  /** How much better than at the next place apart from it. */
  readonly lead: number;
}

/**
 * Lays a sheet of the known size to where edges bear out its four sides together.
 *
 * A faint border (kraft on wood, white on white) is weaker than the rows of motifs beside it, and each side
 * alone would go to the wrong one. But a sheet has one size: with that known it can only be moved and turned,
 * and hardly anywhere but at its own border do four straight edges lie so far apart all along.
 *
 * Takes       the large picture, the table, a rough outline in its pixels, width over height or its
 *             inverse of a sheet (1 and more), and how far it may be off: as a part of its side, and in radians.
 * Gives       null where it lies so far outside the picture that nothing is told.
 */
export function placedBySize(
  picture: Picture,
  plane: TablePlane,
  near: Quad<'photo'>,
  aspect: number,
  reach: number,
  turned: number,
): PlacedBySize | null {
  const [upper, right, lower, left] = sidesOf(near);
  const isWide = upper + lower > right + left;
  const sides = isWide ? { across: aspect, down: 1 } : { across: 1, down: aspect };
  const { middle, turn } = poseOf(plane, near);
  const start = sheetAt(plane, middle, turn, sides);
  const coarse = placesAround(picture, plane, { middle, turn }, sides, {
    move: reach,
    moveStep: COARSE,
    turn: turned,
    turnStep: COARSE_TURN,
  });
  if (coarse === null) return null;
  const side = Math.min(...sidesOf(start));
  const distinct = Math.max(DISTINCT * side, BLURRED);
  const fine = apart(coarse, COARSE_APART * side, MOST).flatMap(
    (place) =>
      placesAround(picture, plane, place, sides, {
        move: FINE_REACH,
        moveStep: FINE,
        turn: FINE_TURN_REACH,
        turnStep: FINE_TURN,
      }) ?? [],
  );
  const [best, next] = apart(
    fine.sort((p, q) => q.worth - p.worth),
    distinct,
    2,
  );
  if (best === undefined) return null;
  return {
    corners: meanOf(
      fine.filter(
        ({ corners, worth }) =>
          worth > best.worth - ALIKE && furthest(corners, best.corners) <= distinct,
      ),
    ),
    worth: best.worth,
    lead: best.worth - (next?.worth ?? 0),
  };
}

/** An edge is as steep for a few pixels, so that poses side by side are borne out alike: the truth is in their middle. */
function meanOf(places: readonly Place[]): Quad<'photo'> {
  const mean = (at: number, axis: 'x' | 'y'): number =>
    places.reduce((sum, { corners }) => sum + corners[at]![axis], 0) / places.length;
  return [0, 1, 2, 3].map((at) => ({
    x: mean(at, 'x'),
    y: mean(at, 'y'),
  })) as unknown as Quad<'photo'>;
}

/** By how much the worth of such poses differs. */
const ALIKE = 0.02;

/** Steps of the first look, in sides of a sheet and radians, and those of the second, with how far that goes. */
const COARSE = 0.006;
const COARSE_TURN = 0.008;
const FINE = 0.002;
const FINE_TURN = 0.002;
const FINE_REACH = 0.02;
const FINE_TURN_REACH = 0.012;
/** Places that are looked at twice, and how far apart they lie, in sides of a sheet. */
const MOST = 6;
const COARSE_APART = 0.02;
/** Sides of a sheet by which two places differ at a corner to be two. */
const DISTINCT = 0.015;
/** The same in pixels: an edge is seen a little to both sides of its place. */
const BLURRED = 10;

interface Pose {
  readonly middle: PhotoPoint;
  readonly turn: number;
}

interface Place extends Pose {
  readonly corners: Quad<'photo'>;
  readonly worth: number;
}

interface Reach {
  readonly move: number;
  readonly moveStep: number;
  readonly turn: number;
  readonly turnStep: number;
}

/** Poses around one, the best of each block of moves, best first; null where no side is seen. */
function placesAround(
  picture: Picture,
  plane: TablePlane,
  { middle, turn }: Pose,
  sides: SheetSides,
  reach: Reach,
): Place[] | null {
  const start = sheetAt(plane, middle, turn, sides);
  const side = Math.min(...sidesOf(start));
  const most = side * (reach.move + reach.turn * Math.max(sides.across, sides.down));
  const step = Math.max(0.75, most / 60);
  const maps = start.flatMap((from, k): SideMap[] => {
    const map = mapOf(picture, from, start[(k + 1) % 4]!, most, step);
    return map === null ? [] : [map];
  });
  if (maps.length < 4) return null;
  const moves = stepsOf(reach.move, reach.moveStep);
  const blocks = Math.ceil(moves.length / BLOCK);
  const best = Array.from({ length: blocks * blocks }, () => ({ dx: 0, dy: 0, by: 0, worth: -1 }));
  for (const by of stepsOf(reach.turn, reach.turnStep)) {
    const quad = sheetAt(plane, middle, turn + by, sides);
    const ends = maps.map((map, k) => [
      map.out(start[k]!, quad[k]!),
      map.out(start[k]!, quad[(k + 1) % 4]!),
    ]);
    moves.forEach((partX, column) =>
      moves.forEach((partY, row) => {
        const [dx, dy] = [partX * side, partY * side];
        let sum = 0;
        let least = 1;
        for (let k = 0; k < 4; k++) {
          const map = maps[k]!;
          const moved = dx * map.normal.x + dy * map.normal.y;
          const borne = map.borne(ends[k]![0]! + moved, ends[k]![1]! + moved);
          sum += borne;
          if (borne < least) least = borne;
        }
        const worth = 0.5 * (sum / 4) + 0.5 * least;
        const block = Math.floor(row / BLOCK) * blocks + Math.floor(column / BLOCK);
        if (worth > best[block]!.worth) best[block] = { dx, dy, by, worth };
      }),
    );
  }
  return best
    .sort((p, q) => q.worth - p.worth)
    .map(({ dx, dy, by, worth }) => {
      const moved = { x: middle.x + dx, y: middle.y + dy };
      return {
        middle: moved,
        turn: turn + by,
        corners: sheetAt(plane, moved, turn + by, sides),
        worth,
      };
    });
}

/** Steps across and down of which only the best pose is kept. */
const BLOCK = 4;

function stepsOf(reach: number, step: number): number[] {
  const count = Math.ceil(reach / step);
  return Array.from({ length: 2 * count + 1 }, (_, k) => (k - count) * step);
}

interface SideMap {
  readonly normal: PhotoPoint;
  /** How far out of a side's line a point lies, given one on the line. */
  readonly out: (from: PhotoPoint, point: PhotoPoint) => number;
  /** How well edges bear out the side with its two ends moved out so many pixels, 0 to 1. */
  readonly borne: (start: number, end: number) => number;
}

function mapOf(
  picture: Picture,
  from: PhotoPoint,
  to: PhotoPoint,
  reach: number,
  step: number,
): SideMap | null {
  const side = profilesOf(picture, from, to, reach, step);
  if (side === null) return null;
  const { steps, normal } = side;
  const scores = scoresOf(side, undefined, { cap: CAP, beyond: 0 });
  const whole = SAMPLES * CAP * side.floor;
  const middle = (steps - 1) / 2;
  return {
    normal,
    out: (on, point) => (point.x - on.x) * normal.x + (point.y - on.y) * normal.y,
    borne: (start, end) => {
      const first = Math.round(middle + start / step);
      const last = Math.round(middle + end / step);
      if (first < 0 || last < 0 || first >= steps || last >= steps) return 0;
      return Math.max(0, scores[first * steps + last]!) / whole;
    },
  };
}

/** Times the noise from which an edge counts in full: a faint border counts nearly as much as the rim of a motif. */
const CAP = 2;

/** The best places of a list, best first, whose corners lie apart. */
function apart(places: readonly Place[], least: number, most: number): Place[] {
  const kept: Place[] = [];
  for (const place of places) {
    if (kept.length >= most) break;
    if (kept.every((other) => furthest(place.corners, other.corners) > least)) kept.push(place);
  }
  return kept;
}

export function furthest(p: Quad<'photo'>, q: Quad<'photo'>): number {
  return Math.max(...p.map((corner, at) => Math.hypot(corner.x - q[at]!.x, corner.y - q[at]!.y)));
}
