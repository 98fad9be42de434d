import type { Layer } from '../layouts/layout.ts';
import { linkWorth } from './card-score.ts';
import type { Shown } from './card-score.ts';
import type { CardModel } from './card-model.ts';
import { readable } from './coordination/greeting.ts';
import type { LookBook } from './look-book.ts';
import { constantFactor, merged } from './network/factor.ts';
import type { Factor } from './network/factor.ts';

/** The card's score as a sum of functions over the options of its parts. */
export function factorsOf(card: CardModel, book: LookBook): Factor[] {
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
