/**
 * The trust benchmark: nothing lost, nothing fallen over.
 *
 *   npx tsx tests/benchmark/trust.ts [--quick] [--loop]
 *
 * Kills the service at random moments, throws mutated pictures at it, and lets many people at once send
 * 12-megapixel photos, and watches the event loop meanwhile (`--loop`: only that). Loopback only; bounded in count and time.
 */
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { killRounds } from '../http/kill-rounds.ts';
import { misses } from './figure.ts';
import type { Figure, Topic } from './figure.ts';
import { loadFigures } from './trust-load.ts';
import { loopFigures } from './trust-loop.ts';
import { mutationFigures } from './trust-mutations.ts';

interface Amounts {
  readonly kills: number;
  readonly mutations: number;
  readonly people: number;
}

const FULL: Amounts = { kills: 200, mutations: 10_000, people: 50 };
const QUICK: Amounts = { kills: 10, mutations: 300, people: 6 };

async function measure({ kills, mutations, people }: Amounts): Promise<Figure[]> {
  const photo = await readFile(
    fileURLToPath(new URL('../../sample-swatches/tidewrack-a-front.jpg', import.meta.url)),
  );
  const loop = await inFolder((folder) => loopFigures(folder, photo));
  if (process.argv.includes('--loop')) return loop;
  return [
    ...loop,
    ...(await inFolder((folder) => killFigures(folder, kills))),
    ...(await inFolder((folder) => mutationFigures(folder, photo, mutations))),
    ...(await inFolder((folder) => loadFigures(folder, photo, people))),
  ];
}

async function killFigures(folder: string, rounds: number): Promise<Figure[]> {
  const seed = 20260504;
  const { acknowledged, lost, halfSeen, failedStarts } = await killRounds(folder, rounds, seed);
  const note = `${rounds} kills, ${acknowledged} things acknowledged, seed ${seed}`;
  const none = { at: 'most', value: 0 } as const;
  return [
    { name: 'acknowledged things lost to kills', value: lost.length, unit: '', bar: none, note },
    { name: 'half-seen states after kills', value: halfSeen.length, unit: '', bar: none, note },
    { name: 'failed starts after kills', value: failedStarts, unit: '', bar: none, note },
  ];
}

async function inFolder(work: (folder: string) => Promise<Figure[]>): Promise<Figure[]> {
  const folder = await mkdtemp(join(tmpdir(), 'plyhue-trust-'));
  try {
    return await work(folder);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

export const trust: Topic = () => measure(process.argv.includes('--quick') ? QUICK : FULL);

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const figures = await trust();
  for (const { name, value, unit, bar, note } of figures)
    console.log(
      `${name}: ${value} ${unit}${bar === null ? '' : ` (bar: at ${bar.at} ${bar.value})`}  ${note ?? ''}`,
    );
  process.exit(figures.some(misses) ? 1 : 0);
}
