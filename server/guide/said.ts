import { formatLength, formatSize } from '../lengths/format-length.ts';
import type { Length, Ruler, Size } from '../lengths/length.ts';
import { isOnRuler } from '../lengths/ruler.ts';

/**
 * A length as she reads it off her ruler. One that her ruler has no mark for is said on the other ruler
 * when that has one, so that nothing is rounded in silence; else to the nearest mark, with 'about'.
 */
export function lengthSaid(length: Length, ruler: Ruler): string {
  const fitting = rulerFor([length], ruler);
  return fitting === null ? `about ${formatLength(length, ruler)}` : formatLength(length, fitting);
}

/** A size likewise, both lengths on one ruler. */
export function sizeSaid(size: Size, ruler: Ruler): string {
  const fitting = rulerFor([size.width, size.height], ruler);
  return fitting === null ? `about ${formatSize(size, ruler)}` : formatSize(size, fitting);
}

function rulerFor(lengths: readonly Length[], ruler: Ruler): Ruler | null {
  const other = ruler === 'in' ? 'mm' : 'in';
  return (
    [ruler, other].find((one): one is Ruler =>
      lengths.every((length) => isOnRuler(length, one as Ruler)),
    ) ?? null
  );
}

/** A layer's id as a word: `left-flap` is 'left flap'. */
export function layerSaid(id: string): string {
  return id.replaceAll('-', ' ');
}

/** 'card 3', 'cards 3, 4 and 7'. */
export function cardsSaid(numbers: readonly number[]): string {
  return `${numbers.length === 1 ? 'card' : 'cards'} ${listed(numbers.map(String))}`;
}

/** 'a', 'a and b', 'a, b and c'. */
export function listed(words: readonly string[]): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} and ${words.at(-1)!}`;
}

/** '1 sheet', '3 sheets'. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** With its first letter large. */
export function capital(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}
