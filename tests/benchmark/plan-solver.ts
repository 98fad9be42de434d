import { checkPlan } from '../../server/plan/check.ts';
import { instanceOf } from '../../server/plan/instance.ts';
import type { Instance } from '../../server/plan/instance.ts';
import { solve } from '../../server/plan/network/solve.ts';
import type { Solution } from '../../server/plan/network/network.ts';
import { busy } from './busy.ts';
import { layOut } from '../../server/plan/plan-desk.ts';
import { planOf } from '../../server/plan/plan-cards.ts';
import { FLOWS, gridOf, quadraticAssignment } from '../plan/nugent.ts';
import type { Figure } from './figure.ts';
import { annealed, greedy } from './plan-rivals.ts';
import { hasToulbar2, solveIndependently } from './plan-toulbar2.ts';
import { worldOf } from './plan-worlds.ts';
import type { WorldSize } from './plan-worlds.ts';

const SEEDS = Array.from({ length: 20 }, (_, at) => 2001 + at);
const COPIES: WorldSize = { designs: 12, copies: 2, slots: 6, cards: 15 };
const DISTINCT: WorldSize = { designs: 24, copies: 1, slots: 6, cards: 15 };
/** Worked through first and not counted, so that all that is counted runs warm. */
const WARMING = 1999;
/** Longest search of one world in milliseconds, so that the benchmark ends. */
const PATIENCE = 20_000;

interface Run {
  readonly instance: Instance;
  readonly solution: Solution;
  readonly tables: number;
  readonly search: number;
  readonly faults: readonly string[];
}

/** Each world is worked through twice and the quicker pass counts, so that the code is warm. */
function run(seed: number, size: WorldSize, patience = PATIENCE): Run {
  const passes = [0, 1].map(() => {
    const ask = worldOf(seed, size);
    const begin = busy();
    const instance = instanceOf(ask);
    const built = busy();
    const stop = built + patience;
    const solution = solve(instance.network, [], ask.seed, { until: () => busy() > stop });
    const done = busy();
    return { ask, instance, solution, tables: built - begin, search: done - built };
  });
  const [first, second] = passes as [(typeof passes)[0], (typeof passes)[0]];
  return {
    ...second,
    tables: Math.min(first.tables, second.tables),
    search: Math.min(first.search, second.search),
    faults: checkPlan(second.ask, planOf(second.instance, second.solution)),
  };
}

export function copiesFigures(): Figure[] {
  run(WARMING, COPIES);
  const runs = SEEDS.map((seed) => run(seed, COPIES));
  const name = '12 designs x 2 copies, 6 slots, 15 cards';
  return [
    proven(name, runs),
    ...times(name, runs, { max: 100 }),
    faults(name, runs),
    ...independent(name, runs, null),
  ];
}

export function distinctFigures(): Figure[] {
  const runs = SEEDS.map((seed) => run(seed, DISTINCT));
  const name = '24 distinct sheets, 6 slots, 15 cards';
  return [
    proven(name, runs),
    ...times(name, runs, { median: 200, max: 500 }),
    faults(name, runs),
    ...rivals(name, runs),
    ...independent(name, runs, 5),
  ];
}

/** A batch that takes every sheet of a small pad: as many slots as sheets. */
export function wholePadFigures(): Figure[] {
  const runs = SEEDS.map((seed) => run(seed, { designs: 12, copies: 1, slots: 12, cards: 12 }));
  const name = '12 distinct sheets, 12 slots, 12 cards';
  return [proven(name, runs), ...times(name, runs, {}), faults(name, runs)];
}

export function largeFigures(): Figure[] {
  const seeds = SEEDS.slice(0, 10);
  const copies = seeds.map((seed) => run(seed, { designs: 24, copies: 2, slots: 8, cards: 24 }));
  const some = '24 designs x 2 copies, 8 slots, 24 cards';
  const size = { designs: 48, copies: 1, slots: 8, cards: 24 };
  const quick = seeds.map((seed) => run(seed, size, 1000));
  const long = quick.map((one, at) => (one.solution.proven ? one : run(seeds[at]!, size)));
  const all = '48 distinct sheets, 8 slots, 24 cards';
  const behind = quick.map(
    ({ solution }, at) =>
      100 * (1 - solution.value / Math.max(long[at]!.solution.bound, solution.value)),
  );
  return [
    proven(some, copies),
    ...times(some, copies, { max: 1500 }),
    faults(some, copies),
    {
      name: `${all}: behind the optimum (or its bound) after 1 s of search, worst`,
      value: Math.max(...behind),
      unit: '%',
      bar: { at: 'most', value: 0.5 },
      note: `${quick.filter(({ solution }) => solution.proven).length} of ${quick.length} proven within that second`,
    },
    proven(all, long),
    ...times(all, long, { max: PATIENCE }),
    faults(all, long),
  ];
}

/** The quadratic assignment problem nug12 of QAPLIB, whose optimum is 578: as hard as twelve slots get. */
export function publishedFigures(): Figure[] {
  const begin = busy();
  const network = quadraticAssignment(FLOWS, gridOf(3, 4));
  const { value, proven } = solve(network, [], 1, { until: () => busy() > begin + PATIENCE });
  return [
    {
      name: 'nug12, a published quadratic assignment problem of 12 slots: cost found (optimum 578)',
      value: -value,
      unit: '',
      bar: { at: 'most', value: 578 },
      note: `${proven ? 'proven' : 'not proven'} in ${((busy() - begin) / 1000).toFixed(1)} s`,
    },
  ];
}

/** The pin of one card moves to another sheet; tables of the other cards are kept. */
export function pinFigures(): Figure[] {
  const took = SEEDS.map((seed) => {
    const ask = worldOf(seed, DISTINCT);
    const desk = layOut(ask);
    const [card] = ask.cards;
    const layer = card!.layout.layers.find(({ material }) => material === 'patterned')!;
    const sheet = ask.pad.sheets[seed % 24]!.id;
    return Math.min(
      ...[0, 1].map(() => {
        const begin = busy();
        desk.change({ pins: [{ card: 1, layer: layer.id, sheet }] });
        return busy() - begin;
      }),
    );
  });
  return [
    {
      name: 'a changed pin on 24 sheets, 6 slots, 15 cards, solved again: median',
      value: median(took),
      unit: 'ms',
      bar: { at: 'most', value: 50 },
      note: `${took.length} seeds, slowest ${Math.max(...took).toFixed(0)} ms`,
    },
  ];
}

function proven(name: string, runs: readonly Run[]): Figure {
  return {
    name: `${name}: proven best`,
    value: runs.filter(({ solution }) => solution.proven).length,
    unit: `of ${runs.length}`,
    bar: { at: 'least', value: runs.length },
    note: `nodes, median: ${median(runs.map(({ solution }) => solution.steps))}`,
  };
}

function times(
  name: string,
  runs: readonly Run[],
  bars: { median?: number; max?: number },
): Figure[] {
  const search = runs.map((one) => one.search);
  const most = (value: number | undefined): Figure['bar'] =>
    value === undefined ? null : { at: 'most', value };
  return [
    {
      name: `${name}: search, median`,
      value: median(search),
      unit: 'ms',
      bar: most(bars.median),
      note: 'processor time, the quicker of two passes; the score tables come before and stand below',
    },
    {
      name: `${name}: search, slowest`,
      value: Math.max(...search),
      unit: 'ms',
      bar: most(bars.max),
    },
    {
      name: `${name}: what she waits for, score tables and search, median`,
      value: median(runs.map((one) => one.tables + one.search)),
      unit: 'ms',
      bar: null,
      note: `score tables from palettes and layouts alone: ${median(runs.map((one) => one.tables)).toFixed(0)} ms`,
    },
  ];
}

function faults(name: string, runs: readonly Run[]): Figure {
  return {
    name: `${name}: faults found by the checker`,
    value: runs.reduce((sum, one) => sum + one.faults.length, 0),
    unit: '',
    bar: { at: 'most', value: 0 },
  };
}

/** Greedy, and simulated annealing for as long as the proof took (50 ms at least). */
function rivals(name: string, runs: readonly Run[]): Figure[] {
  const byGreed = runs.map(({ instance }) => greedy(instance.network));
  const byHeat = runs.map(({ instance, search }, at) =>
    annealed(instance.network, at + 1, Math.max(50, search)),
  );
  const behind = (values: readonly number[]): string =>
    `${(100 * Math.max(...values.map((value, at) => 1 - value / runs[at]!.solution.value))).toFixed(2)} % behind at worst`;
  const missed = (values: readonly number[]): number =>
    values.filter((value, at) => value < runs[at]!.solution.value - 1e-9).length;
  const above = [...byGreed, ...byHeat].filter(
    (value, at) => value > runs[at % runs.length]!.solution.value + 1e-9,
  ).length;
  return [
    {
      name: `${name}: a rival found more`,
      value: above,
      unit: 'times',
      bar: { at: 'most', value: 0 },
    },
    {
      name: `${name}: greedy misses the best plan`,
      value: missed(byGreed),
      unit: `of ${runs.length}`,
      bar: null,
      note: behind(byGreed),
    },
    {
      name: `${name}: simulated annealing with the same time misses it`,
      value: missed(byHeat),
      unit: `of ${runs.length}`,
      bar: null,
      note: behind(byHeat),
    },
  ];
}

function independent(name: string, runs: readonly Run[], bar: number | null): Figure[] {
  const figures = (equal: number, of: number, faster: number, note: string): Figure[] => [
    {
      name: `${name}: same optimum as an independent exact solver (toulbar2)`,
      value: equal,
      unit: `of ${runs.length}`,
      bar: { at: 'least', value: runs.length },
      note:
        of === runs.length
          ? 'costs in 1e-7'
          : `costs in 1e-7; ${runs.length - of} were not compared, as the time for it was over`,
    },
    {
      name: `${name}: times faster than it, median`,
      value: faster,
      unit: 'times',
      bar: bar === null ? null : { at: 'least', value: bar },
      note,
    },
  ];
  if (!hasToulbar2()) return figures(NaN, runs.length, NaN, 'skipped: toulbar2 is not installed');
  const end = performance.now() + COMPARING;
  const ratios: number[] = [];
  let equal = 0;
  for (const { instance, solution, search } of runs) {
    if (performance.now() > end) break;
    const other = solveIndependently(instance.network);
    if (Math.abs(other.value - solution.value) <= other.rounding) equal++;
    ratios.push(other.milliseconds / search);
  }
  return figures(
    equal,
    ratios.length,
    median(ratios),
    `its own stated time, without reading the file, against our search; least ${Math.min(...ratios).toFixed(1)}`,
  );
}

/** After so many milliseconds no further world is handed to the independent solver: its files are large. */
const COMPARING = 600_000;

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length / 2;
  return sorted.length % 2 === 1
    ? sorted[Math.floor(half)]!
    : (sorted[half - 1]! + sorted[half]!) / 2;
}
