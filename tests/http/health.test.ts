/** What the service says of itself to whoever looks after it. */
import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { Writable } from 'node:stream';
import { describe, expect, onTestFinished, test } from 'vitest';
import { buildApp } from '../../server/app.ts';
import { newCode } from '../../server/http/keys.ts';
import type { Edges, Service } from '../../server/http/edges.ts';
import { HOUSE } from '../../server/store/asker.ts';
import { newFolder } from '../store/folder.ts';
import { fakeDesk, papers, photoOf } from './fake-desk.ts';
import { form } from './form.ts';
import { mount } from './mount.ts';

interface Health {
  readonly status: string;
  readonly live: boolean;
  readonly ready: boolean;
}

async function built(edges: Edges, more: Partial<Parameters<typeof buildApp>[1]> = {}) {
  const app = await buildApp(edges, { host: '127.0.0.1', page: 'no such folder', ...more });
  onTestFinished(() => app.close());
  return app;
}

async function health(app: Service, way = '/api/health'): Promise<[number, Health]> {
  const { statusCode, payload } = await app.inject({ url: way });
  return [statusCode, JSON.parse(payload) as Health];
}

describe('health', () => {
  test('while it starts: it lives, is not ready, and says what it does', async () => {
    const { edges } = await mount(await newFolder());
    const app = await built({ ...edges, doing: () => 'reading the demo pad' });
    const [code, said] = await health(app);
    expect([code, said]).toMatchObject([
      503,
      { status: 'starting', live: true, ready: false, doing: 'reading the demo pad' },
    ]);
    expect((await health(app, '/api/health/live'))[0]).toBe(200);
  });

  test('when database or files do not answer: it lives and is not ready', async () => {
    const { edges } = await mount(await newFolder());
    const store = { ...edges.store, answers: () => Promise.resolve(false) };
    const app = await built({ ...edges, store });
    const [code, said] = await health(app);
    expect([code, said]).toMatchObject([503, { status: 'failing', live: true, ready: false }]);
    expect((await health(app, '/api/health/live'))[0]).toBe(200);
  });
});

describe('health of a disk', () => {
  const full = Object.assign(new Error('no space left'), { code: 'ENOSPC' });

  test('that is full: it lives, is not ready and says why; it is tried once for many questions', async () => {
    const { edges } = await mount(await newFolder());
    let tried = 0;
    const receive = (): Promise<never> => {
      tried += 1;
      return Promise.reject(full);
    };
    const store = { ...edges.store, files: { ...edges.store.files, receive } };
    const app = await built({ ...edges, store });
    const answers = await Promise.all([health(app), health(app), health(app)]);
    for (const answer of answers)
      expect(answer).toMatchObject([
        503,
        { status: 'failing', live: true, ready: false, cannotSave: 'disk-full' },
      ]);
    expect(await health(app, '/api/health/live')).toMatchObject([200, { live: true }]);
    expect(tried).toBe(1);
    // What is there can be read all the same.
    expect((await app.inject({ url: '/api/pads' })).statusCode).toBe(200);
  });

  test('that takes what is written: it says so and leaves nothing behind', async () => {
    const folder = await newFolder();
    const { edges } = await mount(folder);
    const app = await built(edges);
    const [code, said] = await health(app);
    expect([code, said.status, 'cannotSave' in said]).toEqual([200, 'ok', false]);
    expect(await readdir(join(folder, 'incoming'))).toEqual([]);
  });

  test('that may not be written: told apart from a full one', async () => {
    const { edges } = await mount(await newFolder());
    const readOnly = Object.assign(new Error('read-only'), { code: 'EROFS' });
    const files = { ...edges.store.files, receive: () => Promise.reject(readOnly) };
    const app = await built({ ...edges, store: { ...edges.store, files } });
    expect(await health(app)).toMatchObject([503, { cannotSave: 'cannot-write' }]);
  });
});

describe('the log', () => {
  test('tells a fault as one JSON line, without names of pads, words of hers, keys or codes', async () => {
    const lines: string[] = [];
    const stream = new Writable({
      write: (piece: Buffer, _encoding, done) => {
        lines.push(...piece.toString().trim().split('\n'));
        done();
      },
    });
    const desk = { ...fakeDesk(), readSides: () => Promise.reject(new Error('out of order')) };
    const { edges } = await mount(await newFolder(), desk, '0.0.0.0');
    const app = await built(edges, { host: '0.0.0.0', logger: { level: 'warn', stream } });
    const { code } = await newCode(edges, { person: HOUSE, pad: null }, 'Ann’s laptop');
    const asked = { method: 'POST', url: '/api/keys', payload: { code } } as const;
    const cookie = String((await app.inject(asked)).headers['set-cookie']).split(';')[0]!;
    const sheetSize = { width: '6 in', height: '6 in' };
    const made = await app.inject({
      method: 'POST',
      url: '/api/pads',
      headers: { cookie },
      payload: { name: 'For Ann’s wedding', sheetSize },
    });
    const { id } = JSON.parse(made.payload) as { id: string };
    const { body, headers } = form([
      ['side', 'front'],
      ['arrangement', 'the bridesmaids’ table'],
      ['photo', photoOf({ papers: papers(2) }), 'ann-and-bob.jpg'],
    ]);
    const sent = await app.inject({
      method: 'POST',
      url: `/api/pads/${id}/photos`,
      headers: { ...headers, cookie },
      payload: body,
    });
    expect(sent.statusCode).toBe(500);
    expect(lines).toHaveLength(1);
    expect(JSON.parse(lines[0]!)).toMatchObject({ level: 50, err: { message: 'out of order' } });
    expect(lines.join()).not.toMatch(/ann|bob|wedding|bridesmaids/i);
    for (const secret of [code, cookie, cookie.split('=')[1]!])
      expect(lines.join()).not.toContain(secret);
  });
});
