/** How long the whole analysis of a photo takes beside a plain decode of the same file. */
import sharp from 'sharp';
import type { Figure } from './figure.ts';
import { fullTable } from './photos-cases.ts';
import { median } from './photos-match.ts';
import { sidesIn } from './photos-read.ts';

const ROUNDS = 3;

/** Both by turns in one run, one thread each: the ratio hardly feels what else the machine does. */
export async function timeFigures(seed: number): Promise<Figure[]> {
  const { jpeg, name } = await fullTable(seed);
  const threads = sharp.concurrency();
  sharp.concurrency(1);
  const ratios: number[] = [];
  const own: number[] = [];
  let sheets = 0;
  try {
    for (let round = 0; round < ROUNDS; round++) {
      const plain = await timed(() => sharp(jpeg).raw().toBuffer());
      const whole = await timed(async () => {
        sheets = (await sidesIn(jpeg, name)).sides.length;
      });
      ratios.push(whole / plain);
      own.push(whole);
    }
  } finally {
    sharp.concurrency(threads);
  }
  return [
    {
      name: 'time: analysis of twelve sheets in 12 megapixels over a plain decode',
      value: median(ratios),
      unit: 'times',
      bar: { at: 'most', value: 2 },
      // The first round also warms the machine up; the median leaves it out.
      note: `median of ${ROUNDS}; ${median(own).toFixed(0)} ms, ${sheets} sheets found`,
    },
  ];
}

async function timed(work: () => Promise<unknown>): Promise<number> {
  const start = performance.now();
  await work();
  return performance.now() - start;
}
