import { spawn } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, onTestFinished, test } from 'vitest';
import type { Pad } from '../../server/contract/pads.ts';
import type { Upload } from '../../server/contract/uploads.ts';
import { openStore } from '../../server/store/open-store.ts';
import type { Shared } from '../../server/store/open-store.ts';
import { compiled } from '../compiled/compiled.ts';
import { form } from '../http/form.ts';
import { papers, photoOf } from '../http/fake-desk.ts';
import { newFolder } from '../store/folder.ts';
import { sharedPlace } from './place.ts';

/** Two processes, each with a folder of its own, over one database and one bucket. */
describe('two processes on one shared store', () => {
  const ended: (() => Promise<void>)[] = [];
  let [here, there, name] = [null!, null!, ''] as [Served, Served, string];
  const serve = async (desk: 'fake' | 'stuck' = 'fake'): Promise<Served> => {
    const [folder, place] = [await mkdtemp(join(tmpdir(), 'plyhue-')), await sharedPlace(name)];
    const served = await serveIn(folder, place!, desk);
    ended.push(async () => {
      await served.kill();
      await rm(folder, { recursive: true, force: true });
    });
    return served;
  };

  beforeAll(async () => {
    name = randomUUID();
    [here, there] = [await serve(), await serve()];
  });
  afterAll(() => Promise.all(ended.map((end) => end())));

  test('what one keeps, the other answers: pad, photo, swatch and plan', async () => {
    const pad = await here.newPad();
    await here.send(pad, 1);
    const seen = await there.get<Pad>(`/api/pads/${pad}`);
    expect(seen).toEqual(await here.get<Pad>(`/api/pads/${pad}`));
    expect(seen.sheets).toHaveLength(6);
    for (const { front } of seen.sheets) {
      const [one, other] = await Promise.all([
        here.bytes(front!.swatch),
        there.bytes(front!.swatch),
      ]);
      expect(other.equals(one)).toBe(true);
    }
  });

  test('the same photo sent to both at the same moment is one photo', async () => {
    const pad = await here.newPad();
    const sent = await Promise.all([here, there, here, there].map((each) => each.send(pad, 1)));
    expect(new Set(sent.map(({ photo }) => photo.id)).size).toBe(1);
    expect((await there.get<Pad>(`/api/pads/${pad}`)).sheets).toHaveLength(6);
  });

  test('a window open at one hears of a change made at the other (PostgreSQL, NOTIFY)', async () => {
    const pad = await here.newPad();
    const news = there.events(pad);
    expect(await news.next()).toMatchObject({ pad, revision: 1 });
    await here.send(pad, 1);
    expect(await news.next()).toMatchObject({ pad, revision: 2 });
    news.end();
  });

  test('one is killed again and again in the middle of uploads; nothing that was answered is lost', async () => {
    const pad = await here.newPad();
    const answered: string[] = [];
    for (let round = 0; round < 4; round += 1) {
      const doomed = await serve();
      const uploads = [0, 1, 2].map(async (at) => {
        const { photo } = await doomed.send(pad, 10 * round + at + 2);
        answered.push(photo.id);
      });
      const ended = Promise.allSettled(uploads);
      await pause(20 * round);
      await doomed.kill();
      await ended;
      // What was not answered is sent again, to the one that lives.
      const { photo } = await here.send(pad, 10 * round + 2);
      answered.push(photo.id);
    }
    const kept = await here.get<Pad>(`/api/pads/${pad}`);
    const ids = new Set(kept.photos.map(({ id }) => id));
    expect(answered.filter((id) => !ids.has(id))).toEqual([]);
    expect(answered.length).toBeGreaterThanOrEqual(4);
    const fresh = await serve();
    for (const { front } of kept.sheets)
      if (front !== null) expect((await fresh.bytes(front.swatch)).length).toBeGreaterThan(0);
  });

  test('what a killed process had taken in, acknowledged or not, the other reads', async () => {
    const pad = await here.newPad();
    const photosAt = async (served: Served): Promise<number> =>
      (await served.get<Pad>(`/api/pads/${pad}`)).photos.length;
    // It takes photos in and never comes to the end of reading one.
    const doomed = await serve('stuck');
    const unanswered = doomed.send(pad, 4).catch(() => null);
    // The row of the unanswered one is committed a moment after the photo has come in; a process that is too busy to
    // say that it lives may have lost it to another by the time this is looked at.
    await expect.poll(async () => (await doomed.waiting(name)) + (await photosAt(here))).toBe(1);
    // It is killed as soon as it has answered: the others may come to some of these before it does.
    const sent = await Promise.all([1, 2, 3].map((seed) => doomed.sendForLater(pad, seed)));
    await doomed.kill();
    expect(await unanswered).toBeNull();
    for (const { id } of sent)
      await expect
        .poll(async () => (await here.get<Upload>(`/api/uploads/${id}`)).state)
        .toBe('read');
    await expect.poll(() => photosAt(there)).toBe(4);
    const kept = await there.get<Pad>(`/api/pads/${pad}`);
    expect(kept.sheets).toHaveLength(4 * 6);
    expect(await doomed.waiting(name)).toBe(0);
  });

  test('two that take from the waiting photos at the same moment never take the same one (SKIP LOCKED)', async () => {
    const own = randomUUID();
    const [one, other] = await Promise.all([storeOn(own), storeOn(own)]);
    const now = new Date().toISOString();
    await one.write(async (records) => {
      for (let at = 0; at < 40; at++)
        await records.uploads.add(
          {
            id: `upload ${at}`,
            pad: 'a',
            face: 'front',
            arrangement: 'one',
            hash: String(at),
            file: String(at),
            size: 1,
            told: '{}',
            createdAt: now,
            acknowledged: true,
            photo: null,
            problem: null,
          },
          null,
        );
    });
    const claims = await Promise.all(
      Array.from({ length: 48 }, (_, at) => [one, other][at % 2]!.waiting.claim(now)),
    );
    const taken = claims.flatMap((claim) => (claim === null ? [] : [claim.id]));
    expect(new Set(taken).size).toBe(taken.length);
    // One that is being taken is skipped; it may then be the only one that is left, and is taken by who asks next.
    for (
      let claim = await one.waiting.claim(now);
      claim !== null;
      claim = await one.waiting.claim(now)
    )
      taken.push(claim.id);
    expect(new Set(taken).size).toBe(40);
    expect(taken).toHaveLength(40);
  });

  test('a hundred changes through two processes build on one another', async () => {
    const [one, other] = await Promise.all([storeOn(name), storeOn(name)]);
    const six = 6 * 8128;
    await one.write((records) =>
      records.pads.add({
        id: 'a',
        name: 'Pad',
        sheetSize: { width: six, height: six } as never,
        createdAt: '2026-01-02T03:04:05.000Z',
        revision: 1,
      }),
    );
    const changes = Array.from({ length: 100 }, (_, at) =>
      [one, other][at % 2]!.write(async (records) => {
        const pad = (await records.pads.at('a'))!;
        await records.pads.rename('a', `${pad.name}${at % 10}`);
      }),
    );
    await Promise.all(changes);
    const pad = (await other.read.pads.at('a'))!;
    expect(pad.revision).toBe(101);
    expect(pad.name).toHaveLength(3 + 100);
  });
});

async function storeOn(name: string): ReturnType<typeof openStore> {
  const store = await openStore(await newFolder(), await sharedPlace(name));
  onTestFinished(() => store.close());
  return store;
}

async function storeOnce<T>(
  name: string,
  look: (store: Awaited<ReturnType<typeof openStore>>) => Promise<T>,
): Promise<T> {
  const store = await openStore(await newFolder(), await sharedPlace(name));
  try {
    return await look(store);
  } finally {
    await store.close();
  }
}

interface Sent {
  readonly photo: { readonly id: string };
}

interface Served {
  newPad(): Promise<string>;
  send(pad: string, seed: number): Promise<Sent>;
  sendForLater(pad: string, seed: number): Promise<Upload>;
  /** How many photos wait in the store of that name. */
  waiting(name: string): Promise<number>;
  get<T>(way: string): Promise<T>;
  bytes(way: string): Promise<Buffer>;
  events(pad: string): { next(): Promise<unknown>; end(): void };
  kill(): Promise<void>;
}

/** A process that serves a shared place, with a folder of its own. */
async function serveIn(folder: string, place: Shared, desk: string): Promise<Served> {
  const script = compiled('tests/http/serve-to-be-killed.ts');
  const words = [folder, JSON.stringify(place)];
  const child = spawn(process.execPath, [script, ...words], {
    env: { ...process.env, DESK: desk },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const gone = new Promise<void>((resolve) => child.on('exit', () => resolve()));
  const kill = async (): Promise<void> => {
    child.kill('SIGKILL');
    await gone;
  };
  const address = await new Promise<string>((resolve, reject) => {
    child.stdout.once('data', (line: Buffer) => resolve(addressIn(line.toString())));
    child.on('exit', () => reject(new Error('The process ended before it served')));
  });

  const ask = async (way: string, init?: RequestInit): Promise<Response> => {
    const answer = await fetch(`${address}${way}`, init);
    if (!answer.ok) throw new Error(`${answer.status} ${await answer.text()}`);
    return answer;
  };
  const post = async <T>(
    way: string,
    body: string | Uint8Array<ArrayBuffer>,
    type: string,
  ): Promise<T> =>
    (await (
      await ask(way, { method: 'POST', body, headers: { 'content-type': type } })
    ).json()) as T;

  return {
    newPad: async () => {
      const wish = { name: 'Tidewrack', sheetSize: { width: '6 in', height: '6 in' } };
      return (await post<Pad>('/api/pads', JSON.stringify(wish), 'application/json')).id;
    },
    send: (pad, seed) => {
      const { body, type } = sixPapers(seed);
      return post(`/api/pads/${pad}/photos`, body, type);
    },
    sendForLater: async (pad, seed) => {
      const { body, type } = sixPapers(seed);
      const headers = { 'content-type': type, prefer: 'respond-async' };
      const answer = await ask(`/api/pads/${pad}/photos`, { method: 'POST', body, headers });
      expect(answer.status).toBe(202);
      return (await answer.json()) as Upload;
    },
    waiting: async (name) => (await storeOnce(name, (store) => store.waiting.held())).length,
    get: async <T>(way: string) => (await (await ask(way)).json()) as T,
    bytes: async (way) => Buffer.from(await (await ask(way)).arrayBuffer()),
    events: (pad) => eventsOf(`${address}/api/pads/${pad}/events`),
    kill,
  };
}

function sixPapers(seed: number): { body: Uint8Array<ArrayBuffer>; type: string } {
  const { body, headers } = form([
    ['side', 'front'],
    ['arrangement', `table ${seed}`],
    ['photo', photoOf({ papers: papers(6, seed) }), 'photo.jpg'],
  ]);
  return { body: new Uint8Array(body), type: headers['content-type']! };
}

/** It says its port when it serves. */
function addressIn(line: string): string {
  return `http://127.0.0.1:${(JSON.parse(line) as { port: number }).port}`;
}

/** The data of server-sent events, one after the other. */
function eventsOf(url: string): { next(): Promise<unknown>; end(): void } {
  const stop = new AbortController();
  onTestFinished(() => stop.abort());
  const lines = (async function* () {
    const answer = await fetch(url, { signal: stop.signal });
    let text = '';
    for await (const piece of answer.body!) {
      text += Buffer.from(piece).toString();
      const events = text.split('\n\n');
      text = events.pop()!;
      for (const event of events) {
        const data = /^data: (.*)$/m.exec(event)?.[1];
        if (data !== undefined) yield JSON.parse(data) as unknown;
      }
    }
  })();
  return {
    next: async (): Promise<unknown> => (await lines.next()).value,
    end: () => stop.abort(),
  };
}
