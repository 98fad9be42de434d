import { boundsOf } from '../geometry/bounds.ts';
import type { Bounds } from '../geometry/bounds.ts';
import type { Point, Quad } from '../geometry/points.ts';
import { sidesOf } from '../geometry/quad.ts';
import type { Region } from './regions.ts';

/** From how many sheets' worth of unclear things she is told. */
const WORTH_A_WORD = 0.3;

/** Takes how many sheets' worth of unclear things no sheet and no unsure place accounts for, and places beyond the rows with something in them. */
export function notesOnLeftOver(sheets: number, places: number): string[] {
  if (sheets < WORTH_A_WORD && places === 0) return [];
  return [
    'Something else lies on the table that could not be told apart, perhaps another sheet; add it by its corners, or take the photo again with a finger’s width around each sheet.',
  ];
}

/** How many papers they are: parts of one paper whose boxes lie on each other count once. */
function together(parts: readonly Bounds[]): number {
  const papers: Bounds[] = [];
  for (const part of parts)
    if (!papers.some((paper) => lieOnEachOther(paper, part))) papers.push(part);
  return papers.length;
}

/** Part of the smaller of two boxes that both share when they are of one paper. */
const SHARED = 0.4;

function lieOnEachOther(p: Bounds, q: Bounds): boolean {
  const wide = Math.min(p.right, q.right) - Math.max(p.left, q.left) + 1;
  const high = Math.min(p.bottom, q.bottom) - Math.max(p.top, q.top) + 1;
  const area = ({ left, top, right, bottom }: Bounds): number =>
    (right - left + 1) * (bottom - top + 1);
  return wide > 0 && high > 0 && wide * high > SHARED * Math.min(area(p), area(q));
}

/** Takes what goes on outside the picture and is large enough for a paper, and places that reach out of it. */
export function notesOnCutOff(
  cutOff: readonly Region[],
  places: readonly Quad<'photo'>[],
): string[] {
  const papers = together([...cutOff, ...places.map(boundsOf)]);
  if (papers === 0) return [];
  return [
    papers === 1
      ? 'One paper lies partly outside the picture and was left out; photograph it again whole.'
      : `${papers} papers lie partly outside the picture and were left out; photograph them again whole.`,
  ];
}

/** Part of its side by which a side of a place keeps clear of the rim where it is not the rim itself. */
const CLEAR = 0.01;

/** The same in pixels of the preview, for narrow strips: a side is laid between pixels, the outermost of which is the last there is. */
const CLEAR_PIXELS = 2;

/**
 * An unsure place that ends just where the picture does may be what is left of a paper that goes on beyond it.
 *
 * Takes       places in pixels of a picture of this size.
 */
export function notesOnRim(
  places: readonly Quad<'photo'>[],
  { width, height }: { readonly width: number; readonly height: number },
): string[] {
  const atRim = places.filter((corners) => {
    const clear = Math.max(CLEAR_PIXELS, CLEAR * Math.min(...sidesOf(corners)));
    const beyond = (of: (corner: Point<'photo'>) => number): boolean =>
      corners.filter((corner) => of(corner) < clear).length >= 2;
    return (
      beyond(({ x }) => x) ||
      beyond(({ y }) => y) ||
      beyond(({ x }) => width - 1 - x) ||
      beyond(({ y }) => height - 1 - y)
    );
  }).length;
  if (atRim === 0) return [];
  return [
    atRim === 1
      ? 'One unsure place ends where the picture does: a paper may lie there partly outside the picture. If all of it shows, drag its corners; if not, photograph it again whole.'
      : `${atRim} unsure places end where the picture does: papers may lie there partly outside the picture. Where all of one shows, drag its corners; where not, photograph it again whole.`,
  ];
}

/** A paper that looks just like the table may lie between two others; nothing but the rows can tell. */
export function notesOnEmptyPlaces(places: number, what: 'sheet' | 'square' = 'sheet'): string[] {
  if (places === 0) return [];
  const how =
    what === 'sheet'
      ? ['its corners', 'their corners']
      : ['a touch on this photo', 'a touch each on this photo'];
  return [
    places === 1
      ? `One place between the ${what}s looks empty; if a ${what} lies there, add it by ${how[0]!}.`
      : `${places} places between the ${what}s look empty; if ${what}s lie there, add them by ${how[1]!}.`,
  ];
}

/** Takes how many things are shaped like sheets, but so small that they may be motifs, where no sheet was told. */
export function notesOnSmall(things: number): string[] {
  if (things === 0) return [];
  return [
    `${things === 1 ? 'One thing has' : `${things} things have`} a sheet’s shape but ${things === 1 ? 'is' : 'are'} very small in the picture; come nearer, or photograph fewer papers at a time.`,
  ];
}
