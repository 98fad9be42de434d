import { formatLength, formatSize } from '../lengths/format-length.ts';
import type { Length, Ruler, Size } from '../lengths/length.ts';
import type { Piece } from '../cutting/piece.ts';
import { inWords, layerNames } from '../layouts/layer-names.ts';
import type { Layout } from '../layouts/layout.ts';
import { stepOf } from '../lengths/ruler.ts';

/** A length as she reads it off her ruler: to its nearest mark, which `roundingNote` tells of. */
export function lengthSaid(length: Length, ruler: Ruler): string {
  const least = length > 0 && 2 * length < stepOf(ruler);
  return least ? `less than ${formatLength(stepOf(ruler), ruler)}` : formatLength(length, ruler);
}

/** A size likewise. */
export function sizeSaid(size: Size, ruler: Ruler): string {
  return formatSize(size, ruler);
}

/** What the layer of a piece is called: 'left flap'. */
export function pieceSaid({ layer, called }: Pick<Piece, 'layer' | 'called'>): string {
  return called ?? inWords(layer);
}

/** What a layer of a card is called. */
export function layerOf({ layers, card }: Pick<Layout, 'layers' | 'card'>, id: string): string {
  return layerNames(layers, card).get(id) ?? inWords(id);
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

/** 'Sheet 2', 'Sheets 2, 7 and 9'; where she has named one, 'Sheet 2 and Anchors'. */
export function labelsSaid(labels: readonly string[]): string {
  const numbers = labels.map((label) => /^Sheet (\d.*)$/.exec(label)?.[1]);
  const plain = numbers.filter((number) => number !== undefined);
  return labels.length > 1 && plain.length === labels.length
    ? `Sheets ${listed(plain)}`
    : listed(labels);
}

/** '1 sheet', '3 sheets'. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** With its first letter large. */
export function capital(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}
