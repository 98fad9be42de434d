import type { LayoutListing } from '../../server/contract/layouts.ts';
import type { PlannedCard, SlotCuts } from '../../server/contract/plans.ts';
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
  /** The cuts of a sheet, in the order of the hands. */
  readonly cuts: readonly Cut[];
}

/** One stroke of the trimmer, or one finish of a piece. */
export interface Cut {
  readonly id: string;
  readonly number: number;
  readonly main: string;
  readonly small: string;
}

/** First every sheet with its cuts, then every card with its layers from the base up. */
export function stepsOf(table: OnTable, slots: readonly SlotCuts[], ruler: Ruler): Step[] {
  return [
    ...slots.map((slot) => sheetStep(slot, table)),
    ...table.plan.cards.map((card) => cardStep(card, table, ruler)),
  ];
}

function sheetStep({ slot, sheet, laying, picture, steps }: SlotCuts, { pad }: OnTable): Step {
  const id = `cut-${slot}`;
  return {
    id,
    kind: 'cut',
    title: words.guide.cut(pad.sheets.find((one) => one.id === sheet)?.label ?? sheet),
    picture,
    lines: [laying],
    cuts: steps.map((cut) => ({ ...cut, id: `${id}-${cut.number}` })),
  };
}

function cardStep(card: PlannedCard, table: OnTable, ruler: Ruler): Step {
  const layout = layoutOf(table, card);
  return {
    id: `card-${card.number}`,
    kind: 'card',
    title: words.guide.make(card.number, layout?.name ?? ''),
    picture: drawnAt(card),
    cuts: [],
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
