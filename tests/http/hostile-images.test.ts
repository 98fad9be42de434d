import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, test } from 'vitest';
import { openDesk } from '../../server/photo-desk.ts';
import { openMutations } from '../images/mutations.ts';
import { newFolder } from '../store/folder.ts';
import { fakeDesk, papers, photoOf } from './fake-desk.ts';
import { ask, mount, newPad, padAt, problemIn, sendForm } from './mount.ts';
import type { Mounted } from './mount.ts';

/** Malformed and hostile pictures that lie beside the project where there are any. */
const BAD = fileURLToPath(new URL('../../../shared/bad-images', import.meta.url));
const there = existsSync(BAD);

function send(service: Mounted, pad: string, bytes: Buffer, name: string): ReturnType<typeof ask> {
  return sendForm(service, `/api/pads/${pad}/photos`, [
    ['side', 'front'],
    ['arrangement', name.replace(/[^\w.-]/g, '_').slice(0, 60)],
    ['photo', bytes, name],
  ]);
}

/** A damaged HEIC of 1.4 kB, for which libheif asks for more memory than it can have. */
const ASKS_FOR_TOO_MUCH = 1865;

describe('hostile pictures', () => {
  const desk = openDesk();
  afterAll(() => desk.close());

  test('two hundred damaged ones of every format are read or refused in words, and the service goes on', async () => {
    const folder = await newFolder();
    const service = await mount(folder, desk);
    const pad = await newPad(service);
    const mutations = await openMutations(100);
    expect(mutations.formats).toEqual(expect.arrayContaining(['JPEG', 'PNG', 'WebP', 'HEIC']));
    const kinds = new Set<string>();
    const numbers = [...Array.from({ length: 200 }, (_, at) => at + 1), ASKS_FOR_TOO_MUCH];
    for (const number of numbers) {
      const name = `damaged-${number}`;
      const answer = await send(service, pad, Buffer.from(mutations.at(number)), name);
      if (answer.statusCode === 201) continue;
      const { type, status, mend } = problemIn(answer);
      kinds.add(type);
      expect([name, status >= 400 && status < 500, mend]).toEqual([name, true, expect.any(String)]);
    }
    expect(kinds).toContain('/problems/too-large');
    // Some were still pictures and were looked through for sheets, some were none any more.
    expect([...kinds]).toEqual(
      expect.arrayContaining(['/problems/nothing-found', '/problems/not-a-photo']),
    );
    expect(await readdir(join(folder, 'incoming'))).toEqual([]);
    expect((await ask(service, 'GET', '/api/health')).statusCode).toBe(200);
  });

  test.skipIf(!there)(
    'each made one is refused in words within its time, and the service goes on',
    async () => {
      const folder = await newFolder();
      const service = await mount(folder, desk);
      const pad = await newPad(service);
      const names = readdirSync(join(BAD, 'generated')).filter((name) => name !== 'manifest.json');
      for (const name of names) {
        const bytes = readFileSync(join(BAD, 'generated', name));
        const answer = await send(service, pad, bytes, name);
        expect([name, answer.statusCode >= 400 && answer.statusCode < 500]).toEqual([name, true]);
        expect(problemIn(answer).mend).toMatch(/\w/);
      }
      expect(names.length).toBeGreaterThan(30);
      expect((await padAt(service, pad)).photos).toEqual([]);
      expect(await readdir(join(folder, 'incoming'))).toEqual([]);
      expect((await ask(service, 'GET', '/api/health')).statusCode).toBe(200);
    },
  );
});

describe('hostile file names', () => {
  const NAMES = ['../../etc/passwd.jpg', 'C:\\x.jpg', 'nul', 'a\u0000.jpg', '.htaccess', '-rf.jpg'];
  const MORE = ['photo\r\nSet-Cookie: x=1.jpg', '%2e%2e%2fx.jpg', '\u202egpj.exe', '__proto__', ''];
  const file = join(BAD, 'hostile-names.json');
  const names = there
    ? [...NAMES, ...MORE, ...(JSON.parse(readFileSync(file, 'utf8')) as string[])]
    : [...NAMES, ...MORE];

  test('none touches the file system; files are named by content alone', async () => {
    const folder = await newFolder();
    const service = await mount(folder, fakeDesk());
    const pad = await newPad(service);
    for (const [at, name] of names.entries()) {
      const photo = photoOf({ papers: papers(1, at) });
      const answer = await send(service, pad, photo, name.replace(/["\r\n]/g, '_'));
      expect([name, answer.statusCode < 500]).toEqual([name, true]);
    }
    const files = await readdir(folder, { recursive: true, withFileTypes: true });
    const kept = files
      .filter((entry) => entry.isFile() && entry.parentPath !== folder)
      .map((entry) => entry.name);
    expect(kept.length).toBeGreaterThan(names.length);
    for (const name of kept) expect(name).toMatch(/^[0-9a-f]{64}$/);
  });
});
