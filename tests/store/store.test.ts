import { describe, expect, test } from 'vitest';
import type { SupplyRow } from '../../server/store/rows.ts';
import { newFolder, openForTest } from './folder.ts';
import { pad } from './pad-row.ts';

const INK: SupplyRow = {
  id: 'ink',
  kind: 'ink',
  name: 'Kelp ink 🖋',
  lab: { l: 41.25, a: -12.5, b: 7.125 },
  uncertainty: 1.5,
  photo: null,
  corners: null,
  sheets: null,
  demo: false,
  createdAt: '2026-01-02T03:04:05.000Z',
  revision: 1,
};

describe('a store', () => {
  test('gives back what was kept, also after it was closed and opened again', async () => {
    const folder = await newFolder();
    const store = await openForTest(folder);
    await store.write(async (records) => {
      await records.pads.add(pad('a'));
      await records.supplies.add(INK);
    });
    await store.close();
    const again = await openForTest(folder);
    expect(await again.read.pads.at('a')).toEqual(pad('a'));
    expect(await again.read.supplies.all()).toEqual([INK]);
  });

  test('keeps nothing of what holds a number that is none: it could not be read again', async () => {
    const store = await openForTest(await newFolder());
    for (const uncertainty of [NaN, Infinity]) {
      const broken = store.write((records) => records.supplies.add({ ...INK, uncertainty }));
      await expect(broken).rejects.toThrow('finite number as uncertainty');
    }
    expect(await store.read.supplies.all()).toEqual([]);
  });

  test('keeps all of a transaction or none of it', async () => {
    const store = await openForTest(await newFolder());
    const broken = store.write(async (records) => {
      await records.pads.add(pad('a'));
      throw new Error('the power went');
    });
    await expect(broken).rejects.toThrow('the power went');
    expect(await store.read.pads.all()).toEqual([]);
  });

  test('lets a hundred writers at once stand in line; each change builds on the one before', async () => {
    const store = await openForTest(await newFolder());
    await store.write((records) => records.pads.add(pad('a')));
    await Promise.all(
      Array.from({ length: 100 }, () => store.write((records) => records.pads.touch('a'))),
    );
    expect((await store.read.pads.at('a'))?.revision).toBe(101);
  });

  test('a long transaction lets the event loop turn', async () => {
    const store = await openForTest(await newFolder());
    let turned = false;
    const added = await store.write(async (records) => {
      setImmediate(() => (turned = true));
      let at = 0;
      while (!turned && at < 5000) await records.pads.add(pad(`pad ${at++}`));
      return at;
    });
    expect(added).toBeLessThan(5000);
  });

  test('a writer that fails does not hold up the next', async () => {
    const store = await openForTest(await newFolder());
    const failed = store.write(() => Promise.reject(new Error('no')));
    const next = store.write((records) => records.pads.add(pad('b')));
    await expect(failed).rejects.toThrow('no');
    await next;
    expect(await store.read.pads.all()).toHaveLength(1);
  });
});

describe('files', () => {
  // SHA-256 of 'abc': FIPS 180-4, example in NIST's SHA256 test values.
  const ABC = 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad';

  test('are named by the SHA-256 of their content', async () => {
    const { files } = await openForTest(await newFolder());
    expect(await files.keepBytes('photos', Buffer.from('abc'))).toBe(ABC);
    expect(String(await files.read('photos', ABC))).toBe('abc');
  });

  test('a stream that breaks leaves nothing behind', async () => {
    const folder = await newFolder();
    const { files } = await openForTest(folder);
    async function* broken(): AsyncGenerator<Uint8Array> {
      yield Buffer.from('first piece');
      throw new Error('the phone went out of reach');
    }
    await expect(files.receive(broken())).rejects.toThrow('out of reach');
    expect(await files.clearIncoming()).toBe(0);
  });

  test('no name from outside becomes a path', async () => {
    const folder = await newFolder();
    const { files } = await openForTest(folder);
    for (const name of ['../../etc/passwd', 'nul', `${ABC.slice(0, 63)}/`, ABC.toUpperCase()])
      expect(() => files.pathOf('photos', name)).toThrow(RangeError);
  });
});
