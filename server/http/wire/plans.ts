import type * as Wire from '../../contract/plans.ts';
import type { BatchCard } from '../../cutting/pieces-of.ts';
import type { Slot } from '../../cutting/piece.ts';
import { layerOf } from '../../guide/said.ts';
import { inWords } from '../../layouts/layer-names.ts';
import { exactLength } from '../../lengths/format-length.ts';
import type { Size } from '../../lengths/length.ts';
import type { ChosenCard, ChosenLayer, Plan, Reason } from '../../plan/plan.ts';
import type { KeptPlan } from '../make-plan.ts';
import { colourOnWire } from './colours.ts';
import { papersOnWire } from './plan-papers.ts';
import { verdictOf } from './plan-verdict.ts';
import { rulerOf } from './sizes.ts';

export function planOnWire(kept: KeptPlan): Wire.Plan {
  const { id, createdAt, asked, pad, batch } = kept;
  const { plan, scheme, cards } = batch;
  const { value, bound, proven, notes, otherwise } = plan;
  return {
    id,
    pad: pad.id,
    createdAt,
    asked,
    value,
    bound,
    proven,
    ...(otherwise === undefined
      ? {}
      : {
          otherwise: {
            slots: { ...otherwise.slots },
            gain: otherwise.value - value,
            cards: [...otherwise.cards],
          },
        }),
    verdict: verdictOf(plan, (asked.pins ?? []).length > 0),
    cards: plan.cards.map((card) => cardOnWire(card, cards, id)),
    sheetsUsed: scheme.slots.map((slot) => ({
      slot: slot.id,
      sheet: plan.slots[slot.id] ?? '',
      cards: [...new Set(slot.pieces.map(({ piece }) => piece.card))].sort((p, q) => p - q),
      use: useOf(slot, scheme.sheet),
    })),
    fewestSheets: scheme.fewestSheets,
    fewestSheetsProven: scheme.proven,
    weakest: weakestOf(plan),
    supplies: kept.supplies.map((supply) => supply.id),
    papers: papersOnWire(kept),
    notes: [...notes],
    guide: `/api/plans/${id}/guide.pdf`,
  };
}

function cardOnWire(
  chosen: ChosenCard,
  cards: readonly BatchCard[],
  plan: string,
): Wire.PlannedCard {
  const { number, layout, score, why, short = why, reasons } = chosen;
  const card = cards.find((each) => each.number === number);
  return {
    id: `card-${number}`,
    number,
    layout,
    layers: chosen.layers.map((layer) => layerOnWire(layer, card)),
    score,
    why,
    short,
    reasons: reasons.map(reasonOnWire),
    picture: `/api/plans/${plan}/cards/card-${number}.png`,
  };
}

function reasonOnWire({
  layers,
  text,
  short = text,
  score,
}: Reason): Wire.PlannedCard['reasons'][number] {
  return { layers: [...layers], text, short, score };
}

function layerOnWire(
  { layer, role, choice }: ChosenLayer,
  card: BatchCard | undefined,
): Wire.PlannedLayer {
  const size = card === undefined ? '' : cutSize(card, layer);
  const name = card === undefined ? inWords(layer) : layerOf(card.layout, layer);
  const called = name === inWords(layer) ? {} : { called: name };
  switch (choice.kind) {
    case 'paper':
      return { layer, ...called, role, sheet: choice.sheet, side: choice.side, size };
    case 'supply':
      return { layer, ...called, role, supply: choice.supply, size };
    case 'wanted':
      return { layer, ...called, role, wanted: colourOnWire(choice.lab), size };
  }
}

/** What is cut for a layer; the base is cut flat, before it is folded. */
function cutSize({ layout }: BatchCard, id: string): string {
  const layer = layout.layers.find((each) => each.id === id);
  if (layer === undefined) return '';
  const { width, height } = layer.role === 'base' ? layout.fold.flat : layer.box;
  const ruler = rulerOf(layout.card);
  return `${exactLength(width, ruler)} x ${exactLength(height, ruler)}`;
}

/** The card to look at first; none when there is only one. */
function weakestOf({ cards }: Plan): number | null {
  if (cards.length < 2) return null;
  return cards.reduce((weakest, card) => (card.score < weakest.score ? card : weakest)).number;
}

function useOf(slot: Slot, sheet: Size): number {
  // Two triangles of one rectangle fill it together.
  const cut = slot.pieces.reduce(
    (sum, { piece: { size }, pair }) =>
      sum + (size.width * size.height) / (pair === undefined ? 1 : 2),
    0,
  );
  return cut / (sheet.width * sheet.height);
}
