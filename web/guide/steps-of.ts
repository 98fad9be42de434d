import type { PlannedCard } from '../../server/contract/plans.ts';
import { pieceFor } from '../lengths/lengths.ts';
import { sideIn } from '../pad/sides.ts';
import { layoutOf } from '../plan/layout-of.ts';
import type { OnTable } from '../plan/table-of.ts';
import type { Ruler } from '../table/settings.ts';
import { words } from '../words.ts';

/** One thing to do at the table. */
export interface Step {
  readonly id: string;
  readonly kind: 'cut' | 'card';
  readonly title: string;
  readonly picture: string | null;
  readonly lines: readonly string[];
}

/** First every sheet with the pieces it gives, then every card with its layers from the base up. */
export function stepsOf(table: OnTable, ruler: Ruler): Step[] {
  return [
    ...sheetSteps(table, ruler),
    ...table.plan.cards.map((card) => cardStep(card, table, ruler)),
  ];
}

function sheetSteps({ plan, pad }: OnTable, ruler: Ruler): Step[] {
  return plan.sheetsUsed.map(({ slot, sheet, cards }) => {
    const paper = pad.sheets.find((one) => one.id === sheet);
    const mine = plan.cards.filter(({ number }) => cards.includes(number));
    const pieces = mine.flatMap((card) =>
      card.layers
        .filter((layer) => layer.sheet === sheet)
        .map((layer) => {
          const face = sideIn(pad, layer.side)?.face ?? 'front';
          const size = pieceFor(layer.size, ruler);
          return words.guide.piece(size, words.roles[layer.role], card.number, face);
        }),
    );
    return {
      id: `cut-${slot}`,
      kind: 'cut',
      title: words.guide.cut(paper?.label ?? sheet),
      picture: (paper?.front ?? paper?.back)?.swatch ?? null,
      lines: pieces,
    };
  });
}

function cardStep(card: PlannedCard, table: OnTable, ruler: Ruler): Step {
  const name = layoutOf(table, card)?.name ?? '';
  return {
    id: `card-${card.number}`,
    kind: 'card',
    title: words.guide.make(card.number, name),
    picture: card.picture,
    lines: card.layers.map((layer) =>
      words.guide.layer(words.roles[layer.role], pieceFor(layer.size, ruler), stuff(layer, table)),
    ),
  };
}

function stuff(layer: PlannedCard['layers'][number], { pad, supplies }: OnTable): string {
  const faced = sideIn(pad, layer.side);
  if (faced) return words.pad.sideName(faced.sheet.label, faced.face);
  const supply = supplies.find(({ id }) => id === layer.supply);
  return supply?.name ?? (layer.wanted ? words.plan.wanted(layer.wanted.name) : words.plan.plain);
}
