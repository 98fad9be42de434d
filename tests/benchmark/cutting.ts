import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { checkScheme } from '../../server/cutting/check-scheme.ts';
import { cutScheme } from '../../server/cutting/cut-scheme.ts';
import { bestSheet } from './knapsack/best-sheet.ts';
import type { Market, Ware } from './knapsack/worth.ts';
import { packingsOf } from '../../server/cutting/packings.ts';
import { seeded } from '../../server/cutting/seeded.ts';
import { parseSize } from '../../server/lengths/parse-size.ts';
import { randomBatch, sixSheets, wholeSheet } from '../cutting/drawn.ts';
import type { Figure, Topic } from './figure.ts';

/**
 * Cutting: the classic instances, single sheets, six full sheets, and the checker on random batches.
 * Times are of the processor, so that other work on the machine does not count.
 */
export const cutting: Topic = async () => [
  ...classics(),
  ...singleSheets(),
  ...fullSheets(0.95, 2, 10),
  ...fullSheets(0.97, 6, 10),
  ...fullSheets(1, 1, 4),
  randomBatches(10_000),
];

const SHARED = fileURLToPath(new URL('../../../shared/data/cutting/', import.meta.url));
const FAST = /^(gcut([1-9]|1[0-2])|cgcut[1-3])$/;

function classics(): Figure[] {
  const names = [
    'classics proven of 59',
    'gcut1-12 and cgcut1-3 proven of 15',
    'slowest of these 15',
    'classics above their published optimum',
  ];
  if (!existsSync(`${SHARED}optima.csv`))
    return names.map((name) => ({
      name,
      value: NaN,
      unit: '',
      bar: null,
      note: 'skipped: the shared instances are not here',
    }));
  const rows = readFileSync(`${SHARED}optima.csv`, 'utf8').trim().split('\n').slice(1).map(solved);
  const fast = rows.filter((row) => FAST.test(row.name));
  const met = rows.filter((row) => row.proven && row.value === row.optimum);
  const odd = rows
    .filter((row) => row.proven && row.value < row.optimum)
    .map(({ name, value, optimum }) => `${name} proven at ${value}, published ${optimum}`);
  const open = rows.filter((row) => !row.proven).map((row) => row.name);
  return [
    {
      name: names[0]!,
      value: met.length,
      unit: '',
      bar: { at: 'least', value: 52 },
      note: [
        'within 3 s of processor time each',
        ...odd,
        open.length > 0 ? `open: ${open.join(', ')}` : 'none open',
      ].join('; '),
    },
    {
      name: names[1]!,
      value: fast.filter((row) => met.includes(row)).length,
      unit: '',
      bar: { at: 'least', value: 15 },
    },
    {
      name: names[2]!,
      value: Math.max(...fast.map((row) => row.milliseconds)),
      unit: 'ms',
      bar: { at: 'most', value: 500 },
    },
    {
      name: names[3]!,
      value: rows.filter((row) => row.value > row.optimum).length,
      unit: '',
      bar: { at: 'most', value: 0 },
    },
  ];
}

interface Row {
  readonly name: string;
  readonly optimum: number;
  readonly value: number;
  readonly proven: boolean;
  readonly milliseconds: number;
}

function solved(line: string): Row {
  const [name, optimum] = line.split(',') as [string, string];
  const market = read(readFileSync(`${SHARED}instances/${name}`, 'utf8'));
  const start = processorSeconds();
  const { value, proven } = bestSheet(market, () => processorSeconds() - start > 3);
  const milliseconds = Math.round((processorSeconds() - start) * 1000);
  return { name, optimum: Number(optimum), value, proven, milliseconds };
}

/** Sheet width and height, number of wares, then width, height, value and copies of each. */
function read(text: string): Market {
  const [width = 0, height = 0, count = 0, ...rest] = text.trim().split(/\s+/).map(Number);
  const wares = Array.from({ length: count }, (_, at): Ware => {
    const [w = 0, h = 0, value = 0, most = 0] = rest.slice(4 * at, 4 * at + 4);
    return { width: w, height: h, value, most };
  });
  return {
    width,
    height,
    wares: wares.filter((ware) => ware.width <= width && ware.height <= height),
  };
}

/** Eleven pieces on a 6 in sheet to 1/16 in: cut apart by chance, then one of them a step too long. */
function singleSheets(): Figure[] {
  const rounds = 40;
  let [slowest, wrong] = [0, 0];
  for (let round = 1; round <= rounds; round++) {
    const parts = wholeSheet(11, 96, seeded(round));
    for (const tooLong of [false, true]) {
      const kinds = parts.map(([width, height], at) => ({
        width: width + (tooLong && at === 0 ? 1 : 0),
        height,
        turn: at % 2 === 0,
        count: 1,
      }));
      const area = kinds.reduce((sum, kind) => sum + kind.width * kind.height, 0);
      const start = processorSeconds();
      const fits =
        area <= 96 * 96 && packingsOf(kinds, 96, 96, 96 * 96 - area).fits(kinds.map(() => 1));
      slowest = Math.max(slowest, 1000 * (processorSeconds() - start));
      if (fits === tooLong) wrong++;
    }
    const smaller = parts.map(([width, height], at) => ({
      width: Math.max(1, width - 3),
      height,
      turn: at % 2 === 0,
      count: 1,
    }));
    const area = smaller.reduce((sum, kind) => sum + kind.width * kind.height, 0);
    const start = processorSeconds();
    if (!packingsOf(smaller, 96, 96, 96 * 96 - area).fits(smaller.map(() => 1))) wrong++;
    slowest = Math.max(slowest, 1000 * (processorSeconds() - start));
  }
  return [
    {
      name: 'one sheet of 11 pieces settled, slowest',
      value: Math.round(slowest),
      unit: 'ms',
      bar: { at: 'most', value: 50 },
      note: `${3 * rounds} sheets: full, overfull, about 87 % full`,
    },
    {
      name: 'one sheet of 11 pieces settled wrongly',
      value: wrong,
      unit: '',
      bar: { at: 'most', value: 0 },
    },
  ];
}

/** 40-60 pieces cut from six 6 x 6 in sheets on a 1/4 in grid, half of them with an up. */
function fullSheets(use: number, seconds: number, rounds: number): Figure[] {
  let [six, falselyProven, faults] = [0, 0, 0];
  for (let round = 1; round <= rounds; round++) {
    const pieces = sixSheets([40, 45, 50, 55, 60][round % 5]!, use, round);
    const start = processorSeconds();
    const settings = { ruler: 'in', keepUp: false, apart: false, seed: round, steps: 1e9 } as const;
    const scheme = cutScheme(pieces, parseSize('6 x 6 in'), {
      ...settings,
      until: () => processorSeconds() - start > seconds,
    });
    if (scheme.slots.length === 6) six++;
    if (scheme.proven && scheme.slots.length > 6) falselyProven++;
    faults += checkScheme(pieces, scheme, settings).length;
  }
  const percent = Math.round(use * 100);
  const note = `40-60 pieces, half with an up; ${seconds} s of processor time each; ${faults} faults`;
  return [
    {
      name: `six sheets at ${percent} % use, of ${rounds}`,
      value: six,
      unit: '',
      bar: use < 1 ? { at: 'least', value: rounds } : null,
      note,
    },
    {
      name: `falsely proven at ${percent} % use`,
      value: falselyProven,
      unit: '',
      bar: { at: 'most', value: 0 },
    },
  ];
}

/** Seconds of processor time this process has used. */
function processorSeconds(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
}

function randomBatches(count: number): Figure {
  let faults = 0;
  for (let seed = 1; seed <= count; seed++) {
    const { pieces, sheet, settings } = randomBatch(seed);
    faults += checkScheme(pieces, cutScheme(pieces, sheet, settings), settings).length;
  }
  return {
    name: 'faults found by the checker',
    value: faults,
    unit: '',
    bar: { at: 'most', value: 0 },
    note: `${count} random batches, with papers kept together and apart, and ups kept`,
  };
}
