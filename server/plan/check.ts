import type { Layer } from '../layouts/layout.ts';
import type { BatchCard } from '../cutting/pieces-of.ts';
import type { PlanAsk } from './ask.ts';
import { upOf } from './faces-up.ts';
import { lyingFaults } from './check-lying.ts';
import { recounted, sideOf } from './recount.ts';
import type { Choice, ChosenCard, Plan } from './plan.ts';

/** Sums may differ by this much by the order of adding. */
const TOLERANCE = 1e-7;

/**
 * What is wrong with a plan; empty when nothing is. Reads only the ask and the plan, knows nothing of
 * the solver's tables: slots and copies, one paper for a group and different ones for different groups
 * of slots, pins, sheets left out, prints that need not lie, and every score worked out again (recount.ts).
 */
export function checkPlan(ask: PlanAsk, plan: Plan): string[] {
  const faults = [
    ...slotFaults(ask, plan),
    ...lyingFaults({ ...ask, ...upOf(plan) }, plan),
    ...tieFaults(ask, plan),
    ...ask.cards.flatMap((card) => cardFaults(ask, plan, card)),
  ];
  if (plan.cards.length !== ask.cards.length)
    faults.push(`${plan.cards.length} cards planned, ${ask.cards.length} asked`);
  const sum = plan.cards.reduce((total, card) => total + card.score, 0);
  if (Math.abs(sum - plan.value) > TOLERANCE)
    faults.push(`the value is ${plan.value}, the cards add up to ${sum}`);
  if (plan.bound < plan.value - TOLERANCE)
    faults.push(`the bound ${plan.bound} is below the value ${plan.value}`);
  if (plan.proven && plan.bound - plan.value > TOLERANCE)
    faults.push(`called proven with a gap of ${plan.bound - plan.value}`);
  return faults;
}

function slotFaults(ask: PlanAsk, plan: Plan): string[] {
  const faults: string[] = [];
  const used = new Map<string, number>();
  for (const { id } of ask.scheme.slots) {
    const sheet = plan.slots[id];
    if (sheet === undefined) {
      faults.push(`slot ${id} has no sheet`);
      continue;
    }
    used.set(sheet, (used.get(sheet) ?? 0) + 1);
    if (ask.without.includes(sheet)) faults.push(`sheet ${sheet} was to be left out`);
  }
  for (const [sheet, times] of used) {
    const copies = ask.pad.sheets.find(({ id }) => id === sheet)?.copies ?? 0;
    if (times > copies)
      faults.push(`sheet ${sheet} is used ${times} times and has ${copies} copies`);
  }
  return faults;
}

/** Two triangles of one rectangle are cut apart together, so they show one side. */
function tieFaults({ scheme }: PlanAsk, plan: Plan): string[] {
  const sideOn = (card: number, layer: string): string | undefined => {
    const choice = plan.cards
      .find(({ number }) => number === card)
      ?.layers.find((one) => one.layer === layer)?.choice;
    return choice?.kind === 'paper' ? choice.side : undefined;
  };
  return scheme.slots.flatMap(({ pieces }) =>
    pieces.flatMap(({ piece, pair }) => {
      const other = pieces.find((one) => one.piece.id === pair?.with)?.piece;
      if (other === undefined) return [];
      const same = sideOn(piece.card, piece.layer) === sideOn(other.card, other.layer);
      return same ? [] : [`${piece.id} shows another side than ${other.id}, which it is cut with`];
    }),
  );
}

function cardFaults(ask: PlanAsk, plan: Plan, card: BatchCard): string[] {
  const chosen = plan.cards.find(({ number }) => number === card.number);
  if (chosen === undefined) return [`card ${card.number} is missing`];
  const where = `card ${card.number}`;
  const choices = new Map(chosen.layers.map(({ layer, choice }) => [layer, choice]));
  const faults = card.layout.layers.flatMap((layer) => {
    const choice = choices.get(layer.id);
    if (choice === undefined) return [`${where}: ${layer.id} has no paper`];
    return layerFaults(ask, plan, card, layer, choice).map((fault) => `${where}: ${fault}`);
  });
  if (faults.length > 0) return faults;
  return [
    ...groupFaults(card, choices, where),
    ...pinFaults(ask, card, choices, where),
    ...scoreFaults(ask, plan, card, chosen, choices, where),
  ];
}

function layerFaults(
  ask: PlanAsk,
  plan: Plan,
  card: BatchCard,
  layer: Layer,
  choice: Choice,
): string[] {
  if ((choice.kind === 'paper') !== (layer.material === 'patterned'))
    return [`${layer.id} is to be ${layer.material} and is ${choice.kind}`];
  if (choice.kind === 'supply') {
    const supply = ask.supplies.find(({ id }) => id === choice.supply);
    return supply?.kind === 'cardstock' ? [] : [`${choice.supply} is no cardstock of hers`];
  }
  if (choice.kind === 'wanted') return [];
  const slot = ask.scheme.slots.find(({ id }) => id === choice.slot);
  const faults: string[] = [];
  if (!slot?.pieces.some(({ piece }) => piece.card === card.number && piece.layer === layer.id))
    faults.push(`${layer.id} is not cut from slot ${choice.slot}`);
  if (plan.slots[choice.slot] !== choice.sheet)
    faults.push(`${layer.id} names sheet ${choice.sheet}, its slot holds another`);
  if (sideOf(ask, choice)?.sheet !== choice.sheet)
    faults.push(`side ${choice.side} is not on sheet ${choice.sheet}`);
  return faults;
}

function groupFaults(
  card: BatchCard,
  choices: ReadonlyMap<string, Choice>,
  where: string,
): string[] {
  const first = new Map<string, { layer: string; choice: Choice }>();
  return card.layout.layers.flatMap((layer) => {
    const group = `${layer.material}/${layer.paper}`;
    const choice = choices.get(layer.id)!;
    const known = first.get(group);
    if (known === undefined) {
      first.set(group, { layer: layer.id, choice });
      return [];
    }
    return JSON.stringify(known.choice) === JSON.stringify(choice)
      ? []
      : [`${where}: ${known.layer} and ${layer.id} are to be one paper`];
  });
}

function pinFaults(
  ask: PlanAsk,
  card: BatchCard,
  choices: ReadonlyMap<string, Choice>,
  where: string,
): string[] {
  return ask.pins.flatMap((pin) => {
    if (pin.card !== card.number) return [];
    const choice = choices.get(pin.layer);
    const kept =
      (pin.sheet === undefined || (choice?.kind === 'paper' && choice.sheet === pin.sheet)) &&
      (pin.side === undefined || (choice?.kind === 'paper' && choice.side === pin.side)) &&
      (pin.supply === undefined || (choice?.kind === 'supply' && choice.supply === pin.supply));
    return kept ? [] : [`${where}: the pin on ${pin.layer} is not kept`];
  });
}

function scoreFaults(
  ask: PlanAsk,
  plan: Plan,
  card: BatchCard,
  chosen: ChosenCard,
  choices: ReadonlyMap<string, Choice>,
  where: string,
): string[] {
  const score = recounted({ ...ask, ...upOf(plan) }, card, choices);
  return Math.abs(score - chosen.score) > TOLERANCE
    ? [`${where}: scored ${chosen.score}, worked out again ${score}`]
    : [];
}
