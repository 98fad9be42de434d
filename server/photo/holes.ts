import type { PhotoPoint, Quad } from '../geometry/points.ts';
import { contains } from '../geometry/polygon.ts';
import { middleOf } from './find-sheets.ts';
import type { Candidate, Overview } from './find-sheets.ts';
import { freePlaces } from './free-places.ts';
import type { FreePlace } from './free-places.ts';
import { isOtherGrain } from './grain-of-places.ts';
import { shrunken } from './white-card.ts';

/** Free places in the rows of the sheets, and next to their ends. */
export interface Holes {
  /** With something in them. */
  readonly filled: readonly Candidate[];
  /** With nothing seen between two sheets. */
  readonly empty: readonly Quad<'photo'>[];
  /** Beside rows, with nothing in them that parts from the table but their grain: tried, whether a sheet fits there. */
  readonly otherGrain: readonly Candidate[];
  /** With something in them that goes on out of the picture. */
  readonly cutOff: readonly Quad<'photo'>[];
  /** Beyond the ends of rows, with something in them. */
  readonly beyond: readonly Quad<'photo'>[];
}

/**
 * Looks into the free places of the rows and columns, so that no sheet is lost without a word.
 *
 * Takes       what was seen, the sheets, and all else that accounts for what lies in a place.
 * Source      the mark stands where, on 21 photos of the samples' generator, at most 1 % of a bare place was not taken
 *             for the table, and at least 16 % of a place with a sheet, however much like the table.
 */
export function holesIn(
  overview: Overview,
  sheets: readonly Candidate[],
  others: readonly Candidate[],
): Holes {
  const [one] = sheets;
  const free = freePlaces(sheets.map(({ corners }) => corners));
  if (free.length === 0 || one === undefined)
    return { filled: [], empty: [], otherGrain: [], cutOff: [], beyond: [] };
  const { width, height } = overview.image;
  const accounted = new Uint8Array(width * height);
  for (const { pixels } of overview.cutOff) for (const pixel of pixels) accounted[pixel] = 1;
  const places = free
    .filter((place) => isOpen(place, others, one.area))
    .map((place) => ({ ...place, ...seenIn(overview, place.corners, accounted) }))
    .filter(({ all, inside }) => inside > SEEN * all);
  const isStrange = ({ kind, strange }: (typeof places)[number]): boolean =>
    strange > (kind === 'beyond' ? STRANGE_BEYOND : STRANGE);
  const inPicture = ({ all, inside }: (typeof places)[number]): boolean => inside === all;
  const strange = places.filter(isStrange);
  const cutOff = strange.filter((place) => !inPicture(place) || place.atRim > STRANGE);
  const whole = strange.filter((place) => !cutOff.includes(place));
  const cornersOf = (found: readonly FreePlace[]): Quad<'photo'>[] =>
    found.map(({ corners }) => corners);
  const candidates = (found: readonly FreePlace[]): Candidate[] =>
    cornersOf(found).map((corners) => ({ corners, area: one.area, fill: 0 }));
  const likeTable = places.filter((place) => inPicture(place) && !isStrange(place));
  const otherGrain = likeTable.filter(
    ({ kind, corners }) => kind !== 'beyond' && isOtherGrain(overview, corners),
  );
  const isBetween = ({ kind }: FreePlace): boolean => kind === 'between';
  return {
    filled: candidates([
      ...whole.filter(({ kind }) => kind !== 'beyond'),
      ...otherGrain.filter(isBetween),
    ]),
    otherGrain: candidates(otherGrain.filter((place) => !isBetween(place))),
    empty: cornersOf(likeTable.filter((place) => isBetween(place) && !otherGrain.includes(place))),
    cutOff: cornersOf(cutOff),
    beyond: cornersOf(whole.filter(({ kind }) => kind === 'beyond')),
  };
}

/** Part of a place that is no table, from which something lies there; next to the rows other things may lie about. */
const STRANGE = 0.06;
const STRANGE_BEYOND = 0.12;
/** Part of a place left out all round: its corners are a guess, and its neighbours throw shadows. */
const RIM = 0.12;
/** Part of a place that has to lie in the picture to be looked at. */
const SEEN = 0.4;
/** Part of a sheet's area of a thing, such as the white card, that accounts for a place; motifs are smaller. */
const LARGE = 0.1;

/** A place in which nothing lies that is told already. Beyond the rows even a scrap accounts for what is seen. */
function isOpen({ corners, kind }: FreePlace, others: readonly Candidate[], one: number): boolean {
  return !others.some(
    (other) =>
      (kind === 'beyond' || other.area > LARGE * one) &&
      (contains(corners, middleOf(other.corners)) || contains(other.corners, middleOf(corners))),
  );
}

interface Seen {
  /** Places looked at in all, and in the picture. */
  readonly all: number;
  readonly inside: number;
  /** Part of these that was neither taken for the table nor accounted for. */
  readonly strange: number;
  /** The same between the place and the rim of the picture where it lies close to it, else 0. */
  readonly atRim: number;
}

function seenIn(overview: Overview, corners: Quad<'photo'>, accounted: Uint8Array): Seen {
  const { table, image } = overview;
  const { width, height } = image;
  const inner = shrunken(corners, RIM);
  let [all, inside, strange] = [0, 0, 0];
  const isStrange = (x: number, y: number): boolean =>
    table.reached[y * width + x] === 0 && accounted[y * width + x] === 0;
  const [left, right] = reachOf(inner, 'x');
  const [top, bottom] = reachOf(inner, 'y');
  for (let y = top; y <= bottom; y += 2)
    for (let x = left; x <= right; x += 2) {
      if (!contains(inner, { x: x + 0.5, y: y + 0.5 })) continue;
      all++;
      if (x < 0 || y < 0 || x >= width || y >= height) continue;
      inside++;
      if (isStrange(x, y)) strange++;
    }
  const near = RIM * (right - left);
  const along: [number, number][] = [];
  for (let y = Math.max(0, top); y <= Math.min(height - 1, bottom); y++) {
    if (left - 2 * near < 0) along.push([EDGE, y]);
    if (right + 2 * near > width) along.push([width - 1 - EDGE, y]);
  }
  for (let x = Math.max(0, left); x <= Math.min(width - 1, right); x++) {
    if (top - 2 * near < 0) along.push([x, EDGE]);
    if (bottom + 2 * near > height) along.push([x, height - 1 - EDGE]);
  }
  const atRim = along.filter(([x, y]) => isStrange(x, y)).length / Math.max(1, along.length);
  return { all, inside, strange: inside === 0 ? 0 : strange / inside, atRim };
}

/** The outermost pixels of the picture belong to no table. */
const EDGE = 4;

function reachOf(corners: Quad<'photo'>, axis: keyof PhotoPoint & ('x' | 'y')): [number, number] {
  const values = corners.map((corner) => corner[axis]);
  return [Math.ceil(Math.min(...values)), Math.floor(Math.max(...values))];
}
