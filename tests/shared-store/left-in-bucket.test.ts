import { randomBytes } from 'node:crypto';
import { expect, test } from 'vitest';
import { once } from '../../server/store/once.ts';
import { sweepWaiting } from '../../server/store/sweep.ts';
import { newFolder, openForTest } from '../store/folder.ts';
import { pad } from '../store/pad-row.ts';

test('a photo in the bucket that waits for nothing goes when it is old; one that waits, and a young one, stay', async () => {
  const store = await openForTest(await newFolder());
  const { files, waiting } = store;
  const [left, waits] = await Promise.all(
    ['left by a process that died', 'of a pad that is there'].map(async (words) => {
      const received = await files.receive(once(Buffer.from(words)));
      return { hash: received.hash, file: await files.hold(received) };
    }),
  );
  await store.write(async (records) => {
    await records.pads.add(pad('a'));
    await records.uploads.add(
      {
        id: randomBytes(6).toString('hex'),
        pad: 'a',
        face: 'front',
        arrangement: 'one',
        ...waits!,
        size: 22,
        told: '{}',
        createdAt: '2026-01-02T03:04:05.000Z',
        acknowledged: false,
        photo: null,
        problem: null,
      },
      null,
    );
  });
  const day = 86_400_000;
  expect(await sweepWaiting(waiting, files, new Date(Date.now() - day))).toBe(0);
  expect((await files.held(left!.file, left!.hash)).size).toBe(27);
  expect(await sweepWaiting(waiting, files, new Date(Date.now() + day))).toBe(1);
  await expect(files.held(left!.file, left!.hash)).rejects.toThrow(/no longer there/);
  expect((await files.held(waits!.file, waits!.hash)).size).toBe(22);
});
