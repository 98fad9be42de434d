/** Any piece from any sheet: how near the best the plans are, proven by prices on the paper. */
import { checkScheme } from '../../server/cutting/check-scheme.ts';
import { cutScheme } from '../../server/cutting/cut-scheme.ts';
import { piecesOf } from '../../server/cutting/pieces-of.ts';
import { usualSettings } from '../../server/cutting/settings.ts';
import { checkPlan } from '../../server/plan/check.ts';
import type { FreeAsk } from '../../server/plan/free/free-world.ts';
import { planFreely } from '../../server/plan/free/plan-freely.ts';
import { sheetCurve } from '../../server/plan/free/sheet-curve.ts';
import { planCards } from '../../server/plan/plan-cards.ts';
import { busy } from './busy.ts';
import type { Figure } from './figure.ts';
import { median } from './photos-match.ts';
import { worldOf } from './plan-worlds.ts';

const SEEDS = Array.from({ length: 10 }, (_, at) => 6001 + at);
/** Processor time that one plan may take in all, tables and bound included, in milliseconds. */
const PATIENCE = 4200;
/** For each point of a curve, after the tables are made. */
const POINT = 400;

interface Run {
  readonly gap: number;
  readonly time: number;
  readonly faults: number;
  readonly gain: number;
}

export function freeFigures(): Figure[] {
  const worlds = SEEDS.map((seed) => {
    const { scheme, ...world } = worldOf(seed, { designs: 24, copies: 1, slots: 6, cards: 15 });
    const ask = { ...world, settings: usualSettings('in') };
    const filled = cutScheme(piecesOf(ask.cards).patterned, scheme.sheet, ask.settings);
    return { ask, filled };
  });
  const plenty = worlds.map(({ ask, filled }) => run(ask, filled));
  const tight = worlds.map(({ ask, filled }) =>
    run({ ...ask, sheets: filled.slots.length }, filled),
  );
  return [
    ...figures('any piece from any sheet, 24 sheets', plenty, 1),
    {
      name: 'any piece from any sheet, 24 sheets: worth more than sheets filled first, mean',
      value: mean(plenty.map(({ gain }) => gain)),
      unit: '%',
      bar: null,
      note: 'beside the best plan found on the fewest sheets',
    },
    ...figures('any piece from as few sheets as can be filled', tight, 3),
    ...curve(worlds[0]!.ask),
  ];
}

function run(ask: Omit<FreeAsk, 'limit'>, filled: ReturnType<typeof cutScheme>): Run {
  const begin = busy();
  const limit = { until: () => busy() - begin > PATIENCE };
  const { scheme, plan } = planFreely({ ...ask, limit });
  const time = busy() - begin;
  const faults = [
    ...checkScheme(piecesOf(ask.cards).patterned, scheme),
    ...checkPlan({ ...ask, limit, scheme }, plan),
  ].length;
  const first = planCards({ ...ask, scheme: filled, limit: { steps: 20_000 } }).value;
  return {
    gap: (100 * (plan.bound - plan.value)) / plan.bound,
    gain: (100 * (plan.value - first)) / first,
    time,
    faults,
  };
}

function figures(name: string, runs: readonly Run[], bar: number): Figure[] {
  const gaps = runs.map(({ gap }) => gap);
  return [
    {
      name: `${name}: proven gap, largest`,
      value: Math.max(...gaps),
      unit: '%',
      bar: { at: 'most', value: bar },
      note: `${runs.length} worlds of 15 cards; median ${median(gaps).toFixed(2)} %`,
    },
    {
      name: `${name}: time in all, longest`,
      value: Math.max(...runs.map(({ time }) => time)) / 1000,
      unit: 's',
      bar: { at: 'most', value: 5 },
      note: 'processor time, tables, bound and search',
    },
    {
      name: `${name}: faults found by the checkers`,
      value: runs.reduce((sum, { faults }) => sum + faults, 0),
      unit: '',
      bar: { at: 'most', value: 0 },
    },
  ];
}

function curve(ask: Omit<FreeAsk, 'limit'>): Figure[] {
  const begin = busy();
  const points = sheetCurve({ ...ask, limit: { steps: 1 } }, () => {
    const end = busy() + POINT;
    return { until: () => busy() > end };
  });
  const most = points.at(-1)!.value;
  return [
    {
      name: 'what fewer sheets cost: points of the curve',
      value: points.length,
      unit: '',
      bar: null,
      note: `${((busy() - begin) / 1000).toFixed(1)} s; ${points
        .map(({ sheets, value }) => `${sheets} sheets: ${((100 * value) / most).toFixed(1)} %`)
        .join(', ')}`,
    },
  ];
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
