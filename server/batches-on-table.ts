/** Batches that lie on the table: a wish moves only what it must. */
import type { CuttingScheme } from './cutting/piece.ts';
import type { CutSettings } from './cutting/settings.ts';
import { layBatch } from './from-photo-to-guide.ts';
import type { CutSo, LaidBatch, PlannedBatch, PlanWishes, Wish } from './from-photo-to-guide.ts';
import type { Before } from './plan/as-it-lies.ts';
import { upOf } from './plan/faces-up.ts';
import { piecesMoved } from './plan/pieces-moved.ts';
import type { Plan } from './plan/plan.ts';

/** A planned batch, as it was cut. */
export interface LyingBatch extends Before {
  readonly plan: Plan;
  readonly scheme: CuttingScheme;
}

export interface BatchAsk {
  readonly wishes: readonly Wish[];
  readonly ask: PlanWishes;
  readonly settings: CutSettings;
  /** The plan whose other cards stay as they lie where that costs next to nothing. */
  readonly before?: LyingBatch;
}

interface OnTable {
  readonly about: string;
  /** As text, so that they can be told apart. */
  readonly cuts: string;
  /** Whether these cuts were found for the batch, and not moved for a wish. */
  readonly found: boolean;
  readonly laid: LaidBatch;
  readonly turns: number;
}

/** The batches that were planned last stay laid out. */
let onTable: readonly OnTable[] = [];
const MOST_ON_TABLE = 4;
/** Each turn leaves some tables of cards in memory; after so many it is all laid out anew. */
const MOST_TURNS = 60;

/**
 * A batch with what she wishes. With a plan before, first only the pieces that a new pin speaks of come from another
 * sheet; where that cannot be or is dear, whole sheets change over; where that is dear too, all is chosen anew.
 */
export function planOnTable(batch: BatchAsk): PlannedBatch {
  const { ask, settings, before } = batch;
  if (before === undefined) return laidSo(batch).batch;
  // The cuts of a table of her own are hers.
  const ways =
    settings.table === undefined ? piecesMoved(before, ask.pins, ask.pad.sheets, settings) : [];
  const there = { scheme: before.scheme, ...upOf(before.plan) };
  for (const { scheme, cards } of ways) {
    const kept = laidSo(batch, { ...there, scheme }, there).inPlace(before, cards);
    if (kept !== null) return kept;
  }
  return laidSo(batch, there).asItLies(before);
}

/** On these cuts, or those found for it; `beside` these, where a batch lies on them, it takes what is worked out there. */
function laidSo(batch: BatchAsk, so?: CutSo, beside?: CutSo): LaidBatch {
  const { wishes, ask, settings } = batch;
  const { pins, without, limit, ...same } = ask;
  const about = JSON.stringify([wishes, same, settings]);
  const own = lyingOn(about, so);
  const before = own ?? (beside && lyingOn(about, beside));
  const isFresh = before === undefined || before.turns >= MOST_TURNS;
  const change = {
    pins,
    without,
    limit,
    ...(own === undefined && so ? { scheme: so.scheme } : {}),
  };
  const laid = isFresh ? layBatch(wishes, ask, settings, so) : before.laid.again(change);
  const now: OnTable = {
    about,
    cuts: JSON.stringify(laid.batch.scheme),
    found: own?.found ?? so === undefined,
    laid,
    turns: isFresh ? 0 : before.turns + 1,
  };
  onTable = [...onTable.filter((one) => one !== own), now].slice(-MOST_ON_TABLE);
  return laid;
}

function lyingOn(about: string, so: CutSo | undefined): OnTable | undefined {
  const cuts = so && JSON.stringify(so.scheme);
  return onTable.find(
    (one) => one.about === about && (cuts === undefined ? one.found : one.cuts === cuts),
  );
}
