import { smallSwatch } from '../images/small-swatch.ts';
import type { Files } from '../store/files.ts';
import { Lately } from '../recall/lately.ts';

/** Gives a swatch at a width; those asked for last are at hand. */
export type SmallSwatches = (hash: string, width: number) => Promise<Uint8Array>;

/** A pad of 24 sheets at three widths; each takes some ten to forty kB. */
const AT_HAND = 150;

/** Swatches as small as a screen wants them, made once and shared by all who ask. */
export function smallSwatches(files: Pick<Files, 'read'>): SmallSwatches {
  const made = new Lately<string, Promise<Uint8Array>>(AT_HAND);
  return (hash, width) => {
    const key = `${hash} ${width}`;
    const known = made.at(key) ?? files.read('swatches', hash).then((b) => smallSwatch(b, width));
    made.put(key, known);
    known.catch(() => made.drop(key));
    return known;
  };
}
