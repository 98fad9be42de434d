import type { ForPeople } from '../contract/class-sets.ts';
import type { GuideAsk } from '../guide/ask.ts';
import { stockSize } from '../guide/stock-size.ts';
import type { StockPaper } from '../guide/stock-size.ts';
import type { Ruler } from '../lengths/length.ts';
import type { Side } from '../pad/pad.ts';
import { withoutPlaces } from '../plan/faces-up.ts';
import type { Records } from '../store/records.ts';
import type { KeptPlan } from './make-plan.ts';
import { photosOf, picturesAsOne } from './one-picture.ts';
import { suppliesBeside } from './supplies-beside.ts';
import { rulerOf } from './wire/sizes.ts';

/** The ruler that lengths are read on, and the sheets that her cardstock comes in. */
export interface HowMeasured {
  readonly ruler?: Ruler | undefined;
  readonly stock?: StockPaper | undefined;
}

/** What pictures and guide of a kept plan are made from, but for where its swatches are. */
export function guideAskOf(
  kept: KeptPlan,
  { ruler, stock }: HowMeasured = {},
): Omit<GuideAsk, 'picture'> {
  const { pad, supplies, batch } = kept;
  const measured = ruler ?? rulerOf(pad.sheetSize);
  return {
    title: batch.cards.length === 1 ? '1 card' : `${batch.cards.length} cards`,
    // Where on a sheet its colours lie is for planning; the guide travels to a thread without it.
    pad: withoutPlaces(pad),
    cards: batch.cards,
    scheme: batch.scheme,
    plan: batch.plan,
    supplies,
    ruler: measured,
    stock: stockSize(stock, measured),
  };
}

/**
 * A plan with the sheets of her cardstock that are left now, and with the inks that she has now: it was kept
 * with those of its day, and no ink is part of a plan. What was seen in one picture is compared as such.
 */
export async function withShelfNow(read: Records, kept: KeptPlan): Promise<KeptPlan> {
  const now = await suppliesBeside(read, kept.pad.id);
  const sheets = new Map(now.map((one) => [one.id, one.sheets]));
  const supplies = [
    ...kept.supplies
      .filter(({ kind }) => kind === 'cardstock')
      .map((one) => ({ ...one, sheets: sheets.get(one.id) ?? null })),
    ...now.filter(({ kind }) => kind === 'ink'),
  ];
  const sides = kept.pad.sheets.flatMap(({ front, back }) => [front ?? [], back ?? []].flat());
  const one = picturesAsOne(await photosOf(read, [...supplies, ...sides]));
  const named = (side: Side): Side => ({ ...side, photo: one(side.photo) });
  return {
    ...kept,
    supplies: supplies.map((supply) => ({
      ...supply,
      photo: supply.photo === null ? null : one(supply.photo),
    })),
    pad: {
      ...kept.pad,
      sheets: kept.pad.sheets.map((sheet) => ({
        ...sheet,
        front: sheet.front && named(sheet.front),
        back: sheet.back && named(sheet.back),
      })),
    },
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
