import type { LayoutListing } from '../../server/contract/layouts.ts';
import type { PlannedCard } from '../../server/contract/plans.ts';
import { lengthFor, pieceFor } from '../lengths/lengths.ts';
import { sideIn } from '../pad/sides.ts';
import { drawnAt } from '../plan/card-image.tsx';
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
          return words.guide.piece(size, layer.layer.replaceAll('-', ' '), card.number, face);
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
  const layout = layoutOf(table, card);
  return {
    id: `card-${card.number}`,
    kind: 'card',
    title: words.guide.make(card.number, layout?.name ?? ''),
    picture: drawnAt(card),
    lines: card.layers.flatMap((layer) => {
      const size = pieceFor(layer.size, ruler);
      const line = words.guide.layer(words.layerName(layer.layer), size, stuff(layer, table));
      return layer.role === 'base' ? [line, ...foldLine(layout, ruler)] : [line];
    }),
  };
}

function foldLine(layout: LayoutListing | undefined, ruler: Ruler): string[] {
  if (!layout || layout.fold.scores.length === 0) return [];
  const scores = layout.fold.scores.map((score) => lengthFor(score, ruler));
  return [words.guide.fold(scores, layout.fold.scoreFrom)];
}

function stuff(layer: PlannedCard['layers'][number], { pad, supplies }: OnTable): string {
  const faced = sideIn(pad, layer.side);
  if (faced) return words.pad.sideName(faced.sheet.label, faced.face);
  const supply = supplies.find(({ id }) => id === layer.supply);
  return supply?.name ?? (layer.wanted ? words.plan.wanted(layer.wanted.name) : words.plan.plain);
}
