import { toMillimetres } from '../lengths/length.ts';
import type { GuideAsk } from './ask.ts';
import { CARD_ROOM, cardMarks } from './card-marks.ts';
import type { Mark } from './drawing.ts';
import { rectangle } from './drawing.ts';
import type { CardFacts, Facts } from './facts.ts';
import { sheetsSaid } from './glance-page.ts';
import { linesOf, shortened } from './letters.ts';
import { HAIR, INK, SIZES, SOFT } from './look.ts';
import { BODY, PAGE } from './page.ts';
import type { GuidePage } from './page.ts';

const COLUMNS = 3;
const ROWS = 5;
const WIDTH = PAGE.width / COLUMNS;
const HEIGHT = (BODY.bottom - BODY.top + 9) / ROWS;
const PICTURE = 25;
const LINE = 4.2;

/** Labels to cut apart, one a bag of pieces, person by person: the card's number large, its picture, how many pieces. */
export function labelPages(ask: GuideAsk, facts: Facts): GuidePage[] {
  const pages: GuidePage[] = [];
  const perPage = COLUMNS * ROWS;
  const labels = Array.from({ length: ask.people ?? 1 }, (_, index) => index + 1).flatMap(
    (person) => facts.cards.map((card) => ({ card, person })),
  );
  for (let from = 0; from < labels.length; from += perPage)
    pages.push({
      name: from === 0 ? 'Labels for the bags, one a card' : 'Labels, continued',
      marks: labels.slice(from, from + perPage).map(({ card, person }, index): Mark => ({
        kind: 'group',
        x: (index % COLUMNS) * WIDTH,
        y: BODY.top - 2 + Math.floor(index / COLUMNS) * HEIGHT,
        marks: label(ask, card, person),
      })),
    });
  return pages;
}

function label({ pad, people = 1 }: GuideAsk, card: CardFacts, person: number): Mark[] {
  const { layout, layers } = card;
  const size = {
    width: toMillimetres(layout.card.width) + 2 * CARD_ROOM,
    height: toMillimetres(layout.card.height) + 2 * CARD_ROOM,
  };
  const scale = Math.min(PICTURE / size.width, (HEIGHT - 6) / size.height);
  const paints = new Map(layers.map(({ layer, paint }) => [layer.id, paint]));
  const x = PICTURE + 6;
  const room = WIDTH - x - 2;
  const name = linesOf(layout.name, room, SIZES.small, true).slice(0, 2);
  const patterned = layers.filter(({ paper }) => paper !== null).length;
  const small = [
    ...(people === 1 ? [] : [`Person ${person} of ${people}`]),
    `${patterned} patterned`,
    `${layers.length - patterned} of cardstock`,
    ...linesOf(`${pad.name}: ${sheetsSaid(card)}`, room, SIZES.small).slice(0, 3),
  ];
  return [
    {
      kind: 'area',
      corners: rectangle(0, 0, WIDTH, HEIGHT),
      edge: { width: 0.2, colour: HAIR },
    },
    {
      kind: 'group',
      x: 3 + CARD_ROOM * scale,
      y: (HEIGHT - scale * size.height) / 2 + CARD_ROOM * scale,
      scale,
      marks: cardMarks(layout, (id) => paints.get(id)!),
    },
    { kind: 'words', x, y: 12.2, text: String(card.number), size: SIZES.numeral, bold: true },
    ...name.map((text, index): Mark => ({
      kind: 'words',
      x,
      y: 17.6 + index * LINE,
      text,
      size: SIZES.small,
      bold: true,
    })),
    ...small.map((text, index): Mark => ({
      kind: 'words',
      x,
      y: 18.6 + (name.length + index) * LINE,
      text: shortened(text, room, SIZES.small),
      size: SIZES.small,
      colour: text.startsWith(pad.name) ? SOFT : INK,
    })),
  ];
}
