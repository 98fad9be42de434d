import type { PhotoPoint, Quad } from '../geometry/points.ts';
import { contains } from '../geometry/polygon.ts';
import { apartQuads, gridOf } from './apart-quads.ts';
import type { Edges } from './edges.ts';
import type { Candidate, Overview } from './find-sheets.ts';
import { dividedBlock } from './grown-together.ts';
import { isSeenInParts, unexplained } from './left-over.ts';
import type { PhotoAsk } from './picture.ts';
import { seenEdges } from './seen-edges.ts';
import { BARE, LEAST_BORNE, quadsFromLines } from './sheets-from-lines.ts';
import type { Judge, SidePair } from './sheets-from-lines.ts';
import { bestOver, nearestSize, sizesToTry } from './sheet-sizes.ts';
import { straightLines } from './straight-lines.ts';
import { shrunken } from './white-card.ts';

/** Blocks of sheets are divided first; what is not told by that is put together from lines. */
export function fromEdges(
  overview: Overview,
  whole: readonly Candidate[],
  usual: number,
  ask: PhotoAsk,
): Candidate[] {
  const edges = seenEdges(overview);
  const size = ask.sheetMillimetres;
  const blocks =
    size === null
      ? []
      : overview.blocks
          .filter(({ pixels }) => usual === 0 || pixels.length > 1.4 * usual)
          .flatMap((region) => dividedBlock(region, edges, size.width / size.height, usual));
  const divided = apartQuads(
    blocks,
    whole.map(({ corners }) => corners),
  );
  const known = [...whole, ...divided];
  const left = unexplained(overview, known);
  const one = known[0]?.area ?? left;
  return left > 0.35 * one || known.length === 0 || isSeenInParts(overview, known, one)
    ? [...divided, ...fromLines(overview, edges, known, ask)]
    : divided;
}

/** Lines looked at, most borne out first; more only cost time. */
const MOST_LINES = 500;

function fromLines(
  overview: Overview,
  edges: Edges,
  whole: readonly Candidate[],
  ask: PhotoAsk,
): Candidate[] {
  // Of what is printed on a sheet that is known no other sheet is made.
  const closed = whole.map(({ corners }) => shrunken(corners, WITHIN));
  const lines = straightLines(edges, MOST_LINES, closed);
  const judge = judgeOf(overview);
  const trial = (
    sizeAt: (place: PhotoPoint) => SidePair,
    there: readonly Candidate[],
  ): Candidate[] =>
    apartQuads(
      quadsFromLines(lines, edges, { ...judge, sizeAt, isTaken: inMiddleOf(there) }),
      there.map(({ corners }) => corners),
    )
      .filter(({ least, mean }) => least > LEAST_BORNE && mean > 0.55)
      .map(({ corners, area, score }) => ({ corners, area, fill: score }));
  const first =
    whole.length > 0
      ? trial(nearestSize(whole), whole)
      : bestOver(sizesToTry(overview, lines, ask), (size) => trial(() => size, []));
  // What came first tells the size at each place better than a guess, so more may fit now.
  const sure = [...whole, ...first.filter(({ fill }) => fill > SURE)];
  if (sure.length === 0) return first;
  return [...sure.slice(whole.length), ...trial(nearestSize(sure), sure)];
}

/** Part of a side by which a rough outline may be off. */
const WITHIN = 0.04;

/** Score from which a quad of lines tells the size of sheets. */
const SURE = 0.7;

/** Whether a place lies so far within one of the sheets that no other can have its middle there. */
function inMiddleOf(sheets: readonly Candidate[]): (place: PhotoPoint) => boolean {
  const inner = sheets.map(({ corners }) => shrunken(corners, 0.1));
  return (place) => inner.some((corners) => contains(corners, place));
}

/** How well a quad agrees with the table: badly when bare table lies in it, above all along a side. */
function judgeOf({ table, image }: Overview): Pick<Judge, 'bareIn' | 'agrees'> {
  const isBare = ({ x, y }: PhotoPoint): boolean =>
    table.reached[Math.floor(y) * image.width + Math.floor(x)] === 1;
  const part = (places: readonly PhotoPoint[]): number =>
    places.filter(isBare).length / places.length;
  const bareIn = (corners: Quad<'photo'>): number => part(gridOf(corners, 10));
  return {
    bareIn,
    agrees: (corners) => {
      const rim = shrunken(corners, 0.03);
      const sides = rim.map((from, side) => {
        const to = rim[(side + 1) % 4]!;
        return part(
          Array.from({ length: 12 }, (_, k) => ({
            x: from.x + ((k + 0.5) / 12) * (to.x - from.x),
            y: from.y + ((k + 0.5) / 12) * (to.y - from.y),
          })),
        );
      });
      // A white sheet on a white table looks bare all over; that alone must not rule it out.
      const bare = bareIn(corners);
      return 1 - BARE * bare - 0.25 * Math.max(0, Math.max(...sides) - bare);
    },
  };
}
