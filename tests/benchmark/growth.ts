/**
 * Room to grow: photos per minute of one and of two processes over one PostgreSQL database and one S3 bucket,
 * each process reading one photo at a time. Loopback only.
 *
 *   npm run bench growth           npx tsx tests/benchmark/growth.ts --photos 2
 */
import { spawnSync } from 'node:child_process';
import { availableParallelism } from 'node:os';
import pg from 'pg';
import sharp from 'sharp';
import type { Pad } from '../../server/contract/pads.ts';
import { marked } from '../http/kill-rounds.ts';
import { postgresPrograms } from '../shared-store/postgres-programs.ts';
import { S3_KEY, startServers } from '../shared-store/servers.ts';
import { alone, numberAfter } from './alone.ts';
import type { Figure, Topic } from './figure.ts';
import { inFolder, samplePhoto, sendPhoto, startPad, startService } from './running-service.ts';
import type { RunningService } from './running-service.ts';

/** One and two processes take turns, so that both meet the same moods of the machine. */
const ROUNDS = 2;
const CHANGES = 200;

export const growth: Topic = async () => {
  const programs = postgresPrograms();
  if (programs === null)
    return [
      {
        name: 'photos per minute, two processes',
        value: Number.NaN,
        unit: '',
        bar: null,
        note: 'skipped, no PostgreSQL on this machine',
      },
    ];
  const servers = await startServers(programs);
  try {
    return await inFolder(async (folder) => {
      const place = await newDatabase(servers.database);
      const settings = {
        DATABASE_URL: place,
        PHOTOS_URL: `s3://plyhue/growth?endpoint=${encodeURIComponent(servers.endpoint)}`,
        AWS_ACCESS_KEY_ID: S3_KEY,
        AWS_SECRET_ACCESS_KEY: S3_KEY,
        PHOTO_PROCESSES: '1',
      };
      const pair = async (
        cores: readonly (number | null)[],
        work: (one: RunningService, other: RunningService) => Promise<Figure[]>,
      ): Promise<Figure[]> => {
        const [one, other] = await Promise.all(
          cores.map((core, at) => startService(`${folder}/${at} on ${core}`, settings, core)),
        );
        try {
          return await work(one!, other!);
        } finally {
          await Promise.all([one!.stop(), other!.stop()]);
        }
      };
      const shared = await pair([null, null], measure);
      return canHoldToCore() ? [...shared, ...(await pair([0, 1], measureHeld))] : shared;
    });
  } finally {
    await servers.stop();
  }
};

async function newDatabase(server: string): Promise<string> {
  const client = new pg.Client({ connectionString: `${server}postgres` });
  await client.connect();
  await client.query('create database growth');
  await client.end();
  return `${server}growth`;
}

function canHoldToCore(): boolean {
  return availableParallelism() >= 2 && spawnSync('taskset', ['--version']).status === 0;
}

interface Rates {
  readonly single: number;
  readonly double: number;
  readonly all: readonly Sending[];
  readonly note: string;
}

async function rates(one: RunningService, other: RunningService): Promise<Rates> {
  const photo = await sharp(await samplePhoto())
    .resize(4000, 3000, { fit: 'fill' })
    .jpeg()
    .toBuffer();
  const photos = numberAfter('--photos') ?? 8;
  await sendAll([one, other], photo, 2);
  const alone: Sending[] = [];
  const both: Sending[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    alone.push(await sendAll([one], photo, photos));
    both.push(await sendAll([one, other], photo, photos));
  }
  const note = `${ROUNDS * photos} photos of 12 megapixels, PHOTO_PROCESSES=1`;
  return { single: rateOf(alone), double: rateOf(both), all: [...alone, ...both], note };
}

/** Each process has a core: what a second machine of one core would add, less what the rest takes of both. */
async function measureHeld(one: RunningService, other: RunningService): Promise<Figure[]> {
  const { single, double, all, note } = await rates(one, other);
  return [
    {
      name: 'photos per minute, one process held to one core',
      value: single,
      unit: '',
      bar: null,
      note: `${note}; database, bucket and sender run where there is room`,
    },
    {
      name: 'photos per minute, two processes, each held to a core of its own',
      value: double,
      unit: '',
      bar: null,
      note: `${(double / single).toFixed(2)} times as many; database, bucket and sender take their part of both cores`,
    },
    {
      name: 'acknowledged photos that the other process does not show, each held to its core',
      value: all.reduce((sum, { unseen }) => sum + unseen, 0),
      unit: '',
      bar: { at: 'most', value: 0 },
    },
  ];
}

async function measure(one: RunningService, other: RunningService): Promise<Figure[]> {
  const { single, double, all, note } = await rates(one, other);
  const sent = all.reduce((sum, { count }) => sum + count, 0);
  const cost = all.reduce((sum, { processor }) => sum + processor, 0) / sent;
  const changes = await changesPerSecond(one, other);
  return [
    { name: 'photos per minute, one process', value: single, unit: '', bar: null, note },
    {
      name: 'photos per minute, two processes',
      value: double,
      unit: '',
      bar: null,
      note: `${(double / single).toFixed(2)} times as many; database, bucket and sender run on the same two cores`,
    },
    {
      name: 'processor time of a photo',
      value: cost,
      unit: 's',
      bar: null,
      note: `service and its processes; ${(60 / cost).toFixed(1)} photos a minute for each core that has nothing else to do`,
    },
    {
      name: 'acknowledged photos that the other process does not show',
      value: all.reduce((sum, { unseen }) => sum + unseen, 0),
      unit: '',
      bar: { at: 'most', value: 0 },
    },
    {
      name: 'changes per second through two processes',
      value: changes,
      unit: '',
      bar: null,
      note: `${CHANGES} renamings of a pad, each one writing transaction; they stand in one line in the database`,
    },
  ];
}

interface Sending {
  readonly count: number;
  readonly seconds: number;
  readonly processor: number;
  readonly unseen: number;
}

let made = 0;

/** Sends photos to services, each with two at a time so that none waits for the sender. */
async function sendAll(
  services: readonly RunningService[],
  photo: Uint8Array,
  count: number,
): Promise<Sending> {
  const pad = await startPad(services[0]!.address);
  const before = services.reduce((sum, service) => sum + service.processorSeconds(), 0);
  const start = performance.now();
  let [next, taken] = [0, 0];
  const sender = async ({ address }: RunningService): Promise<void> => {
    while (next++ < count) {
      const number = made++;
      const { status } = await sendPhoto(address, pad, marked(photo, number), `table ${number}`);
      if (status === 201) taken += 1;
    }
  };
  await Promise.all([...services, ...services].map(sender));
  const seconds = (performance.now() - start) / 1000;
  const after = services.reduce((sum, service) => sum + service.processorSeconds(), 0);
  const shown = await fetch(`${services.at(-1)!.address}/api/pads/${pad}`);
  const { photos } = (await shown.json()) as Pad;
  if (taken < count) throw new Error(`only ${taken} of ${count} photos were taken`);
  return { count, seconds, processor: after - before, unseen: taken - photos.length };
}

function rateOf(sendings: readonly Sending[]): number {
  const count = sendings.reduce((sum, sending) => sum + sending.count, 0);
  return (60 * count) / sendings.reduce((sum, { seconds }) => sum + seconds, 0);
}

async function changesPerSecond(one: RunningService, other: RunningService): Promise<number> {
  const pad = await startPad(one.address);
  const start = performance.now();
  const changer = async ({ address }: RunningService): Promise<void> => {
    for (let at = 0; at < CHANGES / 8; at++) {
      const answer = await fetch(`${address}/api/pads/${pad}`, {
        method: 'PATCH',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ name: `Pad ${at}` }),
      });
      if (!answer.ok) throw new Error(`${answer.status} ${await answer.text()}`);
      await answer.arrayBuffer();
    }
  };
  await Promise.all(Array.from({ length: 8 }, (_, at) => changer(at % 2 === 0 ? one : other)));
  return (1000 * CHANGES) / (performance.now() - start);
}

await alone(import.meta.url, growth);
