/** How long the whole analysis of a photo takes beside a plain decode of the same file. */
import { fork } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { sharp } from '../../server/images/sharp.ts';
import { compiled } from './compiled.ts';
import type { Figure } from './figure.ts';
import { fullTable } from './photos-cases.ts';
import { median } from './photos-match.ts';
import type { Round, Stage, Timed } from './timed/read-photo.ts';

/** Pictures, each of another table: how much there is to find, and on what, changes the time. */
const TABLES = 5;
/** A process is warm after some four photos; the median of a table's rounds is that of a warm one. */
const ROUNDS = 5;

/**
 * Both by turns in one process, one thread each: the ratio hardly feels what else the machine does. Each table has the
 * median of its rounds; the figure is the median of the tables.
 */
export async function timeFigures(first: number): Promise<Figure[]> {
  const jpegs: Uint8Array[] = [];
  for (let seed = first; seed < first + TABLES; seed++) jpegs.push((await fullTable(seed)).jpeg);
  const { rounds, peak } = await timedApart(jpegs);
  const tables = jpegs.map((_, table) => rounds.filter(({ photo }) => photo === table));
  const perTable = (took: (round: Round) => number): number[] =>
    tables.map((own) => median(own.map(took)));
  const row = (name: string, took: (round: Round) => number, note: string): Figure => {
    const each = perTable(took);
    const [least, most] = [Math.min(...each), Math.max(...each)];
    return {
      name: `time: ${name}`,
      value: median(each),
      unit: 'times',
      bar: null,
      note: `${least.toFixed(1)} to ${most.toFixed(1)} by table; ${note}`,
    };
  };
  const stage = (name: Stage, note: string): Figure =>
    row(`of this, ${name}`, ({ stages, plain }) => stages[name] / plain, note);
  const milliseconds = (took: (round: Round) => number): string =>
    median(perTable(took)).toFixed(0);
  const sheets = perTable((round) => round.sheets).reduce((sum, found) => sum + found, 0);
  const begin = rounds[0]!;
  return [
    {
      ...row(
        'analysis of twelve sheets in 12 megapixels over a plain decode',
        ({ whole, plain }) => whole / plain,
        `${TABLES} tables, the median of ${ROUNDS} rounds of each, most of them warm, compiled as shipped; ${milliseconds(({ whole }) => whole)} ms over ${milliseconds(({ plain }) => plain)} ms, ${sheets} of ${12 * TABLES} sheets found`,
      ),
      bar: { at: 'most', value: 2 },
    },
    row(
      'the same in processor time',
      ({ wholeProcessor, plainProcessor }) => wholeProcessor / plainProcessor,
      `${milliseconds(({ wholeProcessor }) => wholeProcessor)} ms; with what collects and compiles beside, but not with what else the machine does`,
    ),
    stage('opened', 'decoded, and shrunk for looking'),
    stage('found', 'the table, the sheets, their edges'),
    stage('laid flat', 'the light; pictures at 150 dots an inch and CIELAB for reading'),
    stage('colours', 'palettes, and the colour of each pixel'),
    stage('patterns', 'repeat, direction, busyness, outlines'),
    {
      name: 'time: the same for the first photo of a process',
      value: begin.whole / begin.plain,
      unit: 'times',
      bar: null,
      note: `${begin.whole.toFixed(0)} ms: the code is compiled on the way`,
    },
    {
      name: 'memory: a process that reads such photos, at its peak',
      value: peak,
      unit: 'MB',
      bar: null,
    },
    {
      name: 'memory: a process that reads one photo of 48 megapixels, at its peak',
      value: (await timedApart([await enlarged(jpegs[0]!)], 1)).peak,
      unit: 'MB',
      bar: null,
      note: 'the process of one photo may hold 1536 MB in the service',
    },
  ];
}

/** The same picture with twice as many pixels a side, as a phone's 48 megapixels are. */
async function enlarged(jpeg: Uint8Array): Promise<Uint8Array> {
  const { width, height } = await sharp(jpeg).metadata();
  return sharp(jpeg)
    .resize(2 * width, 2 * height)
    .jpeg({ quality: 92 })
    .toBuffer();
}

async function timedApart(jpegs: readonly Uint8Array[], rounds = ROUNDS): Promise<Timed> {
  const folder = mkdtempSync(join(tmpdir(), 'plyhue-timed-'));
  try {
    const files = jpegs.map((jpeg, at) => {
      const file = join(folder, `photo-${at}.jpg`);
      writeFileSync(file, jpeg);
      return file;
    });
    const script = await compiled('tests/benchmark/timed/read-photo.ts');
    const child = fork(script, [String(rounds), ...files], { execArgv: [] });
    return await new Promise<Timed>((resolve, reject) => {
      child.on('message', (message) => resolve(message as Timed));
      child.on('exit', () => reject(new Error('the process that reads the photos told nothing')));
    });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
