import { layerNames } from '../layouts/layer-names.ts';
import type { Layer } from '../layouts/layout.ts';
import type { JudgedLink, Shown } from './card-score.ts';
import { readable } from './coordination/greeting.ts';
import type { ColourTable } from './coordination/look.ts';
import { termsOf } from './coordination/pair-score.ts';
import { sentence, statements } from './coordination/statements.ts';
import type { Statement } from './coordination/statements.ts';
import type { CardLinks } from './links.ts';
import type { Reason, Taste } from './plan.ts';

/** What a reason needs to know of a chosen card. */
export interface Chosen {
  readonly links: CardLinks;
  readonly judged: readonly JudgedLink[];
  readonly layers: readonly Layer[];
  readonly shown: (layer: Layer) => Shown;
  /** Layers whose paper she has chosen herself. */
  readonly pinned: readonly string[];
  readonly table: ColourTable;
  readonly taste: Taste;
}

/** Below this the weak point of a pair is what there is to say in short. */
export const WEAK = 0.6;

/** The reasons of a chosen card, the worst first: its borders, its greetings, its prints with an up. */
export function reasonsOf(card: Chosen): Reason[] {
  const called = callingOf(card.layers);
  return [
    ...card.judged.map((judged) => reasonOf(card, judged, called)),
    ...greetingReasons(card, called),
    ...upReasons(card, called),
  ].sort((a, b) => a.score - b.score);
}

function reasonOf(
  card: Chosen,
  { link, worth }: JudgedLink,
  called: (layer: Layer) => string,
): Reason {
  const said = statementsOn(card, { link, worth }, called);
  return {
    layers: [link.a.id, link.b.id],
    text: inOrder(said, worth)
      .map(({ text }) => text)
      .join(' '),
    short: weightiest(said, worth).short,
    score: worth,
  };
}

/** What is to be said of two layers; never nothing. */
export function statementsOn(
  { shown, table, taste }: Pick<Chosen, 'shown' | 'table' | 'taste'>,
  { link }: JudgedLink,
  called: (layer: Layer) => string,
): Statement[] {
  const [a, b] = [shown(link.a), shown(link.b)];
  const names = { a: called(link.a), b: called(link.b) };
  if (a.side !== null && a.side === b.side)
    return [against('One paper lies here twice, where the layout asks for two.')];
  const terms = termsOf(a.look, b.look, table, taste, link.touching);
  return [
    ...[link.a, link.b]
      .filter((layer) => shown(layer).lying)
      .map((layer) => against(`The print of ${called(layer)} lies on its side.`)),
    ...statements(a.look, b.look, table, terms, names),
    ...toBuy([link.a, link.b].filter((layer) => shown(layer).wanted).map(called)),
  ];
}

/** What speaks against two layers comes first of a weak pair, and last of a good one. */
function inOrder(said: readonly Statement[], worth: number): readonly Statement[] {
  if (worth < WEAK) return said;
  return [...said.filter((one) => one.good), ...said.filter((one) => !one.good)];
}

/** The statement that counts: of a weak pair what is against it, of a good one what is for it. */
export function weightiest(said: readonly Statement[], worth: number): Statement {
  return said.find(({ good }) => good === worth >= WEAK) ?? said[0]!;
}

/** What has to be bought is said last: it takes a little off, and the notes of the plan list it. */
function toBuy(names: readonly string[]): Statement[] {
  return names.length === 0
    ? []
    : [against(`Cardstock for ${names.join(' and ')} is still to be bought.`)];
}

function against(text: string): Statement {
  return { good: false, much: 1, text, short: text };
}

function greetingReasons({ links, shown }: Chosen, called: (layer: Layer) => string): Reason[] {
  return links.greetings.map(({ layer }) => {
    const score = readable(shown(layer).look);
    const [long, short] =
      score >= 0.7
        ? ['is light and calm enough to be read in dark ink', 'is easy to read']
        : score >= 0.35
          ? ['can be read only in bold letters and dark ink', 'takes bold letters only']
          : ['is too dark or too busy to be read', 'is hard to read'];
    const name = sentence(called(layer));
    return { layers: [layer.id], text: `${name} ${long}.`, short: `${name} ${short}.`, score };
  });
}

/** Of every print with an up: whether it stands, why it does not, and that a photo may have been misread. */
function upReasons({ layers, shown, pinned }: Chosen, called: (layer: Layer) => string): Reason[] {
  return layers.flatMap((layer): Reason[] => {
    const { lying, up } = shown(layer);
    if (!up) return [];
    const name = called(layer);
    if (!lying)
      return [
        {
          layers: [layer.id],
          text: `The print of ${name} has an up and stands upright. If the picture shows it otherwise, its up was misread in the photo: choose another paper there.`,
          short: `The print of ${name} stands upright.`,
          score: 1,
        },
      ];
    const why = pinned.includes(layer.id)
      ? 'you chose this paper for it, and its piece is cut the other way'
      : 'its piece is cut the other way, and no sheet that stands there was left';
    return [
      {
        layers: [layer.id],
        text: `The print of ${name} has to lie on its side: ${why}. Choose another paper there, or allow more sheets. If the picture shows it upright, its up was misread in the photo.`,
        short: `The print of ${name} lies on its side.`,
        score: 0,
      },
    ];
  });
}

/** 'the panel': as the layer is called wherever else the card is spoken of. */
function callingOf(layers: readonly Layer[]): (layer: Layer) => string {
  // The base is as large as the card.
  const names = layerNames(layers, layers[0]!.box);
  return ({ id }) => `the ${names.get(id)!}`;
}
