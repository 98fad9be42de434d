import type { Mark } from './drawing.ts';
import type { Block } from './page.ts';

/** One way to set a thing, and how good it is to look at beside its other ways. */
export interface Way {
  /** In mm. */
  readonly height: number;
  readonly worth: number;
  /** Drawn only once the way is chosen: a picture takes long. */
  readonly draw: () => readonly Mark[];
}

/** A list that stands at the end of a chapter where its last page has room for it. */
export interface EndList {
  /** What a page is called that it stands on. */
  readonly name: string;
  readonly block: Block;
}

/** What stands on a page: which thing, counted from 0, and in which way. */
export interface OnPage {
  readonly at: number;
  readonly way: Way;
}

/** Most things on one page: more cannot be told apart at a glance. */
const MOST = 4;

/** The pages from one thing on. */
interface Tail {
  readonly pages: number;
  readonly worth: number;
  readonly first: readonly Way[];
}

/**
 * Sets things in their order on as few pages as can be, none of them torn apart; of the ways to do so it takes
 * the one that is worth most.
 *
 * Takes       for each thing the ways to set it, at least one; the height of a page and the least gap between
 *             two blocks, in mm.
 * Gives       page by page what stands on it; what fits no page stands alone, in its lowest way.
 */
export function fewestPages(
  things: readonly (readonly Way[])[],
  room: number,
  gap: number,
): OnPage[][] {
  const tails: Tail[] = [{ pages: 0, worth: 0, first: [] }];
  // tails[k] begins with the k-th thing from the end.
  for (let from = things.length - 1; from >= 0; from--) {
    const alone: Tail = joined([lowest(things[from]!)], tails.at(-1)!);
    const found = Array.from({ length: Math.min(MOST, things.length - from) }, (_, more) => {
      const first = onePage(things.slice(from, from + more + 1), room, gap);
      return first === null ? alone : joined(first, tails.at(-more - 1)!);
    });
    tails.push(found.reduce((best, one) => (isBetter(one, best) ? one : best)));
  }
  const pages: OnPage[][] = [];
  for (let at = 0; at < things.length; at += pages.at(-1)!.length) {
    const { first } = tails[things.length - at]!;
    pages.push(first.map((way, index) => ({ at: at + index, way })));
  }
  return pages;
}

function joined(first: readonly Way[], rest: Tail): Tail {
  return { pages: rest.pages + 1, worth: rest.worth + worthOf(first), first };
}

function isBetter(one: Tail, other: Tail): boolean {
  return one.pages === other.pages ? one.worth > other.worth : one.pages < other.pages;
}

/** Of the ways in which all things fit in a height the best; null where there is none. */
function onePage(things: readonly (readonly Way[])[], room: number, gap: number): Way[] | null {
  const [own, ...others] = things;
  if (own === undefined) return [];
  const found = own
    .filter(({ height }) => height <= room)
    .flatMap((way) => {
      const rest = onePage(others, room - way.height - gap, gap);
      return rest === null ? [] : [[way, ...rest]];
    });
  if (found.length === 0) return null;
  return found.reduce((best, one) => (worthOf(one) > worthOf(best) ? one : best));
}

function lowest(ways: readonly Way[]): Way {
  return ways.reduce((best, way) => (way.height < best.height ? way : best));
}

function worthOf(ways: readonly Way[]): number {
  return ways.reduce((sum, { worth }) => sum + worth, 0);
}

/** Most that a gap may grow by where a page has room to spare, in mm. */
const AIR = 9;

/** Draws the things of a page from a height on; what room is left gives them air. */
export function setDown(page: readonly OnPage[], top: number, room: number, least: number): Mark[] {
  const taken = page.reduce((sum, { way }) => sum + way.height, 0);
  const spare = (room - taken) / Math.max(1, page.length - 1) - least;
  const gap = least + Math.min(AIR, Math.max(0, spare));
  let y = top;
  return page.map(({ way }): Mark => {
    const mark = { kind: 'group', x: 0, y, marks: way.draw() } as const;
    y += way.height + gap;
    return mark;
  });
}
