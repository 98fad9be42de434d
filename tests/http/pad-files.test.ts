import { extract, pack } from 'tar-stream';
import { Readable } from 'node:stream';
import { describe, expect, test } from 'vitest';
import type * as Plans from '../../server/contract/plans.ts';
import { newFolder } from '../store/folder.ts';
import { ask, filledPad, mount, newPlan, padAt, problemIn, valueOf } from './mount.ts';
import type { Mounted } from './mount.ts';

const TAR = { 'content-type': 'application/x-tar' };

describe('a pad moved to another computer as one file', () => {
  test('everything answers there as it did here: pad, swatches, photos, plan, guide', async () => {
    const { here, pad, plan, file } = await savedPad();
    const there = await mount(await newFolder());
    const answer = await bring(there, file);
    expect(answer.statusCode).toBe(201);
    expect(await padAt(there, pad.id)).toEqual(pad);
    const pictures = [
      ...pad.photos.map(({ picture }) => picture),
      ...pad.sheets.flatMap(({ front, back }) => [front!.swatch, back!.swatch]),
      plan.cards[0]!.picture,
      plan.guide,
    ];
    for (const picture of pictures) {
      const [one, other] = [await ask(here, 'GET', picture), await ask(there, 'GET', picture)];
      expect(one.statusCode).toBe(200);
      expect(other.rawPayload.equals(one.rawPayload)).toBe(true);
    }
    expect(valueOf(await ask(there, 'GET', `/api/plans/${plan.id}`))).toEqual(plan);
  });

  test('brought a second time it is refused and stays as it is', async () => {
    const { here, pad, file } = await savedPad();
    expect(problemIn(await bring(here, file))).toMatchObject({ status: 409, field: 'file' });
    expect(await padAt(here, pad.id)).toEqual(pad);
  });

  test.each([
    ['cut off in the middle', (file: Buffer) => file.subarray(0, file.length >> 1)],
    ['with one byte of a picture changed', changedPicture],
    ['that is no archive', () => Buffer.from('This is a letter, not a pad. '.repeat(60))],
    ['that is empty', () => Buffer.alloc(0)],
  ])('a file %s is refused and nothing of it stays', async (_how, spoil) => {
    const { pad, file } = await savedPad();
    await refused(spoil(file), pad.id);
  });

  test.each([
    ['a palette that is none', (doc: Doc) => void (doc.sides[0]!.palette = 'coral')],
    ['a pad without its name', (doc: Doc) => delete doc.pad.name],
    ['a picture that is not in it', (doc: Doc) => void (doc.sides[0]!.swatch = 'a'.repeat(64))],
    ['a path for a picture', (doc: Doc) => void (doc.photos[0]!.picture = '../../secret')],
    ['two sheets of one id', (doc: Doc) => void doc.sheets.push(doc.sheets[0]!)],
    ['a plan without cards', (doc: Doc) => void (doc.plans[0]!.batch = {})],
    ['a form of a later version', (doc: Doc) => void (doc.form = 'plyhue pad, form 99')],
  ])('a file with %s is refused and nothing of it stays', async (_what, spoil) => {
    const { pad, file } = await savedPad();
    await refused(await rewritten(file, spoil), pad.id);
  });

  test('a picture with a foreign name never reaches a path', async () => {
    const { file, pad } = await savedPad();
    await refused(await rewritten(file, () => undefined, '../outside'), pad.id);
  });
});

interface Doc {
  form: string;
  pad: Record<string, unknown>;
  photos: Record<string, unknown>[];
  sides: Record<string, unknown>[];
  sheets: Record<string, unknown>[];
  plans: Record<string, unknown>[];
}

async function savedPad() {
  const here = await mount(await newFolder());
  const pad = await filledPad(here);
  const plan: Plans.Plan = await newPlan(here, pad.id);
  const saved = await ask(here, 'GET', `/api/pads/${pad.id}/file`);
  expect(saved.statusCode).toBe(200);
  return { here, pad: await padAt(here, pad.id), plan, file: saved.rawPayload };
}

function bring(mounted: Mounted, file: Buffer): ReturnType<typeof ask> {
  return ask(mounted, 'POST', '/api/pad-files', file, TAR);
}

async function refused(file: Buffer, pad: string): Promise<void> {
  const there = await mount(await newFolder());
  expect(problemIn(await bring(there, file))).toMatchObject({ status: 400, field: 'file' });
  expect((await ask(there, 'GET', `/api/pads/${pad}`)).statusCode).toBe(404);
  expect(valueOf(await ask(there, 'GET', '/api/pads'))).toEqual({ pads: [] });
  expect(valueOf(await ask(there, 'GET', '/api/plans'))).toEqual({ plans: [] });
  expect(await there.edges.store.files.clearIncoming()).toBe(0);
}

/** The last picture begins after the last header that names one; its first byte is turned over. */
function changedPicture(file: Buffer): Buffer {
  const changed = Buffer.from(file);
  const at = changed.lastIndexOf('swatches/') + 512;
  changed[at]! ^= 0xff;
  return changed;
}

/** The archive with its contents changed by hand, and if asked with one more picture of that name. */
async function rewritten(file: Buffer, spoil: (doc: Doc) => void, more?: string): Promise<Buffer> {
  const out = pack();
  const source = Readable.from([file]).pipe(extract());
  for await (const entry of source) {
    let bytes = await whole(entry);
    if (entry.header.name === 'pad.json') {
      const doc = JSON.parse(bytes.toString()) as Doc;
      spoil(doc);
      bytes = Buffer.from(JSON.stringify(doc));
    }
    out.entry({ name: entry.header.name }, bytes);
  }
  if (more !== undefined) out.entry({ name: more }, 'anything');
  out.finalize();
  return whole(out);
}

async function whole(pieces: AsyncIterable<Uint8Array>): Promise<Buffer> {
  const all: Uint8Array[] = [];
  for await (const piece of pieces) all.push(piece);
  return Buffer.concat(all);
}
