import type { ForPeople } from '../contract/class-sets.ts';
import type { GuideAsk } from '../guide/ask.ts';
import type { Ruler } from '../lengths/length.ts';
import { withoutPlaces } from '../plan/faces-up.ts';
import type { Records } from '../store/records.ts';
import type { KeptPlan } from './make-plan.ts';
import { rulerOf } from './wire/sizes.ts';

/** What pictures and guide of a kept plan are made from, but for where its swatches are. */
export function guideAskOf(kept: KeptPlan, ruler?: Ruler): Omit<GuideAsk, 'picture'> {
  const { pad, supplies, batch } = kept;
  return {
    title: `${batch.cards.length} cards`,
    // Where on a sheet its colours lie is for planning; the guide travels to a thread without it.
    pad: withoutPlaces(pad),
    cards: batch.cards,
    scheme: batch.scheme,
    plan: batch.plan,
    supplies,
    ruler: ruler ?? rulerOf(pad.sheetSize),
  };
}

/** A plan with the sheets of her cardstock that are left now: it was kept with those of its day. */
export async function withSheetsLeft(
  { supplies }: Pick<Records, 'supplies'>,
  kept: KeptPlan,
): Promise<KeptPlan> {
  const now = new Map((await supplies.all()).map(({ id, sheets }) => [id, sheets]));
  return {
    ...kept,
    supplies: kept.supplies.map((one) => ({ ...one, sheets: now.get(one.id) ?? null })),
  };
}

/** For how many the guide is, and how high they stack. */
export function forPeople({ people, stack }: ForPeople): Pick<GuideAsk, 'people' | 'stack'> {
  return {
    ...(people === undefined ? {} : { people }),
    ...(stack === undefined ? {} : { stack }),
  };
}

/** The sides that the cards of a plan show; or those of one card. */
export function sidesShown({ batch }: KeptPlan, card?: number): string[] {
  const cards = batch.plan.cards.filter(({ number }) => card === undefined || number === card);
  const shown = cards.flatMap(({ layers }) =>
    layers.flatMap(({ choice }) => (choice.kind === 'paper' ? [choice.side] : [])),
  );
  return [...new Set(shown)];
}
