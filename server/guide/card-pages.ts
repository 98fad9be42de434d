import { toMillimetres } from '../lengths/length.ts';
import type { GuideAsk } from './ask.ts';
import { CARD_ROOM, cardMarks } from './card-marks.ts';
import type { Mark } from './drawing.ts';
import type { CardFacts, Facts, LayerFacts } from './facts.ts';
import { envelopeSaid, foldSaid } from './fold-words.ts';
import { greetingSaid } from './greeting-words.ts';
import { chapter, flow } from './flow.ts';
import { layerNote, layerSizeSaid } from './layer-words.ts';
import { HAIR, SIZES, SOFT } from './look.ts';
import { BODY, PAGE, badge, noteBox, paragraph, ruleAcross } from './page.ts';
import type { Block, GuidePage } from './page.ts';
import { layerSaid } from './said.ts';

const PICTURE = { width: 74, height: 84 } as const;
const TEXT = { x: 82, width: PAGE.width - 82 } as const;
const CAUTION =
  'Dry everything on the card before you glue. Hot glue, heat tools and embossing powders burn and smoke: keep to the maker’s instructions and your local rules, and keep children and pets away.';

/** A page a card: its picture, why it is so, and its layers in the order of gluing. */
export function cardPages(ask: GuideAsk, facts: Facts): GuidePage[] {
  return facts.cards.flatMap((card) => cardPage(ask, card));
}

function cardPage(ask: GuideAsk, card: CardFacts): GuidePage[] {
  const aside = besidePicture(ask, card);
  const steps = card.layers.map((layer, index) => layerStep(ask, card, layer, index));
  const top = BODY.top + Math.max(PICTURE.height, aside.height) + 6;
  const pages = flow(steps, { top, again: BODY.top, bottom: BODY.bottom - 14 });
  pages[0]!.push(
    { kind: 'group', x: 0, y: BODY.top, marks: picture(card) },
    { kind: 'group', x: TEXT.x, y: BODY.top - 2, marks: aside.marks },
  );
  pages.at(-1)!.push(...noteBox(CAUTION, 0, 231, PAGE.width).marks);
  return chapter(`Card ${card.number}: ${card.layout.name}`, pages);
}

function picture({ layout, layers }: CardFacts): Mark[] {
  const scale = Math.min(
    1,
    PICTURE.width / (toMillimetres(layout.card.width) + 2 * CARD_ROOM),
    PICTURE.height / (toMillimetres(layout.card.height) + 2 * CARD_ROOM),
  );
  const paints = new Map(layers.map(({ layer, paint }) => [layer.id, paint]));
  return [
    {
      kind: 'group',
      x: CARD_ROOM * scale,
      y: CARD_ROOM * scale,
      scale,
      marks: cardMarks(layout, (id) => paints.get(id)!),
    },
    ...(scale < 1
      ? [
          {
            kind: 'words' as const,
            x: 0,
            y: PICTURE.height + 3.4,
            text: 'Drawn smaller than life.',
            size: SIZES.small,
            colour: SOFT,
          },
        ]
      : []),
  ];
}

/** Why the card is so, its base and fold, the greeting, the envelope. */
function besidePicture(ask: GuideAsk, card: CardFacts): Block {
  const parts: readonly (readonly [string, string])[] = [
    ['Why', card.chosen.why],
    ['Base', foldSaid(card.layout, ask.ruler)],
    ['Greeting', greetingSaid(ask, card)],
    ['Post', envelopeSaid(card.layout)],
  ];
  const marks: Mark[] = [];
  let y = 0;
  for (const [head, text] of parts) {
    if (text === '') continue;
    marks.push({ kind: 'words', x: 0, y: y + 3, text: head, size: SIZES.small, colour: SOFT });
    const block = paragraph(text, 0, y + 4.2, TEXT.width);
    marks.push(...block.marks);
    y += 4.2 + block.height + 2.4;
  }
  return { marks, height: y };
}

function layerStep(ask: GuideAsk, card: CardFacts, facts: LayerFacts, index: number): Block {
  const { layer, from, paint } = facts;
  const size = layerSizeSaid(card, layer, ask.ruler);
  const small = layerNote(card, facts, ask.ruler);
  const x = 22;
  const main = paragraph(`${layerSaid(layer.id)}, ${size}`, x, 0, 92, { bold: true });
  const source = paragraph(from, x + 96, 0, PAGE.width - x - 96);
  const note = paragraph(small, x, Math.max(main.height, source.height), PAGE.width - x, {
    size: SIZES.small,
    colour: SOFT,
  });
  const high = Math.max(main.height, source.height) + note.height + 2.4;
  return {
    marks: [
      ...badge(String(index + 1), 3.4, 3, 3.2),
      ...chip(paint, 10),
      ...main.marks,
      ...source.marks,
      ...note.marks,
      ruleAcross(0, high - 1, PAGE.width),
    ],
    height: high,
  };
}

/** A small swatch of what the layer is cut from. */
function chip(paint: LayerFacts['paint'], x: number): Mark[] {
  const corners = [
    { x: 0, y: 0 },
    { x: 9, y: 0 },
    { x: 9, y: 7 },
    { x: 0, y: 7 },
  ];
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
