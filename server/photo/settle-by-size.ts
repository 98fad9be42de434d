import type { Quad } from '../geometry/points.ts';
import { apartQuads } from './apart-quads.ts';
import { sidesOf } from '../geometry/quad.ts';
import { scaledQuad } from './find-sheets.ts';
import type { Picture } from './picture.ts';
import { furthest, placedBySize } from './placed-by-size.ts';
import type { Rough, Settled, SettledSheets, ToLay } from './settled.ts';
import { poseOf, sheetAt } from './sheet-of-size.ts';
import { CLEAR_LEAD, surenessOf } from './sureness.ts';
import { tableMetric } from './table-metric.ts';
import type { TableMetric } from './table-metric.ts';
import { offPlane, tablePlane } from './table-plane.ts';
import type { TablePlane } from './table-plane.ts';

interface ToSettle {
  readonly picture: Picture;
  readonly laid: readonly Settled[];
  readonly rough: readonly Rough[];
  /** Where a sheet may lie, in pixels of the preview. */
  readonly places: readonly Quad<'photo'>[];
  readonly aspect: number;
  readonly perPreview: number;
  readonly lay: (one: ToLay) => Settled;
  /** Whether an outline has bare table within it along a side. */
  readonly hasBareStrip: (corners: Quad<'photo'>) => boolean;
}

/**
 * Sheets whose own edges tell too little, and places where one may lie, laid to where a sheet of the size that the sure
 * ones tell fits all four edges. One that was sure and is not of that size is laid anew too, or is no longer sure.
 *
 * Takes       what all sheets were laid to so far; in pixels of the large picture, the places apart.
 * Gives       the same, those laid anew that fit at one place and at no other; and sheets at those places where one does.
 */
export function settleBySize(all: ToSettle): SettledSheets {
  const { rough, places, perPreview, aspect } = all;
  let laid = [...all.laid];
  let added: SettledSheets['added'] = [];
  const sureness = (one: Settled, at: number): number =>
    surenessOf(one, rough[at]!.byMotifs === true);
  for (let round = 0; round < ROUNDS; round++) {
    const told = tablePlane(
      [...laid, ...added].map((one) => ({ corners: one.corners, trust: trustIn(one) })),
      aspect,
    );
    if (told === null || told.agree < FEWEST) break;
    const { plane } = told;
    laid = laid.map((one, at) => {
      const isBare = all.hasBareStrip(one.corners);
      const offSize = Math.max(offPlane(plane, one.corners, aspect), isBare ? BARE : 0);
      if (sureness(one, at) >= SURE && offSize < OFF && !isBeside(one)) return one;
      const reach = isBare ? AROUND : rough[at]!.loose === true ? LOOSE : NEAR;
      const anew = fitted(all, plane, one.corners, reach);
      // What was sure gives way only to what is.
      const isWorse =
        anew !== null && sureness(one, at) >= SURE && (sureness(anew, at) < SURE || isBeside(anew));
      return anew === null || isWorse ? { ...one, offSize } : anew;
    });
    const before = added;
    const fitting = places.flatMap((place, at) => {
      const known = before.find((one) => one.place === at);
      const one =
        known === undefined
          ? fitted(all, plane, scaledQuad(place, perPreview), AROUND)
          : (fitted(all, plane, known.corners, NEAR) ?? known);
      return one === null ? [] : [{ ...one, place: at }];
    });
    // Two places may lead to one sheet, as two halves of a faint one do: then it is laid where that is told best.
    fitting.sort((p, q) => (q.leadBySize ?? 0) - (p.leadBySize ?? 0));
    added = apartQuads(
      fitting,
      laid.map(({ corners }) => corners),
    );
  }
  const doubted = <T extends Settled>(one: T): T =>
    isBeside(one) ? { ...one, isBeside: true } : one;
  return { laid: laid.map(doubted), added: added.map(doubted) };
}

/**
 * Whether an outline may lie a little beside its sheet: table is well seen beside two sides or three, and not at all
 * beside the others, where an edge of the print or of a neighbour was taken for the sheet's.
 *
 * Source      of 906 sure sheets on tuning photos of the samples' generator six were so, and all six more than 1 % off.
 */
function isBeside({ outside }: Settled): boolean {
  const [least = 1, , third = 0] = [...outside].sort((p, q) => p - q);
  return least < UNSEEN && third > WELL_SEEN;
}

/** Parts of a side with table beside it. */
const UNSEEN = 0.1;
const WELL_SEEN = 0.8;

/** Sheets that were placed in the first round tell the size for the second. */
const ROUNDS = 2;
/** How sure a sheet is whose corners she is not asked to drag. */
const SURE = 0.5;
/** Sheets, each as far as it is trusted, that have to agree on the size. */
const FEWEST = 1;
/** Part of a side by which a sheet is no longer of the size of the others. */
const OFF = 0.0075;
/** How far a side is off at least, in the same, along which bare table lies within the outline. */
const BARE = 0.08;
/** How far a sheet may be off, in parts of its side, and radians: laid onto edges, told by motifs, or guessed. */
const NEAR = { move: 0.08, turn: 0.05 };
const LOOSE = { move: 0.14, turn: 0.05 };
const AROUND = { move: 0.25, turn: 0.1 };

/**
 * How far an outline is trusted to tell the size of a sheet, 0 to 1: as far as table was seen beside the side that has
 * least of it, or the outline fits that size nowhere else. Whether it is of that size already says nothing here.
 */
function trustIn({ borne, outside, leadBySize = 0 }: Settled): number {
  const told = Math.max(Math.min(...outside), leadBySize / CLEAR_LEAD);
  return Math.min(1, 0.1 + told) * Math.min(...borne);
}

function fitted(
  { picture, aspect, lay }: ToSettle,
  plane: TablePlane,
  near: Quad<'photo'>,
  { move, turn }: typeof NEAR,
): Settled | null {
  const placed = placedBySize(picture, plane, near, aspect, move, turn);
  if (placed === null || placed.worth < BORNE || placed.lead < LEAD) return null;
  const metric = metricAround(plane, placed.corners, aspect);
  const one = lay({ start: placed.corners, reach: LAID, metric, misfit: MISFIT, lead: 0 });
  if (offPlane(plane, one.corners, aspect) < FITS) return { ...one, leadBySize: placed.lead };
  // The edges close by are those of a shadow or a stripe: together the four were told better, but no finer than that.
  return {
    corners: placed.corners,
    borne: [0, 1, 2, 3].map(() => placed.worth),
    outside: [0, 0, 0, 0],
    offSize: furthest(one.corners, placed.corners) / Math.min(...sidesOf(placed.corners)),
    lead: 0,
    leadBySize: Math.min(placed.lead, DOUBTED * CLEAR_LEAD),
  };
}

/** How long things are about a place of the plane. */
function metricAround(
  plane: TablePlane,
  corners: Quad<'photo'>,
  aspect: number,
): TableMetric | null {
  const side = Math.min(...sidesOf(corners));
  const moved = [
    [0, 0],
    [side / 2, 0],
    [-side / 2, 0],
    [0, side / 2],
    [0, -side / 2],
  ].map(([dx, dy]) => {
    const { middle, turn } = poseOf(plane, corners);
    const [upper, right, lower, left] = sidesOf(corners);
    const isWide = upper + lower > right + left;
    return sheetAt(plane, { x: middle.x + dx!, y: middle.y + dy! }, turn, {
      across: isWide ? aspect : 1,
      down: isWide ? 1 : aspect,
    });
  });
  return tableMetric(moved, aspect);
}

/** What the lead counts at most where edges close by speak against it: too little to be sure. */
const DOUBTED = 0.4;
/** Part of a side by which a sheet laid onto edges close by is off its size at most. */
const FITS = 0.006;
/** How well the four edges have to be borne out, and how much better than at any other place. */
const BORNE = 0.85;
const LEAD = 0.02;
/** Part of a side by which the plane and the steps of the search may be off. */
const LAID = 0.1;
/** The plane tells the size at any place better than a metric of sheets that lie further off. */
const MISFIT = 0.002;
