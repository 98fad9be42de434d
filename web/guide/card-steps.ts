import type { Layer, LayoutListing } from '../../server/contract/layouts.ts';
import type { CardToMake } from '../../server/contract/plan-guides.ts';
import { millimetres } from '../lengths/lengths.ts';
import { drawnAt } from '../plan/card-image.tsx';
import { layoutOf } from '../plan/layout-of.ts';
import type { OnTable } from '../plan/table-of.ts';
import { guideWords } from '../words/guide.ts';
import { planWords } from '../words/plan.ts';
import { words } from '../words/words.ts';
import type { Act, Picture, Shown, Spot, Step } from './step.ts';

/** Room around the drawn card for its shadow, in mm. */
const ROOM = 2;

/** A card: its base with the scores, then its layers in the order of gluing with what is stamped on them. */
export function cardStep(card: CardToMake, table: OnTable, people: number): Step {
  const id = `card-${card.number}`;
  const planned = table.plan.cards.find(({ number }) => number === card.number)!;
  const layout = layoutOf(table, planned);
  const lines = [card.why, ...(people === 1 ? [] : [guideWords.makeTimes(people)]), card.post];
  return {
    id,
    kind: 'card',
    title: guideWords.make(card.number, card.name),
    picture: pictureOf(drawnAt(planned), card.number, layout),
    lines: lines.filter((line) => line !== ''),
    acts: actsOf(card, id, layout),
    stacks: [],
  };
}

/** The acts in the order of the hands: what is stamped on a layer before that layer is glued. */
function actsOf(card: CardToMake, id: string, layout: LayoutListing | undefined): Act[] {
  const extras = (place: string | null): Unnumbered[] =>
    card.elements.flatMap(({ main, small, before }, at) =>
      before === place ? [{ id: `${id}-extra-${at + 1}`, main, small, shown: null }] : [],
    );
  const strip = layout?.layers.find(({ role }) => role === 'greeting')?.id ?? null;
  const stamp: Unnumbered[] =
    card.greeting === ''
      ? []
      : [{ id: `${id}-stamp`, main: guideWords.stamp, small: card.greeting, shown: null }];
  const acts = [
    ...card.layers.flatMap((layer, at) => [
      ...extras(layer.layer),
      ...(layer.layer === strip ? stamp : []),
      layerAct(card, layer, `${id}-${at + 1}`, layout),
    ]),
    ...(strip === null ? stamp : []),
    ...extras(null),
  ];
  return acts.map((act, at) => ({ ...act, number: at + 1 }));
}

type Unnumbered = Omit<Act, 'number'>;

function layerAct(
  card: CardToMake,
  { number, layer, name, size, from, note }: CardToMake['layers'][number],
  id: string,
  layout: LayoutListing | undefined,
): Unnumbered {
  const drawn = layout?.layers.find((one) => one.id === layer);
  const base = number === 1;
  return {
    id,
    main: guideWords.layer(words.layerName(name), size, from),
    small: [base ? card.base : '', note].filter((text) => text !== '').join(' '),
    shown: base ? baseShown(card) : drawn ? { kind: 'layer', outline: outlineOf(drawn) } : null,
  };
}

function baseShown({ scores, layers }: CardToMake): Shown {
  const { flat, from, places, at } = scores;
  const lines = places.map((place, index) => ({ at: place, said: at[index]! }));
  return { kind: 'base', hex: layers[0]?.hex ?? null, flat, from, scores: lines };
}

function pictureOf(src: string, number: number, layout: LayoutListing | undefined): Picture {
  const [width, height] = [layout?.card.width, layout?.card.height].map(
    (side) => (millimetres(side ?? '') ?? 100) + 2 * ROOM,
  );
  return { src, alt: planWords.card(number), width: width!, height: height! };
}

/** The outline of a layer on the drawn card, in mm; of a round one or a notched one its box. */
function outlineOf({ box, shape }: Layer): Spot[] {
  const at = (text: string): number => millimetres(text) ?? 0;
  const [x, y, width, height] = [box.x, box.y, box.width, box.height].map(at) as [
    number,
    number,
    number,
    number,
  ];
  const corners =
    shape.kind === 'corners'
      ? shape.points.map((point) => ({ x: at(point.x), y: at(point.y) }))
      : [
          { x: 0, y: 0 },
          { x: width, y: 0 },
          { x: width, y: height },
          { x: 0, y: height },
        ];
  return corners.map((spot) => ({ x: ROOM + x + spot.x, y: ROOM + y + spot.y }));
}
