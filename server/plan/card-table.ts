import { linkWorth } from './card-score.ts';
import type { Shown } from './card-score.ts';
import type { CardModel, Part } from './card-model.ts';
import { readable } from './coordination/greeting.ts';
import type { Layer } from '../layouts/layout.ts';
import type { LookBook } from './look-book.ts';
import { decode, maximiseOut } from './network/eliminate.ts';
import type { Bucket } from './network/eliminate.ts';
import { constantFactor, merged, valueAt } from './network/factor.ts';
import type { Factor } from './network/factor.ts';
import { overDesigns } from './over-designs.ts';

/**
 * What a card scores for every choice of designs in its slots, with sides and cardstock at their best,
 * and how to find these again.
 */
export interface CardTable {
  /** Over slot numbers and designs. */
  readonly factor: Factor;
  /** Number of the option of each part when the slots are cut from these designs. */
  best(designs: readonly number[]): number[];
}

/** Maximises cardstock and sides out exactly. */
export function tableOf(card: CardModel, book: LookBook, designs: number): CardTable {
  const whole = factorsOf(card, book);
  const stock = card.parts.flatMap((part, at) => (part.slot === null ? [at] : []));
  const papers = card.parts.flatMap((part, at) => (part.slot === null ? [] : [at]));
  const { factors, buckets } = maximiseOut(whole, stock, (at) => card.parts[at]!.options.length);
  return {
    factor: overDesigns(card.parts, papers, factors, designs),
    best: (choice) => bestOptions(card.parts, papers, factors, buckets, choice),
  };
}

/** The card's score as a sum of functions over its parts. */
function factorsOf(card: CardModel, book: LookBook): Factor[] {
  const { parts, links } = card;
  const total = links.total === 0 ? 1 : links.total;
  const partOf = new Map<string, number>();
  parts.forEach((part, at) => part.layers.forEach((layer) => partOf.set(layer.id, at)));
  const shown = new Map<string, Shown[]>();
  const shows = (layer: Layer): Shown[] => {
    const known = shown.get(layer.id);
    if (known !== undefined) return known;
    const part = parts[partOf.get(layer.id)!]!;
    const made = part.options.map((option) => book.shown(option, layer, part.pieces));
    shown.set(layer.id, made);
    return made;
  };
  const factors: Factor[] = links.links.map((link) => {
    const turned = partOf.get(link.a.id)! > partOf.get(link.b.id)!;
    const [first, second] = turned ? [link.b, link.a] : [link.a, link.b];
    const rows = shows(first);
    const columns = shows(second);
    const factor = constantFactor(
      [partOf.get(first.id)!, partOf.get(second.id)!],
      [rows.length, columns.length],
    );
    let cell = 0;
    for (const one of rows) {
      for (const other of columns) {
        const score = book.score(one.look, other.look, link.touching);
        factor.data[cell++] = (link.weight / total) * linkWorth(one, other, score);
      }
    }
    return factor;
  });
  for (const { layer, weight } of links.greetings) {
    const row = shows(layer);
    const factor = constantFactor([partOf.get(layer.id)!], [row.length]);
    row.forEach((one, at) => (factor.data[at] = (weight / total) * readable(one.look)));
    factors.push(factor);
  }
  if (links.total === 0) factors.push({ scope: [], sizes: [], data: Float64Array.of(1) });
  return merged(factors);
}

/** The best sides for given designs, by trying all; then the cardstock, backwards through the buckets. */
function bestOptions(
  parts: readonly Part[],
  papers: readonly number[],
  factors: readonly Factor[],
  buckets: readonly Bucket[],
  designs: readonly number[],
): number[] {
  const choice = parts.map(() => 0);
  let best = [...choice];
  let most = -Infinity;
  const tryOut = (at: number): void => {
    if (at === papers.length) {
      const sum = factors.reduce((total, factor) => total + valueAt(factor, choice), 0);
      if (sum > most) {
        most = sum;
        best = [...choice];
      }
      return;
    }
    const part = parts[papers[at]!]!;
    part.options.forEach((option, number) => {
      if (option.kind !== 'paper' || option.design !== designs[part.slot!]) return;
      choice[papers[at]!] = number;
      tryOut(at + 1);
    });
  };
  tryOut(0);
  decode(buckets, best);
  return best;
}
