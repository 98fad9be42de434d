/**
 * Memory stays flat: the service works for 30 minutes as a busy evening would have it, photos, pads, plans,
 * guides, listeners and wrong files, while its memory and open files are watched. Loopback only.
 *
 *   npm run bench soak             npx tsx tests/benchmark/soak.ts --minutes 3
 */
import { setTimeout as pause } from 'node:timers/promises';
import sharp from 'sharp';
import type { Plan } from '../../server/contract/plans.ts';
import { marked } from '../http/kill-rounds.ts';
import { alone, numberAfter } from './alone.ts';
import type { Figure, Topic } from './figure.ts';
import {
  inFolder,
  percentile,
  samplePhoto,
  sendPhoto,
  startPad,
  startService,
} from './running-service.ts';
import type { RunningService } from './running-service.ts';

/** Part of the time in which code is loaded and caches fill. */
const WARM = 1 / 6;
/** Pads that are kept at a time; the oldest one is deleted. */
const PADS = 4;

export const soak: Topic = () =>
  inFolder(async (folder) => {
    const minutes = numberAfter('--minutes') ?? 30;
    const service = await startService(folder);
    try {
      const photo = await sharp(await samplePhoto())
        .resize(1200)
        .jpeg()
        .toBuffer();
      const working = { until: performance.now() + minutes * 60_000 };
      const [watched, done] = await Promise.all([
        watch(service, working.until),
        work(service.address, photo, working.until),
      ]);
      return figuresOf(service, minutes, watched, done);
    } finally {
      await service.stop();
    }
  });

interface Moment {
  readonly megabytes: number;
  readonly openFiles: number;
}

async function watch(service: RunningService, until: number): Promise<Moment[]> {
  const moments: Moment[] = [];
  while (performance.now() < until) {
    moments.push({ megabytes: service.megabytes(), openFiles: service.openFiles() });
    await pause(5000);
  }
  return moments;
}

interface Done {
  photos: number;
  plans: number;
  reads: number;
  refused: number;
  /** Answers of 500 and broken connections. */
  faults: number;
}

async function work(address: string, photo: Uint8Array, until: number): Promise<Done> {
  const done: Done = { photos: 0, plans: 0, reads: 0, refused: 0, faults: 0 };
  const pads: string[] = [];
  for (let round = 0; performance.now() < until; round++) {
    const pad = await startPad(address);
    pads.push(pad);
    const listener = new AbortController();
    const listening = listen(`${address}/api/pads/${pad}/events`, listener.signal);
    for (const [at, bytes] of [marked(photo, round), photo.subarray(0, 5000)].entries()) {
      const { status } = await sendPhoto(address, pad, bytes, `evening ${round} ${at}`);
      if (status === 201) done.photos += 1;
      else if (status >= 400 && status < 500) done.refused += 1;
      else done.faults += 1;
    }
    const read = async (path: string): Promise<void> => {
      const answer = await fetch(`${address}${path}`);
      await answer.arrayBuffer();
      done.reads += 1;
      if (answer.status >= 500) done.faults += 1;
    };
    const planned = await fetch(`${address}/api/plans`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ pad, cards: [{ layout: 'one-paper-us', count: 3 }] }),
    });
    if (planned.status === 201) {
      done.plans += 1;
      const plan = (await planned.json()) as Plan;
      await read(plan.guide);
      for (const { picture } of plan.cards) await read(picture);
    }
    for (let at = 0; at < 60; at++) {
      await read(`/api/pads/${pads[at % pads.length]!}`);
      await read('/api/supplies');
      await pause(50);
    }
    listener.abort();
    await listening;
    if (pads.length > PADS)
      await fetch(`${address}/api/pads/${pads.shift()!}`, { method: 'DELETE' });
  }
  return done;
}

/** A window that stays open until it is closed. */
async function listen(url: string, signal: AbortSignal): Promise<void> {
  try {
    const answer = await fetch(url, { signal });
    const reader = answer.body!.getReader();
    while (!(await reader.read()).done);
  } catch (fault) {
    if (!signal.aborted) throw fault;
  }
}

function figuresOf(
  service: RunningService,
  minutes: number,
  watched: readonly Moment[],
  done: Done,
): Figure[] {
  const steady = watched.slice(Math.ceil(WARM * watched.length));
  const third = Math.floor(steady.length / 3);
  const middle = (moments: readonly Moment[], of: keyof Moment): number =>
    percentile(
      moments.map((moment) => moment[of]),
      0.5,
    );
  const [early, late] = [steady.slice(0, third), steady.slice(-third)];
  const [from, to] = [middle(early, 'megabytes'), middle(late, 'megabytes')];
  const { photos, plans, reads, refused, faults } = done;
  return [
    {
      name: `growth of memory over ${minutes} minutes, after warming up`,
      value: (100 * (to - from)) / from,
      unit: '%',
      bar: { at: 'most', value: 10 },
      note: `the service itself: ${from} MB in the first third, ${to} MB in the last (medians), most ${Math.max(...watched.map(({ megabytes }) => megabytes))} MB; ${photos} photos, ${refused} wrong files, ${plans} plans, ${reads} reads`,
    },
    {
      name: 'growth of open files',
      value: middle(late, 'openFiles') - middle(early, 'openFiles'),
      unit: '',
      bar: { at: 'most', value: 2 },
      note: `${middle(late, 'openFiles')} in the last third`,
    },
    {
      name: 'faults and broken connections in that time',
      value: faults + (service.alive() ? 0 : 1),
      unit: '',
      bar: { at: 'most', value: 0 },
    },
  ];
}

await alone(import.meta.url, soak);
