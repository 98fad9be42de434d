import { smallSwatch } from '../images/small-swatch.ts';
import type { Files } from '../store/files.ts';

/** Gives a swatch at a width; those asked for last are at hand. */
export type SmallSwatches = (hash: string, width: number) => Promise<Uint8Array>;

/** A pad of 24 sheets at three widths; each takes some ten to forty kB. */
const AT_HAND = 150;

/** Swatches as small as a screen wants them, made once and shared by all who ask. */
export function smallSwatches(files: Pick<Files, 'read'>): SmallSwatches {
  const made = new Map<string, Promise<Uint8Array>>();
  return (hash, width) => {
    const key = `${hash} ${width}`;
    const known = made.get(key) ?? files.read('swatches', hash).then((b) => smallSwatch(b, width));
    made.delete(key);
    made.set(key, known);
    const [oldest] = made.keys();
    if (made.size > AT_HAND) made.delete(oldest!);
    known.catch(() => made.delete(key));
    return known;
  };
}
