import { toMillimetres } from '../lengths/length.ts';
import type { GuideAsk } from './ask.ts';
import { CARD_ROOM, cardMarks } from './card-marks.ts';
import type { Mark } from './drawing.ts';
import { rectangle } from './drawing.ts';
import type { CardFacts, Facts, LayerFacts } from './facts.ts';
import { elementWords } from './element-words.ts';
import type { ElementWords } from './element-words.ts';
import { blocksOn, flow } from './flow.ts';
import { envelopeNamed, scoreSaid } from './fold-words.ts';
import { greetingSaid } from './greeting-words.ts';
import { layerNote, layerSizeSaid } from './layer-words.ts';
import { HAIR, INK, SIZES, SOFT } from './look.ts';
import { BODY, PAGE, badge, paragraph, ruleAcross } from './page.ts';
import type { Block, GuidePage } from './page.ts';
import { capital, cardsSaid, layerOf } from './said.ts';

/** The card's picture and what belongs to the whole card stand left, its layers right. */
const PICTURE = { width: 46, height: 54 } as const;
const STEPS = { x: 49.5, width: PAGE.width - 49.5 } as const;
const PLACE = { top: BODY.top - 4.5, bottom: BODY.bottom + 7 } as const;

/** Where the words of a step begin, beside its number and its swatch, and the size of the first line (11). */
const TEXT = 18;
const MAIN = 3.88;

/** Every card with its picture, why it is so, and its layers in the order of gluing; two a page where they fit. */
export function cardPages(ask: GuideAsk, facts: Facts): GuidePage[] {
  const parts = facts.cards.flatMap((card) =>
    cardBlocks(ask, card).map((block) => ({ block, number: card.number })),
  );
  const blocks = parts.map(({ block }) => block);
  return flow(blocks, PLACE, 3).map((marks) => {
    const here = blocksOn(marks, blocks).map((at) => parts[at]!.number);
    return { name: capital(cardsSaid(here)), marks };
  });
}

/** A card as one block; one with more layers than a page has room for goes on in a second. */
function cardBlocks(ask: GuideAsk, card: CardFacts): Block[] {
  const steps = stepsOf(ask, card);
  const why = paragraph(card.chosen.why, 0, 10.2, PAGE.width, {
    size: SIZES.note,
    colour: SOFT,
  });
  const top = 11 + why.height;
  const first = fitting(steps, PLACE.bottom - PLACE.top - top);
  const rest = steps.slice(first);
  return [
    cardBlock(ask, card, steps.slice(0, first), why),
    ...(rest.length === 0 ? [] : [restBlock(card, rest)]),
  ];
}

/** The layers in the order of gluing; a stamp before its layer is glued, a die cut after all of them. */
function stepsOf(ask: GuideAsk, card: CardFacts): Block[] {
  const elements = elementWords(card.layout, ask.ruler);
  const at = (place: string | null): ElementWords[] =>
    elements.filter(({ before }) => before === place);
  const order = [...card.layers.flatMap((layer) => [...at(layer.layer.id), layer]), ...at(null)];
  return order.map((one, index) =>
    'main' in one ? elementStep(one, index + 1) : layerStep(ask, card, one, index),
  );
}

/** How many steps one under the other fit in a height. */
function fitting(steps: readonly Block[], room: number): number {
  let height = 0;
  const over = steps.findIndex((step) => (height += step.height) > room);
  return over < 0 ? steps.length : over;
}

function cardBlock(ask: GuideAsk, card: CardFacts, steps: readonly Block[], why: Block): Block {
  const top = 11 + why.height;
  const column = stepColumn(steps, top);
  const shown = picture(card);
  const below = top + shown.height + 1;
  const narrow = aside(ask, card, PICTURE.width);
  const wide = aside(ask, card, STEPS.width);
  // Under the layers of a card that has few, under the picture of one that has many.
  const under = Math.max(column.height, below + narrow.height);
  const after = Math.max(column.height + 1 + wide.height, below);
  const words: Mark =
    under <= after
      ? { kind: 'group', x: 0, y: below, marks: narrow.marks }
      : { kind: 'group', x: STEPS.x, y: column.height + 1, marks: wide.marks };
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

function restBlock(card: CardFacts, steps: readonly Block[]): Block {
  const column = stepColumn(steps, 11);
  const name = `Card ${card.number}, continued`;
  return { marks: [...headMarks(card, name), ...column.marks], height: column.height };
}

function headMarks({ number }: CardFacts, text: string): Mark[] {
  return [
    ...badge(String(number), 4.4, 4.4, 4.4),
    { kind: 'words', x: 11, y: 6.3, text, size: SIZES.large, bold: true },
    ruleAcross(0, 9.5, PAGE.width, INK),
  ];
}

/** The layers one under the other, from a height on, and where they end. */
function stepColumn(steps: readonly Block[], top: number): Block {
  const marks: Mark[] = [];
  let y = top;
  for (const step of steps) {
    marks.push({ kind: 'group', x: STEPS.x, y, marks: step.marks });
    y += step.height;
  }
  return { marks, height: y };
}

function picture({ layout, layers }: CardFacts): Block {
  const width = toMillimetres(layout.card.width) + 2 * CARD_ROOM;
  const height = toMillimetres(layout.card.height) + 2 * CARD_ROOM;
  const scale = Math.min(1, PICTURE.width / width, PICTURE.height / height);
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

function layerStep(ask: GuideAsk, card: CardFacts, facts: LayerFacts, index: number): Block {
  const { layer, from, paint } = facts;
  const size = layerSizeSaid(card, layer, ask.ruler);
  const small =
    layer.role === 'base' ? scoreSaid(card.layout, ask.ruler) : layerNote(card, facts, ask.ruler);
  const x = TEXT;
  const main = paragraph(`${layerOf(card.layout, layer.id)}, ${size}`, x, 0, 69, {
    size: MAIN,
    bold: true,
  });
  const source = paragraph(from, x + 71, 0.2, STEPS.width - x - 71, { size: SIZES.note });
  const under = Math.max(main.height, source.height);
  const note = paragraph(small, x, under, STEPS.width - x, { size: SIZES.note });
  const high = Math.max(7.2, under + note.height) + 0.5;
  return {
    marks: [
      ...badge(String(index + 1), 3.4, 3.4, 3.1),
      ...chip(paint, 8.5),
      ...main.marks,
      ...source.marks,
      ...note.marks,
      ruleAcross(0, high - 0.2, STEPS.width),
    ],
    height: high,
  };
}

function elementStep({ main, small }: ElementWords, number: number): Block {
  const x = TEXT;
  const head = paragraph(main, x, 0, STEPS.width - x, { size: MAIN, bold: true });
  const note = paragraph(small, x, head.height, STEPS.width - x, { size: SIZES.note });
  const high = Math.max(7.6, head.height + note.height) + 0.5;
  return {
    marks: [
      ...badge(String(number), 3.4, 3.4, 3.1),
      ...head.marks,
      ...note.marks,
      ruleAcross(0, high - 0.2, STEPS.width),
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
