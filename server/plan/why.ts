import type { JudgedLink, Shown } from './card-score.ts';
import type { Layer } from '../layouts/layout.ts';
import type { ColourTable } from './coordination/look.ts';
import { termsOf } from './coordination/pair-score.ts';
import { phrases, words } from './coordination/words.ts';
import type { Taste } from './plan.ts';

/** One sentence why a card is as it is: what ties its papers together, and what the cardstock does. */
export function whyOf(
  judged: readonly JudgedLink[],
  layers: readonly Layer[],
  shown: (layer: Layer) => Shown,
  label: (side: string) => string,
  table: ColourTable,
  taste: Taste,
): string {
  const clauses = [
    papersClause(judged, shown, label, table, taste),
    stockClause(judged, layers, shown, table, taste),
  ].filter((clause) => clause !== '');
  if (clauses.length === 0) return 'A plain card with nothing to match.';
  const text = clauses.join('; ');
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}

function papersClause(
  judged: readonly JudgedLink[],
  shown: (layer: Layer) => Shown,
  label: (side: string) => string,
  table: ColourTable,
  taste: Taste,
): string {
  const papers = judged.filter(
    ({ link }) => shown(link.a).side !== null && shown(link.b).side !== null,
  );
  const best = heaviest(papers);
  if (best === undefined) return '';
  const [a, b] = [shown(best.link.a), shown(best.link.b)];
  const names = { a: label(a.side!), b: label(b.side!) };
  const terms = termsOf(a.look, b.look, table, taste, best.link.touching);
  return `${names.a} and ${names.b} ${verbs(phrases(a.look, b.look, table, terms, names))}`;
}

function stockClause(
  judged: readonly JudgedLink[],
  layers: readonly Layer[],
  shown: (layer: Layer) => Shown,
  table: ColourTable,
  taste: Taste,
): string {
  const mixed = judged.filter(
    ({ link }) => (shown(link.a).side === null) !== (shown(link.b).side === null),
  );
  const best = heaviest(mixed);
  if (best === undefined) return '';
  const { a, b } = best.link;
  const stock = shown(a).side === null ? a : b;
  const colour = words(shown(stock).look.ground.lab);
  const terms = termsOf(shown(a).look, shown(b).look, table, taste, true);
  const first = phrases(shown(a).look, shown(b).look, table, terms, { a: 'the paper', b: 'it' })[0];
  const role = layers.find(({ id }) => id === stock.id)!.role;
  return `the ${colour} ${role} ${stockDoes(first)}`;
}

function stockDoes(phrase = ''): string {
  if (phrase.startsWith('picks up')) return phrase;
  if (phrase.startsWith('tones')) return `lies in ${phrase} beside the paper`;
  return 'sets the paper off';
}

function heaviest(judged: readonly JudgedLink[]): JudgedLink | undefined {
  return judged.reduce<JudgedLink | undefined>(
    (best, one) =>
      best === undefined || one.link.weight * one.worth > best.link.weight * best.worth
        ? one
        : best,
    undefined,
  );
}

/** The first two phrases as the rest of a sentence about two papers. */
function verbs(said: readonly string[]): string {
  const [first = 'go together', second] = said;
  const start = first.startsWith('share')
    ? first
    : first.startsWith('tones')
      ? `are ${first}`
      : `have ${first}`;
  return second === undefined ? start : `${start}, ${second}`;
}
