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

/** A card: its base with the scores, then its layers in the order of gluing, then what is stamped. */
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
    acts: [
      ...card.layers.map((layer, at) => layerAct(card, layer, `${id}-${at + 1}`, layout)),
      ...card.elements.map((element, at): Act => ({
        ...element,
        id: `${id}-extra-${at + 1}`,
        number: card.layers.length + at + 1,
        shown: null,
      })),
      ...stampAct(card, `${id}-stamp`),
    ],
    stacks: [],
  };
}

function layerAct(
  card: CardToMake,
  { number, layer, name, size, from, note }: CardToMake['layers'][number],
  id: string,
  layout: LayoutListing | undefined,
): Act {
  const drawn = layout?.layers.find((one) => one.id === layer);
  const base = number === 1;
  return {
    id,
    number,
    main: guideWords.layer(words.layerName(name), size, from),
    small: [base ? card.base : '', note].filter((text) => text !== '').join(' '),
    shown: base ? baseShown(card) : drawn ? { kind: 'layer', outline: outlineOf(drawn) } : null,
  };
}

function stampAct({ greeting, layers, elements }: CardToMake, id: string): Act[] {
  if (greeting === '') return [];
  const act = {
    id,
    number: layers.length + elements.length + 1,
    main: guideWords.stamp,
    small: greeting,
  };
  return [{ ...act, shown: null }];
}

function baseShown({ scores }: CardToMake): Shown {
  const { flat, from, places, at } = scores;
  const lines = places.map((place, index) => ({ at: place, said: at[index]! }));
  return { kind: 'base', flat, from, scores: lines };
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
