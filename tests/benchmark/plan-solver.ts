import { checkPlan } from '../../server/plan/check.ts';
import { instanceOf } from '../../server/plan/instance.ts';
import type { Instance } from '../../server/plan/instance.ts';
import { solve } from '../../server/plan/network/solve.ts';
import type { Solution } from '../../server/plan/network/network.ts';
import { layOut } from '../../server/plan/plan-desk.ts';
import { planOf } from '../../server/plan/plan-cards.ts';
import type { Figure } from './figure.ts';
import { annealed, greedy } from './plan-rivals.ts';
import { hasToulbar2, solveIndependently } from './plan-toulbar2.ts';
import { worldOf } from './plan-worlds.ts';
import type { WorldSize } from './plan-worlds.ts';

const SEEDS = Array.from({ length: 20 }, (_, at) => 2001 + at);

interface Run {
  readonly instance: Instance;
  readonly solution: Solution;
  readonly tables: number;
  readonly search: number;
  readonly faults: readonly string[];
}

/** Processor time of this process in milliseconds: what else the machine does is left out. */
function busy(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

/** Each world is worked through twice and the quicker pass counts, so that the code is warm. */
function run(seed: number, size: WorldSize, patience: number): Run {
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
  const runs = SEEDS.map((seed) =>
    run(seed, { designs: 12, copies: 2, slots: 6, cards: 15 }, 20_000),
  );
  const name = '12 designs x 2 copies, 6 slots, 15 cards';
  return [proven(name, runs), ...times(name, runs, { max: 100 }), faults(name, runs)];
}

export function distinctFigures(): Figure[] {
  const runs = SEEDS.map((seed) =>
    run(seed, { designs: 24, copies: 1, slots: 6, cards: 15 }, 20_000),
  );
  const name = '24 distinct sheets, 6 slots, 15 cards';
  return [
    proven(name, runs),
    ...times(name, runs, { median: 200, max: 500 }),
    faults(name, runs),
    ...rivals(name, runs),
    ...independent(name, runs),
  ];
}

export function largeFigures(): Figure[] {
  const seeds = SEEDS.slice(0, 5);
  const copies = seeds.map((seed) =>
    run(seed, { designs: 24, copies: 2, slots: 8, cards: 24 }, 20_000),
  );
  const some = '24 designs x 2 copies, 8 slots, 24 cards';
  const size = { designs: 48, copies: 1, slots: 8, cards: 24 };
  const quick = seeds.map((seed) => run(seed, size, 1000));
  const long = seeds.map((seed) => run(seed, size, 20_000));
  const all = '48 distinct sheets, 8 slots, 24 cards';
  const behind = quick.map(
    ({ solution }, at) =>
      100 * (1 - solution.value / Math.max(long[at]!.solution.bound, solution.value)),
  );
  return [
    proven(some, copies),
    ...times(some, copies, { max: 1500 }),
    {
      name: `${all}: behind the bound after 1 s of search, worst`,
      value: Math.max(...behind),
      unit: '%',
      bar: { at: 'most', value: 0.5 },
      note: `${seeds.length} seeds, against the bound after 20 s`,
    },
    {
      name: `${all}: proven within 20 s of search`,
      value: long.filter(({ solution }) => solution.proven).length,
      unit: `of ${long.length}`,
      bar: null,
      note: `largest gap stated ${(100 * Math.max(...long.map(gap))).toFixed(3)} %`,
    },
    ...times(all, long, {}),
  ];
}

/** The pin of one card moves to another sheet; tables of the other cards are kept. */
export function pinFigures(): Figure[] {
  const took = SEEDS.map((seed) => {
    const ask = worldOf(seed, { designs: 24, copies: 1, slots: 6, cards: 15 });
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
      name: `${name}: score tables from palettes and layouts, median`,
      value: median(runs.map((one) => one.tables)),
      unit: 'ms',
      bar: null,
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

function rivals(name: string, runs: readonly Run[]): Figure[] {
  const byGreed = runs.map(({ instance }) => greedy(instance.network));
  const byHeat = runs.map(({ instance, search }, at) => annealed(instance.network, at + 1, search));
  const behind = (values: readonly number[]): string =>
    `${(100 * Math.max(...values.map((value, at) => 1 - value / runs[at]!.solution.value))).toFixed(2)} % behind at worst`;
  const missed = (values: readonly number[]): number =>
    values.filter((value, at) => value < runs[at]!.solution.value - 1e-9).length;
  const above = [...byGreed, ...byHeat].filter(
    (value, at) => value > runs[at % runs.length]!.solution.value + 1e-9,
  ).length;
  return [
    {
      name: `${name}: a rival with the same time found more`,
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

function independent(name: string, runs: readonly Run[]): Figure[] {
  const figures = (equal: number, faster: number, note: string): Figure[] => [
    {
      name: `${name}: same optimum as an independent exact solver (toulbar2)`,
      value: equal,
      unit: `of ${SOME}`,
      bar: { at: 'least', value: SOME },
      note,
    },
    {
      name: `${name}: times faster than it, median`,
      value: faster,
      unit: 'times',
      bar: { at: 'least', value: 5 },
      note,
    },
  ];
  if (!hasToulbar2()) return figures(NaN, NaN, 'skipped: toulbar2 is not installed');
  const compared = runs.slice(0, SOME).map((one) => {
    const other = solveIndependently(one.instance.network);
    const equal = Math.abs(other.value - one.solution.value) <= other.rounding;
    return { equal, ratio: other.milliseconds / one.search };
  });
  return figures(
    compared.filter(({ equal }) => equal).length,
    median(compared.map(({ ratio }) => ratio)),
    'its own stated processor time against ours; costs in 1e-7',
  );
}

/** Instances that are handed to the independent solver; it is slow on them. */
const SOME = 6;

function gap({ solution }: Run): number {
  return solution.bound / solution.value - 1;
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length / 2;
  return sorted.length % 2 === 1
    ? sorted[Math.floor(half)]!
    : (sorted[half - 1]! + sorted[half]!) / 2;
}
