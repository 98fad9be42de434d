import type { Layer } from '../layouts/layout.ts';
import type { Shown } from './card-score.ts';
import type { JudgedLink } from './card-score.ts';
import type { ColourTable } from './coordination/look.ts';
import { termsOf } from './coordination/pair-score.ts';
import { readable } from './coordination/greeting.ts';
import { phrases } from './coordination/words.ts';
import type { CardLinks } from './links.ts';
import type { Reason, Taste } from './plan.ts';
import { SAME_PAPER } from './weights.ts';

/** The reasons of a chosen card, one for each pair of layers that was judged, the weightiest first. */
export function reasonsOf(
  card: CardLinks,
  judged: readonly JudgedLink[],
  layers: readonly Layer[],
  shown: (layer: Layer) => Shown,
  table: ColourTable,
  taste: Taste,
): Reason[] {
  const called = callingOf(layers);
  const pairs = [...judged]
    .sort((x, y) => y.link.weight - x.link.weight)
    .map(({ link, worth }): Reason => {
      const [a, b] = [shown(link.a), shown(link.b)];
      const names = { a: called(link.a), b: called(link.b) };
      const said = [
        ...(a.side !== null && a.side === b.side && worth === SAME_PAPER
          ? ['one paper twice, where two are asked for']
          : phrases(
              a.look,
              b.look,
              table,
              termsOf(a.look, b.look, table, taste, link.touching),
              names,
            )),
        ...[link.a, link.b].flatMap((layer) => cautions(layer, shown(layer), called)),
      ];
      return {
        layers: [link.a.id, link.b.id],
        text: `${sentence(names.a)} and ${names.b}: ${said.join('; ')}.`,
        score: worth,
      };
    });
  return [...pairs, ...greetingReasons(card, shown, called)];
}

function cautions(layer: Layer, shown: Shown, called: (layer: Layer) => string): string[] {
  return shown.lying ? [`the print of ${called(layer)} has to lie on its side`] : [];
}

function greetingReasons(
  card: CardLinks,
  shown: (layer: Layer) => Shown,
  called: (layer: Layer) => string,
): Reason[] {
  return card.greetings.map(({ layer }) => {
    const score = readable(shown(layer).look);
    const text =
      score >= 0.7
        ? 'is light and calm enough for a dark greeting'
        : score >= 0.35
          ? 'carries a greeting only in bold letters and dark ink'
          : 'is too dark or too busy to read a greeting on';
    return { layers: [layer.id], text: `${sentence(called(layer))} ${text}.`, score };
  });
}

/** 'the panel', or the layer's own name where a card has two of a kind. */
function callingOf(layers: readonly Layer[]): (layer: Layer) => string {
  return (layer) => {
    const single = layers.filter(({ role }) => role === layer.role).length === 1;
    return `the ${single ? layer.role : layer.id.replaceAll(/[-_]+/g, ' ')}`;
  };
}

function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
