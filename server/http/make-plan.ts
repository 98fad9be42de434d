import type { LyingBatch } from '../batches-on-table.ts';
import type { NewPlan } from '../contract/plans.ts';
import { usualSettings } from '../cutting/settings.ts';
import type { PlannedBatch, PlanWishes, Wish } from '../from-photo-to-guide.ts';
import { layerOf, listed } from '../guide/said.ts';
import type { Layout } from '../layouts/layout.ts';
import type { Pad } from '../pad/pad.ts';
import { withoutPlaces } from '../plan/faces-up.ts';
import type { Pin, Taste } from '../plan/plan.ts';
import { Refusal, expected } from '../refusals/refusal.ts';
import type { SupplyRow } from '../store/rows.ts';
import type { Edges } from './edges.ts';
import { found } from './found.ts';
import { layoutAt } from './layouts.ts';
import { makeOnce } from './once.ts';
import { plansAtHand } from './plans-at-hand.ts';
import type { KeyedQuestion } from './once.ts';
import { rowsOfPad } from './read-pad.ts';
import { isSameWork } from './same-work.ts';
import { suppliesBeside } from './supplies-beside.ts';
import { sheetsToPlan } from './wire/pads.ts';
import { rulerOf } from './wire/sizes.ts';

/** A plan with all that it was made from, so that it can be read, drawn and printed again as it was. */
export interface KeptPlan {
  readonly id: string;
  readonly createdAt: string;
  readonly asked: NewPlan;
  readonly pad: Pad;
  /** The swatch file of each side as it was then. */
  readonly swatches: Readonly<Record<string, string>>;
  readonly supplies: readonly SupplyRow[];
  readonly batch: PlannedBatch;
}

/** More cards than this are made in several batches. */
const MOST_CARDS = 120;

/** How long the search for the best plan may take; it ends by itself as soon as the plan is proven best. */
const PATIENCE = 4000;

/** Makes a plan and keeps it. */
export async function makePlan(
  edges: Edges,
  asked: NewPlan,
  question: KeyedQuestion | null,
): Promise<KeptPlan> {
  const { store, desk } = edges;
  const rows = await rowsOfPad(store.read, asked.pad);
  const { pad: row, sides } = rows;
  const pad = { id: row.id, name: row.name, sheetSize: row.sheetSize, sheets: sheetsToPlan(rows) };
  if (pad.sheets.length === 0) throw noSheets(asked.pad);
  const before = await beforeOf(edges, asked);
  checkOneWay(asked);
  const wishes = await wishesOf(edges, asked);
  const supplies = await suppliesBeside(store.read, row.id);
  const ask = wishesKept({ asked, pad, supplies });
  await checkIds(edges, pad, ask.pins, ask.without, wishes);
  const batch = await desk.plan({
    wishes,
    ask,
    settings: {
      ...usualSettings(rulerOf(pad.sheetSize)),
      ...(asked.scheme === undefined ? {} : { table: asked.scheme }),
    },
    ...(asked.sheets === undefined ? {} : { sheets: asked.sheets }),
    ...(before === null ? {} : { before }),
    milliseconds: PATIENCE,
  });
  const kept: KeptPlan = {
    id: edges.newId(),
    createdAt: edges.now(),
    asked,
    pad,
    swatches: Object.fromEntries(sides.map(({ id, swatch }) => [id, swatch])),
    supplies,
    batch,
  };
  return keepPlan(edges, kept, question);
}

/** Keeps a plan that was made; the same question asked again gives the one that is there. */
export async function keepPlan(
  edges: Edges,
  kept: KeptPlan,
  question: KeyedQuestion | null,
): Promise<KeptPlan> {
  const { id, createdAt, pad, batch } = kept;
  const before = await sameBefore(edges, kept);
  const [made] = await edges.store.write((records) =>
    makeOnce(records, question, createdAt, async () => {
      found(await records.pads.at(pad.id), 'pad', pad.id);
      const { value } = batch.plan;
      const { from = null, anew = false } = kept.asked;
      const row = { id, pad: pad.id, cards: batch.cards.length, value, createdAt, from, anew };
      await records.plans.add(row, kept, Object.values(kept.swatches));
      const done = before === null ? [] : await records.plans.ticks(before);
      for (const step of done) await records.plans.tick(id, step, true);
      return [id];
    }),
  );
  edges.changes.tell(pad.id);
  return made === id ? kept : planAt(edges, made!);
}

/** The plan that it changed, where it is cut and built by the same guide: what is done of that one is done of it. */
async function sameBefore(edges: Edges, kept: KeptPlan): Promise<string | null> {
  const { from, anew = false } = kept.asked;
  if (from === undefined || anew) return null;
  // It may have been deleted since.
  const before = await planAt(edges, from).catch(() => null);
  return before !== null && isSameWork(before, kept) ? from : null;
}

/** What she wished of a plan, as the core knows it. */
export function wishesKept({
  asked,
  pad,
  supplies,
}: Pick<KeptPlan, 'asked' | 'pad' | 'supplies'>): Omit<PlanWishes, 'limit'> {
  const { pins = [], without = [], taste = EVEN } = asked;
  // Sheets that are cut freely are planned by their sides as a whole, as where the pieces lie is found last.
  const read = asked.sheets === undefined ? pad : withoutPlaces(pad);
  return { pad: read, supplies, pins: pins.map(pinOf), without, taste };
}

const EVEN: Taste = { contrast: 0, busy: 0, bold: 0 };

export async function planAt(edges: Edges, id: string): Promise<KeptPlan> {
  const { plans } = edges.store.read;
  const atHand = plansAtHand(edges);
  // Asked all the same whether it is still there, and hers; a plan that was deleted and brought again has another turn.
  const turn = found(await plans.turnOf(id), 'plan', id);
  const key = `${id} ${turn}`;
  const known = atHand.at(key);
  if (known !== undefined) return known;
  const plan = found((await plans.at(id)) as KeptPlan | null, 'plan', id);
  atHand.put(key, plan);
  return plan;
}

async function wishesOf(edges: Edges, { cards, from }: NewPlan): Promise<Wish[]> {
  const wishes = await Promise.all(
    cards.map(async ({ layout, count }, at) => ({
      layout: await layoutOf(edges, layout, `cards[${at}].layout`, from),
      count,
    })),
  );
  const sum = wishes.reduce((total, { count }) => total + count, 0);
  if (sum > MOST_CARDS)
    throw expected(
      `at most ${MOST_CARDS} cards`,
      'cards',
      sum,
      'Make them in two batches.',
      'too-large',
    );
  return wishes;
}

/** A layout as it is now; one that was deleted as the plan has it that is changed, so that her plan stays hers to change. */
async function layoutOf(edges: Edges, id: string, field: string, from?: string): Promise<Layout> {
  try {
    return await layoutAt(edges, id, field);
  } catch (fault) {
    if (!(fault instanceof Refusal && fault.kind === 'not-found')) throw fault;
    const cards = from === undefined ? [] : (await planAt(edges, from)).batch.cards;
    const kept = cards.find(({ layout }) => layout.id === id)?.layout ?? null;
    return found(kept, 'layout', id, field, NO_LAYOUT);
  }
}

const NO_LAYOUT =
  'It may have been deleted: choose another layout under Cards, or draw it again. Plans that were made with it stay.';

type WirePin = NonNullable<NewPlan['pins']>[number];

function pinOf({ card, layer, sheet, side, supply }: WirePin): Pin {
  return {
    card,
    layer,
    ...(sheet === undefined ? {} : { sheet }),
    ...(side === undefined ? {} : { side }),
    ...(supply === undefined ? {} : { supply }),
  };
}

/** Every name that the wishes speak of must be there, or the refusal says which is not. */
async function checkIds(
  { store }: Edges,
  pad: Pad,
  pins: readonly Pin[],
  without: readonly string[],
  wishes: readonly Wish[],
): Promise<void> {
  const sheets = new Set(pad.sheets.map(({ id }) => id));
  const sides = new Set(pad.sheets.flatMap(({ front, back }) => [front?.id, back?.id]));
  const layouts = wishes.flatMap(({ layout, count }) =>
    Array.from({ length: count }, () => layout),
  );
  for (const [at, pin] of pins.entries()) {
    const field = `pins[${at}]`;
    const layout = layouts[pin.card - 1];
    found(layout ?? null, 'card', String(pin.card), `${field}.card`);
    const layer = layout!.layers.find(({ id }) => id === pin.layer);
    const layers = listed(layout!.layers.map(({ id }) => layerOf(layout!, id)));
    const mend = `The layout of card ${pin.card} was changed since, or is another one: take this wish back, and make it of one of its layers as they are now (${layers}).`;
    found(layer ?? null, 'layer', pin.layer, `${field}.layer`, mend);
    if (pin.sheet !== undefined && !sheets.has(pin.sheet))
      found(null, 'sheet', pin.sheet, `${field}.sheet`);
    if (pin.side !== undefined && !sides.has(pin.side))
      found(null, 'side', pin.side, `${field}.side`);
    if (pin.supply !== undefined)
      found(await store.read.supplies.at(pin.supply), 'supply', pin.supply, `${field}.supply`);
  }
  for (const [at, id] of without.entries())
    if (!sheets.has(id)) found(null, 'sheet', id, `without[${at}]`);
}

/** A table of her own says already how many sheets there are. */
function checkOneWay({ scheme, sheets }: NewPlan): void {
  if (scheme !== undefined && sheets !== undefined)
    throw expected(
      'either a number of sheets or a scheme of your own',
      'sheets',
      sheets,
      'Leave one of the two out; your scheme has its own number of sheets.',
      'clash',
    );
}

/** The plan whose other cards stay as they lie; null where they need not. A plan changes one of its own pad. */
async function beforeOf(edges: Edges, asked: NewPlan): Promise<LyingBatch | null> {
  const { pad, from, keepOthers, sheets } = asked;
  if (from === undefined) return null;
  found((await edges.store.read.plans.padOf(from)) === pad ? from : null, 'plan', from, 'from');
  if (keepOthers !== true || sheets !== undefined) return null;
  const kept = await planAt(edges, from);
  const { plan, scheme } = kept.batch;
  return onlyPinsDiffer(kept.asked, asked)
    ? { plan, scheme, pins: (kept.asked.pins ?? []).map(pinOf) }
    : null;
}

function onlyPinsDiffer(before: NewPlan, after: NewPlan): boolean {
  const rest = ({ cards, without = [], taste = EVEN, sheets, scheme }: NewPlan): string =>
    JSON.stringify([cards, without, taste, sheets, scheme]);
  const pins = ({ pins: all = [] }: NewPlan): string => JSON.stringify(all.map(pinOf));
  return rest(before) === rest(after) && pins(before) !== pins(after);
}

function noSheets(pad: string): Error {
  return expected(
    'a pad with at least one sheet',
    'pad',
    pad,
    'Add a photo of its sheets first.',
    'does-not-fit',
  );
}
