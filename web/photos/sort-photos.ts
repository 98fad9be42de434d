import type { Face } from './tablefuls.ts';

/** What is known of a photo before it is read. */
export interface Chosen {
  readonly name: string;
  /** When it was taken, as far as the file tells: milliseconds since 1970. */
  readonly lastModified: number;
}

/** By what a handful of photos was sorted. */
export type SortedBy = 'names' | 'taken' | 'chosen';

/** A photo in its turn; `face` and `stem` are what its name says of it. */
export interface InTurn<T> {
  readonly photo: T;
  readonly face: Face | null;
  /** The name without the word for the face: equal for the two photos of one tableful. */
  readonly stem: string;
}

const WHOLE = /(?<![a-z])(front|back)s?(?![a-z])/gi;
const LETTER = /[-_ ](f|b)$/i;

/**
 * Puts photos that were chosen together in the order in which they belong. The words front and back in their
 * names tell most; else the times at which they were taken, if these differ; else the order of choosing.
 * The letters f and b at the end of a name are taken for words only where both are there: one alone may count tables.
 */
export function sortPhotos<T extends Chosen>(
  photos: readonly T[],
): { readonly inTurn: readonly InTurn<T>[]; readonly by: SortedBy } {
  const ends = new Set(photos.map(({ name }) => LETTER.exec(bare(name))?.[1]?.toLowerCase()));
  const letters = ends.has('f') && ends.has('b');
  const timed = new Set(photos.map(({ lastModified }) => lastModified)).size > 1;
  const ordered = timed ? [...photos].sort((a, b) => a.lastModified - b.lastModified) : photos;
  const read = ordered.map((photo) => ({ photo, ...nameOf(photo.name, letters) }));
  if (read.length > 0 && read.every(({ face }) => face !== null))
    return { inTurn: byTable(read), by: 'names' };
  return { inTurn: read, by: timed ? 'taken' : 'chosen' };
}

/** Photos of one tableful one after the other, its front first. */
function byTable<T>(read: readonly InTurn<T>[]): InTurn<T>[] {
  const stems = [...new Set(read.map(({ stem }) => stem))];
  return stems.flatMap((stem) => {
    const mine = read.filter((one) => one.stem === stem);
    return [
      ...mine.filter(({ face }) => face === 'front'),
      ...mine.filter(({ face }) => face === 'back'),
    ];
  });
}

function nameOf(name: string, letters: boolean): { face: Face | null; stem: string } {
  const text = bare(name);
  const said = new Set([...text.matchAll(WHOLE)].map((found) => found[1]!.toLowerCase()));
  if (said.size === 1) {
    const face: Face = said.has('front') ? 'front' : 'back';
    return { face, stem: text.replaceAll(WHOLE, '*').toLowerCase() };
  }
  const letter = letters ? LETTER.exec(text)?.[1]?.toLowerCase() : undefined;
  if (letter === undefined) return { face: null, stem: text };
  return { face: letter === 'f' ? 'front' : 'back', stem: text.replace(LETTER, '*').toLowerCase() };
}

function bare(name: string): string {
  return name.replace(/\.[^.]*$/, '');
}
