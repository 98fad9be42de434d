/** How long the whole analysis of a photo takes beside a plain decode of the same file. */
import { fork } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { compiled } from './compiled.ts';
import type { Figure } from './figure.ts';
import { fullTable } from './photos-cases.ts';
import { median } from './photos-match.ts';
import type { Round, Stage, Timed } from './timed/read-photo.ts';

/** A process is warm after some four photos; the median is that of a warm one. */
const ROUNDS = 9;

/** Both by turns in one process, one thread each: the ratio hardly feels what else the machine does. */
export async function timeFigures(seed: number): Promise<Figure[]> {
  const { rounds, sheets, peak } = await timedApart((await fullTable(seed)).jpeg);
  const times = (
    took: (round: Round) => number,
    over = ({ plain }: Round): number => plain,
  ): number => median(rounds.map((round) => took(round) / over(round)));
  const first = rounds[0]!;
  const stage = (name: Stage, note: string): Figure => ({
    name: `time: of this, ${name}`,
    value: times(({ stages }) => stages[name]),
    unit: 'times',
    bar: null,
    note,
  });
  return [
    {
      name: 'time: analysis of twelve sheets in 12 megapixels over a plain decode',
      value: times(({ whole }) => whole),
      unit: 'times',
      bar: { at: 'most', value: 2 },
      note: `median of ${ROUNDS} rounds, most of them warm, compiled as shipped; ${median(rounds.map(({ whole }) => whole)).toFixed(0)} ms over ${median(rounds.map(({ plain }) => plain)).toFixed(0)} ms, ${sheets} sheets found`,
    },
    {
      name: 'time: the same in processor time',
      value: times(
        ({ wholeProcessor }) => wholeProcessor,
        ({ plainProcessor }) => plainProcessor,
      ),
      unit: 'times',
      bar: null,
      note: `${median(rounds.map(({ wholeProcessor }) => wholeProcessor)).toFixed(0)} ms; with what collects and compiles beside, but not with what else the machine does`,
    },
    stage('opened', 'decoded, and shrunk for looking'),
    stage('found', 'the table, the sheets, their edges'),
    stage('laid flat', 'the light; pictures at 150 dots an inch and CIELAB for reading'),
    stage('colours', 'palettes, and the colour of each pixel'),
    stage('patterns', 'repeat, direction, busyness, outlines'),
    {
      name: 'time: the same for the first photo of a process',
      value: first.whole / first.plain,
      unit: 'times',
      bar: null,
      note: `${first.whole.toFixed(0)} ms: the code is compiled on the way`,
    },
    {
      name: 'memory: a process that reads such photos, at its peak',
      value: peak,
      unit: 'MB',
      bar: null,
    },
  ];
}

async function timedApart(jpeg: Uint8Array): Promise<Timed> {
  const folder = mkdtempSync(join(tmpdir(), 'plyhue-timed-'));
  try {
    const file = join(folder, 'photo.jpg');
    writeFileSync(file, jpeg);
    const script = await compiled('tests/benchmark/timed/read-photo.ts');
    const child = fork(script, [file, String(ROUNDS)], { execArgv: [] });
    return await new Promise<Timed>((resolve, reject) => {
      child.on('message', (message) => resolve(message as Timed));
      child.on('exit', () => reject(new Error('the process that reads the photo told nothing')));
    });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
