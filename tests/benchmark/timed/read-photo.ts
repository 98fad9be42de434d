/**
 * A process of its own that reads photos of sheets again and again, by turns with a plain decode of the same file,
 * one thread each, and sends what each took. It is started compiled, as the service is.
 */
import { readFile } from 'node:fs/promises';
import { readColours } from '../../../server/colour/read-palette.ts';
import { openPhoto } from '../../../server/images/open-photo.ts';
import { sharp } from '../../../server/images/sharp.ts';
import { readPattern } from '../../../server/pattern/read-pattern.ts';
import { findThings } from '../../../server/photo/find-things.ts';
import { flattenThings } from '../../../server/photo/read-photo.ts';

/** Milliseconds of one photo in one round. The stages are those of the whole, which is timed by itself. */
export interface Round {
  /** Which of the photos, from 0 on. */
  readonly photo: number;
  readonly sheets: number;
  readonly plain: number;
  readonly whole: number;
  /** Processor time of either, of all threads of the process. */
  readonly plainProcessor: number;
  readonly wholeProcessor: number;
  readonly stages: Readonly<Record<Stage, number>>;
}

export type Stage = 'opened' | 'found' | 'laid flat' | 'colours' | 'patterns';

export interface Timed {
  /** Round after round, the photos by turns. */
  readonly rounds: readonly Round[];
  /** The most memory that the process has held, in MB. */
  readonly peak: number;
}

const SHEET = { width: 152.4, height: 152.4 };
const SEED = 1;

if (process.send !== undefined) {
  const [count, ...files] = process.argv.slice(2);
  const jpegs = await Promise.all(files.map((file) => readFile(file)));
  sharp.concurrency(1);
  const rounds: Round[] = [];
  for (let round = 0; round < Number(count); round++)
    for (const [photo, jpeg] of jpegs.entries()) rounds.push(await timed(jpeg, photo));
  const told: Timed = { rounds, peak: process.resourceUsage().maxRSS / 1024 };
  process.send(told);
  process.disconnect();
}

async function timed(jpeg: Uint8Array, photo: number): Promise<Round> {
  const plainFrom = process.cpuUsage();
  const start = performance.now();
  await sharp(jpeg).raw().toBuffer();
  const plain = performance.now() - start;
  const plainProcessor = processorSince(plainFrom);
  const stages = { opened: 0, found: 0, 'laid flat': 0, colours: 0, patterns: 0 };
  const wholeFrom = process.cpuUsage();
  const begun = performance.now();
  let before = begun;
  const took = (stage: Stage): void => {
    const now = performance.now();
    stages[stage] += now - before;
    before = now;
  };
  const opened = await openPhoto(jpeg);
  took('opened');
  const ask = { look: 'sheets', sheetMillimetres: SHEET } as const;
  const found = findThings(opened, ask);
  took('found');
  const reading = flattenThings(opened, ask, found);
  took('laid flat');
  for (const sheet of reading.sheets) {
    const { palette, labels } = readColours(sheet.reading, sheet.error, SEED);
    took('colours');
    readPattern(sheet.reading, palette, sheet.millimetresPerPixel!, labels);
    took('patterns');
  }
  const whole = performance.now() - begun;
  const wholeProcessor = processorSince(wholeFrom);
  const sheets = reading.sheets.length;
  return { photo, sheets, plain, whole, plainProcessor, wholeProcessor, stages };
}

function processorSince(from: NodeJS.CpuUsage): number {
  const { user, system } = process.cpuUsage(from);
  return (user + system) / 1000;
}
