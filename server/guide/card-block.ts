import { toMillimetres } from '../lengths/length.ts';
import type { GuideAsk } from './ask.ts';
import { CARD_ROOM, cardMarks } from './card-marks.ts';
import type { Extent, Mark } from './drawing.ts';
import { rectangle } from './drawing.ts';
import type { CardFacts, LayerFacts } from './facts.ts';
import { elementWords } from './element-words.ts';
import type { ElementWords } from './element-words.ts';
import type { Way } from './fewest-pages.ts';
import { envelopeNamed, scoreSaid } from './fold-words.ts';
import { greetingSaid } from './greeting-words.ts';
import { layerNote, layerSizeSaid } from './layer-words.ts';
import { HAIR, INK, SIZES, SOFT } from './look.ts';
import { PAGE, badge, paragraph, ruleAcross } from './page.ts';
import type { Block } from './page.ts';
import { layerOf } from './said.ts';

/** The card's picture and what belongs to the whole card stand left, its layers right: the larger, the fewer cards a page. */
const PICTURES: readonly Extent[] = [
  { width: 72, height: 92 },
  { width: 60, height: 76 },
  { width: 46, height: 54 },
];
const APART = 3.5;

/** Where the words of a step begin, beside its number and its swatch, and the size of the first line (11). */
const TEXT = 18;
const MAIN = 3.88;

/** The ways to set a card in a height; of one with more layers than a page has room for, its parts one after the other. */
export function cardWays(ask: GuideAsk, card: CardFacts, room: number): Way[][] {
  const why = paragraph(card.chosen.why, 0, 10.2, PAGE.width, {
    size: SIZES.note,
    colour: SOFT,
  });
  const ways = PICTURES.map((picture): Way => {
    const { marks, height } = cardBlock(
      ask,
      card,
      stepsOf(ask, card, widthBeside(picture)),
      why,
      picture,
    );
    return { height, worth: Math.sqrt(picture.width), draw: () => marks };
  }).filter(({ height }) => height <= room);
  if (ways.length > 0) return [ways];
  const picture = PICTURES.at(-1)!;
  const steps = stepsOf(ask, card, widthBeside(picture));
  const first = fitting(steps, room - 11 - why.height);
  return [
    cardBlock(ask, card, steps.slice(0, first), why, picture),
    ...restBlocks(card, steps.slice(first), PAGE.width - widthBeside(picture), room),
  ].map(({ marks, height }) => [{ height, worth: 0, draw: () => marks }]);
}

function widthBeside({ width }: Extent): number {
  return PAGE.width - width - APART;
}

/** The layers in the order of gluing; a stamp before its layer is glued, a die cut after all of them. */
function stepsOf(ask: GuideAsk, card: CardFacts, width: number): Block[] {
  const elements = elementWords(card.layout, ask.ruler);
  const at = (place: string | null): ElementWords[] =>
    elements.filter(({ before }) => before === place);
  const order = [...card.layers.flatMap((layer) => [...at(layer.layer.id), layer]), ...at(null)];
  return order.map((one, index) =>
    'main' in one ? elementStep(one, index + 1, width) : layerStep(ask, card, one, index, width),
  );
}

/** How many steps one under the other fit in a height. */
function fitting(steps: readonly Block[], room: number): number {
  let height = 0;
  const over = steps.findIndex((step) => (height += step.height) > room);
  return over < 0 ? steps.length : over;
}

function cardBlock(
  ask: GuideAsk,
  card: CardFacts,
  steps: readonly Block[],
  why: Block,
  most: Extent,
): Block {
  const top = 11 + why.height;
  const x = most.width + APART;
  const column = stepColumn(steps, x, top);
  const shown = picture(card, most);
  const below = top + shown.height + 1;
  const narrow = aside(ask, card, most.width);
  const wide = aside(ask, card, widthBeside(most));
  // Under the layers of a card that has few, under the picture of one that has many.
  const under = Math.max(column.height, below + narrow.height);
  const after = Math.max(column.height + 1 + wide.height, below);
  const words: Mark =
    under <= after
      ? { kind: 'group', x: 0, y: below, marks: narrow.marks }
      : { kind: 'group', x, y: column.height + 1, marks: wide.marks };
  return {
    marks: [
      ...headMarks(card, `Card ${card.number}: ${card.layout.name}`),
      { kind: 'group', x: 0, y: top, marks: shown.marks },
      words,
      ...why.marks,
      ...column.marks,
    ],
    height: Math.min(under, after),
  };
}

function restBlocks(card: CardFacts, steps: readonly Block[], x: number, room: number): Block[] {
  if (steps.length === 0) return [];
  const count = Math.max(1, fitting(steps, room - 11));
  const column = stepColumn(steps.slice(0, count), x, 11);
  const name = `Card ${card.number}, continued`;
  const block = { marks: [...headMarks(card, name), ...column.marks], height: column.height };
  return [block, ...restBlocks(card, steps.slice(count), x, room)];
}

function headMarks({ number }: CardFacts, text: string): Mark[] {
  return [
    ...badge(String(number), 4.4, 4.4, 4.4),
    { kind: 'words', x: 11, y: 6.3, text, size: SIZES.large, bold: true },
    ruleAcross(0, 9.5, PAGE.width, INK),
  ];
}

/** The layers one under the other, from a height on, and where they end. */
function stepColumn(steps: readonly Block[], x: number, top: number): Block {
  const marks: Mark[] = [];
  let y = top;
  for (const step of steps) {
    marks.push({ kind: 'group', x, y, marks: step.marks });
    y += step.height;
  }
  return { marks, height: y };
}

function picture({ layout, layers }: CardFacts, most: Extent): Block {
  const width = toMillimetres(layout.card.width) + 2 * CARD_ROOM;
  const height = toMillimetres(layout.card.height) + 2 * CARD_ROOM;
  const scale = Math.min(1, most.width / width, most.height / height);
  const paints = new Map(layers.map(({ layer, paint }) => [layer.id, paint]));
  const marks: Mark[] = [
    {
      kind: 'group',
      x: CARD_ROOM * scale,
      y: CARD_ROOM * scale,
      scale,
      marks: cardMarks(layout, (id) => paints.get(id)!),
    },
  ];
  return { marks, height: scale * height };
}

/** The greeting and the envelope. */
function aside(ask: GuideAsk, card: CardFacts, width: number): Block {
  const marks: Mark[] = [];
  let y = 0;
  for (const text of [greetingSaid(ask, card), envelopeNamed(card.layout)]) {
    if (text === '') continue;
    const block = paragraph(text, 0, y, width, { size: SIZES.note });
    marks.push(...block.marks);
    y += block.height + 1.6;
  }
  return { marks, height: y };
}

function layerStep(
  ask: GuideAsk,
  card: CardFacts,
  facts: LayerFacts,
  index: number,
  width: number,
): Block {
  const { layer, from, paint } = facts;
  const size = layerSizeSaid(card, layer, ask.ruler);
  const small =
    layer.role === 'base' ? scoreSaid(card.layout, ask.ruler) : layerNote(card, facts, ask.ruler);
  const x = TEXT;
  // What it is and how large stands left, what it is cut from right of it.
  const half = 0.575 * (width - x);
  const main = paragraph(`${layerOf(card.layout, layer.id)}, ${size}`, x, 0, half - 2, {
    size: MAIN,
    bold: true,
  });
  const source = paragraph(from, x + half, 0.2, width - x - half, { size: SIZES.note });
  const under = Math.max(main.height, source.height);
  const note = paragraph(small, x, under, width - x, { size: SIZES.note });
  const high = Math.max(7.2, under + note.height) + 0.2;
  return {
    marks: [
      ...badge(String(index + 1), 3.4, 3.4, 3.1),
      ...chip(paint, 8.5),
      ...main.marks,
      ...source.marks,
      ...note.marks,
      ruleAcross(0, high - 0.1, width),
    ],
    height: high,
  };
}

function elementStep({ main, small }: ElementWords, number: number, width: number): Block {
  const x = TEXT;
  const head = paragraph(main, x, 0, width - x, { size: MAIN, bold: true });
  const note = paragraph(small, x, head.height, width - x, { size: SIZES.note });
  const high = Math.max(7.6, head.height + note.height) + 0.2;
  return {
    marks: [
      ...badge(String(number), 3.4, 3.4, 3.1),
      ...head.marks,
      ...note.marks,
      ruleAcross(0, high - 0.1, width),
    ],
    height: high,
  };
}

/** A small swatch of what the layer is cut from. */
function chip(paint: LayerFacts['paint'], x: number): Mark[] {
  const corners = rectangle(0, 0, 8, 7);
  const rim = { kind: 'area', corners, edge: { width: 0.2, colour: HAIR } } as const;
  const face: Mark[] =
    paint.kind === 'colour'
      ? [{ kind: 'area', corners, fill: paint.hex }]
      : [
          {
            kind: 'group',
            x: 0,
            y: 0,
            clip: corners,
            marks: [
              {
                kind: 'picture',
                href: paint.href,
                x: -paint.x * 0.4,
                y: -paint.y * 0.4,
                width: paint.swatch.width * 0.4,
                height: paint.swatch.height * 0.4,
              },
            ],
          },
        ];
  return [{ kind: 'group', x, y: 0, marks: [...face, rim] }];
}
