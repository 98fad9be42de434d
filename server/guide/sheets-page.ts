import type { Mark } from './drawing.ts';
import type { Facts, SlotFacts } from './facts.ts';
import { layersOf } from './slot-pages.ts';
import { shortened } from './letters.ts';
import { HAIR, INK, SIZES, SOFT } from './look.ts';
import { BODY, PAGE, paragraph, ruleAcross } from './page.ts';
import type { GuidePage } from './page.ts';

const NAME = 44;
const ROW = 6.4;
const PER_PAGE = 30;
const CARDS = 18;

/** The table of sheets against cards: which sheet gives pieces to which card, and from which side. */
export function sheetsPages(facts: Facts): GuidePage[] {
  const pages: GuidePage[] = [];
  for (let card = 0; card < facts.cards.length; card += CARDS)
    for (let slot = 0; slot < facts.slots.length; slot += PER_PAGE)
      pages.push({
        name: pages.length === 0 ? 'Which sheet goes to which card' : 'Sheets and cards, continued',
        marks: grid(
          facts,
          facts.slots.slice(slot, slot + PER_PAGE),
          facts.cards.slice(card, card + CARDS).map(({ number }) => number),
          BODY.top - 3.5,
        ).marks,
      });
  return pages;
}

/** The whole table from a height of the page on, and where it ends; null when it is too wide for one page. */
export function sheetsGrid(
  facts: Facts,
  from: number,
): { readonly marks: Mark[]; readonly bottom: number } | null {
  if (facts.cards.length > CARDS) return null;
  const numbers = facts.cards.map(({ number }) => number);
  const head: Mark = {
    kind: 'words',
    x: 0,
    y: from,
    text: 'Which sheet goes to which card',
    size: SIZES.body,
    bold: true,
  };
  const { marks, bottom } = grid(facts, facts.slots, numbers, from + 2);
  return { marks: [head, ...marks], bottom };
}

function grid(
  facts: Facts,
  slots: readonly SlotFacts[],
  cards: readonly number[],
  from: number,
): { marks: Mark[]; bottom: number } {
  const words = paragraph(
    'F: the piece shows the front of the sheet. B: it shows the back. A number counts the pieces where there are more than one.',
    0,
    from,
    PAGE.width,
    { size: SIZES.note, colour: SOFT },
  );
  const top = from + words.height + 9.5;
  const step = Math.min(12, (PAGE.width - NAME) / cards.length);
  const middle = (index: number): number => NAME + (index + 0.5) * step;
  const bottom = top + slots.length * ROW + 2;
  const heads = cards.flatMap((card, index): Mark[] => [
    ...(index % 2 === 0 ? [stripe(NAME + index * step, top - 6.5, step, bottom - top + 6.5)] : []),
    {
      kind: 'words',
      x: middle(index),
      y: top - 1.5,
      text: String(card),
      size: SIZES.body,
      bold: true,
      align: 'middle',
    },
  ]);
  const rows = slots.flatMap((one, row): Mark[] => {
    const y = top + row * ROW;
    return [
      {
        kind: 'words',
        x: 0,
        y: y + 4.6,
        text: shortened(one.name, NAME - 2, SIZES.body),
        size: SIZES.body,
      },
      ...cards.flatMap((card, index) => cell(facts, one, card, middle(index), y + 4.6)),
      ruleAcross(0, y + ROW, NAME + cards.length * step),
    ];
  });
  const marks: Mark[] = [
    ...words.marks,
    { kind: 'words', x: 0, y: top - 1.5, text: 'Card', size: SIZES.small, colour: SOFT },
    ...heads,
    ruleAcross(0, top, NAME + cards.length * step, INK),
    ...rows,
  ];
  return { marks, bottom };
}

function stripe(x: number, y: number, width: number, height: number): Mark {
  return {
    kind: 'area',
    corners: [
      { x, y },
      { x: x + width, y },
      { x: x + width, y: y + height },
      { x, y: y + height },
    ],
    fill: HAIR,
    opacity: 0.25,
  };
}

function cell(facts: Facts, one: SlotFacts, card: number, x: number, y: number): Mark[] {
  const layers = layersOf(facts, one);
  const faces = one.slot.pieces
    .filter(({ piece }) => piece.card === card)
    .map(({ piece }) => layers.get(piece.id)?.paper?.face ?? 'front');
  const text = (['front', 'back'] as const)
    .map((face) => {
      const count = faces.filter((one) => one === face).length;
      const letter = face === 'front' ? 'F' : 'B';
      return count === 0 ? '' : count === 1 ? letter : `${count}${letter}`;
    })
    .filter((part) => part !== '')
    .join(' ');
  return text === ''
    ? []
    : [{ kind: 'words', x, y, text, size: SIZES.small, bold: true, align: 'middle' }];
}
