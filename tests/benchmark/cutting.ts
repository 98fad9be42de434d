import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { checkScheme } from '../../server/cutting/check-scheme.ts';
import { cutScheme } from '../../server/cutting/cut-scheme.ts';
import { bestSheet } from './knapsack/best-sheet.ts';
import type { Market, Ware } from './knapsack/worth.ts';
import { workOn } from '../../server/cutting/lots.ts';
import { Oracle } from '../../server/cutting/oracle.ts';
import { packingsOf } from '../../server/cutting/packings.ts';
import type { Kind } from '../../server/cutting/packings.ts';
import type { Piece } from '../../server/cutting/piece.ts';
import { seeded } from '../../server/cutting/seeded.ts';
import { usualSettings } from '../../server/cutting/settings.ts';
import { INCH, units } from '../../server/lengths/length.ts';
import { parseSize } from '../../server/lengths/parse-size.ts';
import { Refusal } from '../../server/refusals/refusal.ts';
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

/**
 * Eleven pieces on a 6 in sheet to 1/16 in: cut apart by chance, then one of them a step too long, then all
 * narrower. Timed as a table of her own is settled: rules of thumb first, then the exact table; and by the
 * exact table alone.
 */
function singleSheets(): Figure[] {
  const rounds = 40;
  let [slowest, slowestTable, wrong] = [0, 0, 0];
  const judge = (kinds: readonly Kind[], fits: boolean): void => {
    const area = kinds.reduce((sum, kind) => sum + kind.width * kind.height, 0);
    const pieces = kinds.map(pieceOf);
    const settled = timed(() => comesOut(pieces));
    const tabled = timed(
      () => area <= 96 * 96 && packingsOf(kinds, 96, 96, 96 * 96 - area).fits(kinds.map(() => 1)),
    );
    slowest = Math.max(slowest, settled.milliseconds);
    slowestTable = Math.max(slowestTable, tabled.milliseconds);
    if (settled.value !== fits) wrong++;
    if (tabled.value !== fits) wrong++;
  };
  for (let round = 1; round <= rounds; round++) {
    const parts = wholeSheet(11, 96, seeded(round));
    const kindsBy = (change: (width: number, at: number) => number): Kind[] =>
      parts.map(([width, height], at) => ({
        width: change(width, at),
        height,
        turn: at % 2 === 0,
        count: 1,
      }));
    judge(
      kindsBy((width) => width),
      true,
    );
    judge(
      kindsBy((width, at) => width + (at === 0 ? 1 : 0)),
      false,
    );
    judge(
      kindsBy((width) => Math.max(1, width - 3)),
      true,
    );
  }
  const note = `${3 * rounds} sheets: full, overfull, about 87 % full`;
  return [
    {
      name: 'one sheet of 11 pieces settled, slowest',
      value: Math.round(slowest),
      unit: 'ms',
      bar: { at: 'most', value: 50 },
      note,
    },
    {
      name: 'the same by the exact table alone, slowest',
      value: Math.round(slowestTable),
      unit: 'ms',
      bar: null,
      note: 'the first few in a fresh process are the slowest, until its code is compiled',
    },
    {
      name: 'one sheet of 11 pieces settled wrongly',
      value: wrong,
      unit: '',
      bar: { at: 'most', value: 0 },
    },
  ];
}

function comesOut(pieces: readonly Piece[]): boolean {
  try {
    const work = workOn(pieces, parseSize('6 x 6 in'), ONE_SHEET);
    return new Oracle(work).settles(work.lots);
  } catch (fault) {
    // One piece alone is longer than the sheet.
    if (fault instanceof Refusal) return false;
    throw fault;
  }
}

const ONE_SHEET = { ...usualSettings('in'), apart: false };

function pieceOf({ width, height, turn }: Kind, at: number): Piece {
  return {
    id: `piece-${at}`,
    card: 1,
    layer: `layer-${at}`,
    role: 'panel',
    size: { width: units((width * INCH) / 16), height: units((height * INCH) / 16) },
    shape: { kind: 'rectangle' },
    paper: `layer-${at}`,
    keepUp: !turn,
  };
}

function timed<T>(act: () => T): { value: T; milliseconds: number } {
  const start = processorSeconds();
  const value = act();
  return { value, milliseconds: 1000 * (processorSeconds() - start) };
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
