import { pack } from 'tar-stream';
import { expect, test } from 'vitest';
import { Refusal } from '../../server/refusals/refusal.ts';
import type { Files, Received } from '../../server/store/files.ts';
import { unpackArchive } from '../../server/store/pad-archive.ts';
import { tallyOf } from '../../server/store/pad-limits.ts';

const NOTHING = Buffer.from('{}');
const GIGABYTE = 2 ** 30;

/** Takes in files without keeping what is in them, and knows which are there. */
function countingFiles() {
  const there = new Set<Received>();
  const files: Pick<Files, 'receive' | 'drop'> = {
    receive: async (pieces) => {
      let size = 0;
      for await (const piece of pieces) size += piece.length;
      const received = { path: '', hash: 'a'.repeat(64), size };
      there.add(received);
      return received;
    },
    drop: (received) => {
      there.delete(received);
      return Promise.resolve();
    },
  };
  return { there, files: files as Files };
}

function archiveOf(names: readonly string[], sizes: Readonly<Record<string, number>> = {}) {
  const out = pack();
  for (const name of ['pad.json', ...names]) {
    if (sizes[name] === undefined) out.entry({ name }, NOTHING);
    // Only its header: a file of that size is refused before it is read.
    else out.entry({ name, size: sizes[name] }).write(NOTHING);
  }
  if (Object.keys(sizes).length === 0) out.finalize();
  return out as AsyncIterable<Uint8Array>;
}

const plansUpTo = (count: number): string[] =>
  Array.from({ length: count }, (_, at) => `plans/${at + 1}.json`);
const picturesUpTo = (count: number): string[] =>
  Array.from({ length: count }, () => `swatches/${'a'.repeat(64)}`);

async function refusalOf(work: () => unknown): Promise<Refusal> {
  try {
    await work();
  } catch (fault) {
    expect(fault).toBeInstanceOf(Refusal);
    return fault as Refusal;
  }
  throw new Error('Expected a refusal');
}

test('plans and pictures are counted apart: 5000 of each are taken', async () => {
  const { files } = countingFiles();
  const names = [...plansUpTo(5000), ...picturesUpTo(5000)];
  const { plans, files: pictures } = await unpackArchive(archiveOf(names), files);
  expect([plans.length, pictures.length]).toEqual([5000, 5000]);
});

test.each([
  ['a plan more', plansUpTo(5001), {}, 'at most 5000 plans'],
  ['a plan of five digits', ['plans/10000.json', ...plansUpTo(5000)], {}, 'at most 5000 plans'],
  ['a picture more', picturesUpTo(5001), {}, 'at most 5000 pictures'],
  ['a large plan', plansUpTo(1), { 'plans/1.json': 17 * 2 ** 20 }, 'larger than 16 MB'],
  ['large contents', [], { 'pad.json': 65 * 2 ** 20 }, 'at most 64 MB'],
  ['a large picture', ['photos/a'], { 'photos/a': 3 * GIGABYTE }, 'at most 2 GB'],
])('%s is refused with the true reason, and nothing stays', async (_, names, sizes, reason) => {
  const { there, files } = countingFiles();
  const refusal = await refusalOf(() => unpackArchive(archiveOf(names, sizes), files));
  expect(refusal).toMatchObject({ kind: 'too-large', field: 'file' });
  expect(refusal.message).toContain(reason);
  expect(refusal.mend).toContain('backup');
  expect(there.size).toBe(0);
});

test('all that a file holds is added up: contents, plans and pictures', async () => {
  const tally = tallyOf('pad');
  tally.contents(32 * 2 ** 20);
  for (let at = 0; at < 126; at++) tally.plan(8 * 2 ** 20);
  tally.picture(GIGABYTE - 16 * 2 ** 20);
  const refusal = await refusalOf(() => tally.picture(1));
  expect(refusal).toMatchObject({ kind: 'too-large', field: 'pad' });
  expect(refusal.message).toContain('at most 2 GB');
});
