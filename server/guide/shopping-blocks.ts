import { hexFromLab } from '../colour/spaces.ts';
import { toMillimetres } from '../lengths/length.ts';
import { shoppingList } from '../supplies/shopping-list.ts';
import type { Purchase } from '../supplies/shopping-list.ts';
import { rectangle } from './drawing.ts';
import { HAIR, SIZES, SOFT } from './look.ts';
import { PAGE, headed, noteBox, paragraph, ruleAcross } from './page.ts';
import type { Block } from './page.ts';
import { capital, cardsSaid } from './said.ts';
import type { StockNeed } from './stock-needs.ts';

const NOTE =
  'These colours were read from photos; a photo is not a measurement. Take the papers along and hold them beside the cardstock in daylight before you buy.';

/** What she does not have yet: colours in words, so that any shop can help. */
export function shoppingBlocks(needs: readonly StockNeed[]): Block[] {
  const purchases = purchasesOf(needs);
  if (purchases.length === 0) return [];
  return [
    headed('Shopping list', noteBox(NOTE, 0, 0, PAGE.width)),
    ...purchases.map(purchaseBlock),
  ];
}

/** What is to buy, merged so that one purchase serves several cards. */
export function purchasesOf(needs: readonly StockNeed[]): Purchase[] {
  const wanted = needs
    .filter(({ stock }) => stock.toBuy)
    .flatMap(({ stock, pieces }) =>
      pieces.map(({ card, size }) => ({
        kind: 'cardstock' as const,
        lab: stock.lab,
        card,
        area: toMillimetres(size.width) * toMillimetres(size.height),
      })),
    );
  return shoppingList(wanted);
}

function purchaseBlock({ kind, lab, name, cards, area }: Purchase): Block {
  const words = paragraph(`${capital(name)} ${kind}`, 22, 0, PAGE.width - 22, {
    size: SIZES.large,
    bold: true,
  });
  const numbers = [lab.l, lab.a, lab.b].map((value) => Math.round(value)).join(', ');
  const small = paragraph(
    `For ${cardsSaid(cards)}: ${Math.ceil(area / 100)} square cm in all. CIELAB (D65): ${numbers}.`,
    22,
    words.height + 1,
    PAGE.width - 22,
    { size: SIZES.small, colour: SOFT },
  );
  const height = Math.max(15, words.height + small.height + 3);
  return {
    marks: [
      {
        kind: 'area',
        corners: rectangle(0, 0, 16, 12),
        fill: hexFromLab(lab),
        edge: { width: 0.2, colour: HAIR },
      },
      ...words.marks,
      ...small.marks,
      ruleAcross(0, height, PAGE.width),
    ],
    height: height + 3,
  };
}
