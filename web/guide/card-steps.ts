import type { Layer, LayoutListing } from '../../server/contract/layouts.ts';
import type { CardToMake } from '../../server/contract/plan-guides.ts';
import { millimetres } from '../lengths/lengths.ts';
import { drawnAt } from '../plan/card-pictures.ts';
import { layoutOf } from '../plan/layout-of.ts';
import type { OnTable } from '../plan/table-of.ts';
import { sentence } from '../words/grammar.ts';
import { guideWords } from '../words/guide.ts';
import { planWords } from '../words/plan.ts';
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
    card.elements.flatMap(({ element, kind, main, small, before }, at) => {
      const box = layout?.elements?.find((one) => one.id === element)?.box;
      const shown = box === undefined ? null : outlined(boxOutline(box));
      return before === place
        ? [{ id: `${id}-extra-${at + 1}`, part: kind, main, small, shown }]
        : [];
    });
  const strip = layout?.layers.find(({ role }) => role === 'greeting');
  const stamp: Unnumbered[] =
    card.greeting === ''
      ? []
      : [
          {
            id: `${id}-stamp`,
            part: 'stamp',
            main: guideWords.stamp,
            small: card.greeting,
            shown: strip === undefined ? null : outlined(outlineOf(strip)),
          },
        ];
  const acts = [
    ...card.layers.flatMap((layer, at) => [
      ...extras(layer.layer),
      ...(layer.layer === strip?.id ? stamp : []),
      layerAct(card, layer, `${id}-${at + 1}`, layout),
    ]),
    ...(strip === undefined ? stamp : []),
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
    part: 'layer',
    main: guideWords.layer(sentence(name), size, from),
    small: [base ? card.base : '', note].filter((text) => text !== '').join(' '),
    shown: base ? baseShown(card) : drawn ? outlined(outlineOf(drawn)) : null,
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

function outlined(outline: Spot[]): Shown {
  return { kind: 'layer', outline };
}

/** The outline of a layer on the drawn card, in mm; of a round one or a notched one its box. */
function outlineOf({ box, shape }: Layer): Spot[] {
  if (shape.kind !== 'corners') return boxOutline(box);
  const [left, top] = [inMillimetres(box.x), inMillimetres(box.y)];
  return shape.points.map(({ x, y }) => ({
    x: ROOM + left + inMillimetres(x),
    y: ROOM + top + inMillimetres(y),
  }));
}

function boxOutline(box: Layer['box']): Spot[] {
  const [left, top] = [ROOM + inMillimetres(box.x), ROOM + inMillimetres(box.y)];
  const [right, low] = [left + inMillimetres(box.width), top + inMillimetres(box.height)];
  return [
    { x: left, y: top },
    { x: right, y: top },
    { x: right, y: low },
    { x: left, y: low },
  ];
}

function inMillimetres(text: string): number {
  return millimetres(text) ?? 0;
}
