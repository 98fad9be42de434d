import type { Kysely } from 'kysely';
import { isOfSeenPad } from './asker.ts';
import type { Whose } from './asker.ts';
import type { PlanRow } from './rows.ts';
import type { Tables } from './tables.ts';
import { nextTurn } from './turn.ts';

/** Plans with all that they were made from, as one value, so that each can be read again as it was. */
export interface Plans {
  all(): Promise<PlanRow[]>;
  ofPad(pad: string): Promise<PlanRow[]>;
  at(id: string): Promise<unknown>;
  /** The same as the JSON text that is kept. */
  textAt(id: string): Promise<string | null>;
  add(plan: PlanRow, whole: unknown, swatches: readonly string[]): Promise<void>;
  addText(plan: PlanRow, text: string, swatches: readonly string[]): Promise<void>;
  /** The swatch files of all plans of a pad. */
  swatchesOf(pad: string): Promise<string[]>;
  remove(id: string): Promise<void>;
  /** The steps of its guide that are done. */
  ticks(id: string): Promise<string[]>;
  /** How many those are of each plan of a pad, or of all; a plan without any is left out. */
  tickCounts(pad: string | null): Promise<Map<string, number>>;
  tick(id: string, step: string, done: boolean): Promise<void>;
  /** Which pad it is of; null for no plan. */
  padOf(id: string): Promise<string | null>;
  /** Its number in the order of arrival, which no other plan ever has; null for no plan. */
  turnOf(id: string): Promise<number | null>;
  /** The swatch file whose name begins so, of all that plans were made with; null for none. */
  swatchLike(beginning: string): Promise<string | null>;
}

const BRIEF = ['id', 'pad', 'cards', 'value', 'created_at', 'made_from', 'anew'] as const;

export function plansIn(db: Kysely<Tables>, whose: Whose): Plans {
  const plans: Plans = {
    all: async () =>
      (
        await db
          .selectFrom('plans')
          .select(BRIEF)
          .where(isOfSeenPad(whose))
          .orderBy('turn')
          .execute()
      ).map(read),
    ofPad: async (pad) =>
      (
        await db
          .selectFrom('plans')
          .select(BRIEF)
          .where('pad', '=', pad)
          .where(isOfSeenPad(whose))
          .orderBy('turn')
          .execute()
      ).map(read),
    at: async (id) => {
      const text = await plans.textAt(id);
      return text === null ? null : (JSON.parse(text) as unknown);
    },
    textAt: async (id) =>
      (
        await db
          .selectFrom('plans')
          .select('doc')
          .where('id', '=', id)
          .where(isOfSeenPad(whose))
          .executeTakeFirst()
      )?.doc ?? null,
    add: (plan, whole, swatches) => plans.addText(plan, JSON.stringify(whole), swatches),
    addText: async (plan, doc, swatches) => {
      const { id, pad, cards, value, createdAt, from, anew } = plan;
      const turn = await nextTurn(db, 'plans');
      await db
        .insertInto('plans')
        .values({
          id,
          pad,
          cards,
          value,
          doc,
          created_at: createdAt,
          turn,
          made_from: from,
          anew: Number(anew),
        })
        .execute();
      const shown = [...new Set(swatches)].map((swatch) => ({ plan: id, swatch }));
      if (shown.length > 0) await db.insertInto('plan_swatches').values(shown).execute();
    },
    swatchesOf: async (pad) =>
      (
        await db
          .selectFrom('plan_swatches')
          .innerJoin('plans', 'plans.id', 'plan_swatches.plan')
          .select('swatch')
          .distinct()
          .where('pad', '=', pad)
          .where(isOfSeenPad(whose))
          .execute()
      ).map(({ swatch }) => swatch),
    remove: async (id) => {
      await db.deleteFrom('ticks').where('plan', '=', id).execute();
      await db.deleteFrom('plan_swatches').where('plan', '=', id).execute();
      await db.deleteFrom('plans').where('id', '=', id).execute();
    },
    ticks: async (id) =>
      (
        await db.selectFrom('ticks').select('step').where('plan', '=', id).orderBy('step').execute()
      ).map(({ step }) => step),
    tickCounts: async (pad) => {
      const all = db
        .selectFrom('ticks')
        .innerJoin('plans', 'plans.id', 'ticks.plan')
        .select((now) => ['ticks.plan', now.fn.countAll<number | string>().as('count')])
        .where(isOfSeenPad(whose))
        .groupBy('ticks.plan');
      const rows = await (pad === null ? all : all.where('plans.pad', '=', pad)).execute();
      return new Map(rows.map(({ plan, count }) => [plan, Number(count)]));
    },
    tick: async (id, step, done) => {
      if (!done) {
        await db.deleteFrom('ticks').where('plan', '=', id).where('step', '=', step).execute();
        return;
      }
      await db
        .insertInto('ticks')
        .values({ plan: id, step })
        .onConflict((row) => row.columns(['plan', 'step']).doNothing())
        .execute();
    },
    padOf: async (id) =>
      (
        await db
          .selectFrom('plans')
          .select('pad')
          .where('id', '=', id)
          .where(isOfSeenPad(whose))
          .executeTakeFirst()
      )?.pad ?? null,
    turnOf: async (id) =>
      (
        await db
          .selectFrom('plans')
          .select('turn')
          .where('id', '=', id)
          .where(isOfSeenPad(whose))
          .executeTakeFirst()
      )?.turn ?? null,
    swatchLike: async (beginning) =>
      (
        await db
          .selectFrom('plan_swatches')
          .innerJoin('plans', 'plans.id', 'plan_swatches.plan')
          .select('swatch')
          .where('swatch', 'like', `${beginning.replace(/[^0-9a-f]/g, '')}%`)
          .where(isOfSeenPad(whose))
          .executeTakeFirst()
      )?.swatch ?? null,
  };
  return plans;
}

function read(row: Pick<Tables['plans'], (typeof BRIEF)[number]>): PlanRow {
  const { id, pad, cards, value } = row;
  const { created_at: createdAt, made_from: from, anew } = row;
  return { id, pad, cards, value, createdAt, from, anew: anew !== 0 };
}
