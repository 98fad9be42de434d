/**
 * A process of its own that reads one photo of sheets again and again, by turns with a plain decode of the same file,
 * one thread each, and sends what each took. It is started compiled, as the service is.
 */
import { readFile } from 'node:fs/promises';
import { readColours } from '../../../server/colour/read-palette.ts';
import { openPhoto } from '../../../server/images/open-photo.ts';
import { sharp } from '../../../server/images/sharp.ts';
import { readPattern } from '../../../server/pattern/read-pattern.ts';
import { findThings } from '../../../server/photo/find-things.ts';
import { flattenThings } from '../../../server/photo/read-photo.ts';

/** Milliseconds of one round. The stages are those of the whole, which is timed by itself. */
export interface Round {
  readonly plain: number;
  readonly whole: number;
  /** Processor time of either, of all threads of the process. */
  readonly plainProcessor: number;
  readonly wholeProcessor: number;
  readonly stages: Readonly<Record<Stage, number>>;
}

export type Stage = 'opened' | 'found' | 'laid flat' | 'colours' | 'patterns';

export interface Timed {
  readonly rounds: readonly Round[];
  readonly sheets: number;
  /** The most memory that the process has held, in MB. */
  readonly peak: number;
}

const SHEET = { width: 152.4, height: 152.4 };
const SEED = 1;

if (process.send !== undefined) {
  const [file, rounds] = process.argv.slice(2);
  process.send(await timed(await readFile(file!), Number(rounds)));
  process.disconnect();
}

async function timed(jpeg: Uint8Array, count: number): Promise<Timed> {
  sharp.concurrency(1);
  const rounds: Round[] = [];
  let sheets = 0;
  for (let round = 0; round < count; round++) {
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
    const photo = await openPhoto(jpeg);
    took('opened');
    const ask = { look: 'sheets', sheetMillimetres: SHEET } as const;
    const found = findThings(photo, ask);
    took('found');
    const reading = flattenThings(photo, ask, found);
    took('laid flat');
    for (const sheet of reading.sheets) {
      const { palette, labels } = readColours(sheet.reading, sheet.error, SEED);
      took('colours');
      readPattern(sheet.reading, palette, sheet.millimetresPerPixel!, labels);
      took('patterns');
    }
    const whole = performance.now() - begun;
    const wholeProcessor = processorSince(wholeFrom);
    rounds.push({ plain, whole, plainProcessor, wholeProcessor, stages });
    sheets = reading.sheets.length;
  }
  return { rounds, sheets, peak: process.resourceUsage().maxRSS / 1024 };
}

function processorSince(from: NodeJS.CpuUsage): number {
  const { user, system } = process.cpuUsage(from);
  return (user + system) / 1000;
}
