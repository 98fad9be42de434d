import { contains } from '../geometry/polygon.ts';
import { apartQuads } from './apart-quads.ts';
import { middleOf } from './find-sheets.ts';
import type { Candidate, Overview } from './find-sheets.ts';
import type { Picture } from './picture.ts';
import { pixelsIn } from './pixels-in.ts';
import { isWhite, patchOfPixels, shrunken } from './white-card.ts';
import type { Patch } from './white-card.ts';

export interface Apart {
  /** Squares and other plain things, one by one. */
  readonly plain: readonly Candidate[];
  /** White cards on which squares lie, with what their bare parts show. */
  readonly cards: readonly { readonly candidate: Candidate; readonly patch: Patch }[];
}

/**
 * Takes things apart that are several plain pieces: squares a few millimetres apart, between which the table lies in
 * shadow, and squares on a white card.
 *
 * Takes       things with four corners, all plain pieces, what was seen, and how bright the picture is at most.
 */
export function squaresApart(
  things: readonly Candidate[],
  pieces: readonly Candidate[],
  overview: Overview,
  preview: Picture,
  brightest: readonly [number, number, number],
): Apart {
  const plain: Candidate[] = [];
  const cards: { candidate: Candidate; patch: Patch }[] = [];
  for (const candidate of things) {
    const own = piecesIn(candidate, pieces);
    const patch = own.length === 0 ? null : barePatch(candidate, own, overview, preview);
    if (patch !== null && isWhite({ ...patch, uneven: 0 }, brightest)) {
      cards.push({ candidate, patch });
      plain.push(...own);
    } else if (own.length > 1 && areaOf(own) > FILLED * candidate.area) plain.push(...own);
    else plain.push(candidate);
  }
  // Squares in rows that are not full make up no four-cornered thing together.
  const there = [...plain, ...cards.map(({ candidate }) => candidate)];
  const loose = pieces.filter((piece) =>
    overview.unclear.some((region) => isAround(region, piece)),
  );
  return {
    plain: [
      ...plain,
      ...apartQuads(
        loose,
        there.map(({ corners }) => corners),
      ),
    ],
    cards,
  };
}

/** The pieces that are part of a thing, not all of it. */
export function piecesIn(
  { corners, area }: Candidate,
  pieces: readonly Candidate[],
): readonly Candidate[] {
  return pieces.filter(
    (piece) => piece.area < PART * area && contains(corners, middleOf(piece.corners)),
  );
}

const PART = 0.75;
/** Part of a thing that its pieces fill when there is nothing but gaps between them. */
const FILLED = 0.7;
/** Part of a card that has to be bare, and what is left out around a piece: its shadow. */
const BARE = 0.08;
const BESIDE = 0.05;

/** What the card shows beside the pieces, its lighter half: the rest may lie in their shadows. Null when hardly any. */
function barePatch(
  { corners }: Candidate,
  pieces: readonly Candidate[],
  { table, image }: Overview,
  preview: Picture,
): Patch | null {
  const { width, height, lab } = image;
  const covered = pieces.map((piece) => shrunken(piece.corners, -BESIDE));
  const all = pixelsIn(shrunken(corners, 0.015), width, height);
  const bare = all.filter((pixel) => {
    if (table.reached[pixel] === 1) return false;
    const x = pixel % width;
    const place = { x: x + 0.5, y: (pixel - x) / width + 0.5 };
    return !covered.some((quad) => contains(quad, place));
  });
  if (bare.length < BARE * all.length) return null;
  const byLight = bare.sort((p, q) => lab[3 * p]! - lab[3 * q]!);
  return patchOfPixels(preview, Array.from(byLight.subarray(byLight.length >> 1)));
}

function areaOf(pieces: readonly Candidate[]): number {
  return pieces.reduce((sum, { area }) => sum + area, 0);
}

function isAround(
  region: {
    readonly left: number;
    readonly right: number;
    readonly top: number;
    readonly bottom: number;
  },
  { corners }: Candidate,
): boolean {
  const { x, y } = middleOf(corners);
  return x > region.left && x < region.right && y > region.top && y < region.bottom;
}
