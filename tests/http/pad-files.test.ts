import { createHash } from 'node:crypto';
import { extract, pack } from 'tar-stream';
import { Readable } from 'node:stream';
import { describe, expect, test, vi } from 'vitest';
import type { Pad } from '../../server/contract/pads.ts';
import type * as Plans from '../../server/contract/plans.ts';
import type { Edges } from '../../server/http/edges.ts';
import { padAsFile } from '../../server/http/save-pad.ts';
import { Refusal } from '../../server/refusals/refusal.ts';
import type { Records } from '../../server/store/records.ts';
import { newFolder } from '../store/folder.ts';
import { papers } from './fake-desk.ts';
import {
  ask,
  filledPad,
  mount,
  newPad,
  newPlan,
  padAt,
  problemIn,
  sendForm,
  valueOf,
} from './mount.ts';
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

  test('deleted and brought again it is never taken for what it was: revisions and plans go on', async () => {
    const { here, pad, plan, file } = await savedPad();
    const sheet = pad.sheets[0]!.id;
    const rename = (label: string): ReturnType<typeof ask> =>
      ask(here, 'PATCH', `/api/sheets/${sheet}`, { label });
    await rename('Before');
    const seen = await ask(here, 'GET', `/api/pads/${pad.id}`);
    expect(valueOf(await ask(here, 'GET', `/api/plans/${plan.id}`))).toEqual(plan);
    await ask(here, 'DELETE', `/api/pads/${pad.id}`);
    const other = await rewritten(file, (doc) => {
      doc.plans[0]!.createdAt = '2020-01-01T00:00:00.000Z';
    });
    expect((await bring(here, other)).statusCode).toBe(201);
    await rename('After');
    const tag = String(seen.headers.etag);
    const now = await ask(here, 'GET', `/api/pads/${pad.id}`, undefined, { 'if-none-match': tag });
    expect(now.statusCode).toBe(200);
    expect(valueOf<Pad>(now).sheets[0]!.label).toBe('After');
    // One more than the larger of the two, not their sum: it may be done as often as she likes.
    expect(valueOf<Pad>(now).revision).toBe(valueOf<Pad>(seen).revision + 2);
    expect(valueOf<Plans.Plan>(await ask(here, 'GET', `/api/plans/${plan.id}`)).createdAt).toBe(
      '2020-01-01T00:00:00.000Z',
    );
  });

  test('a photo that tells where it was taken arrives without the place, under the name of what is in it', async () => {
    const { file, pad } = await savedFile();
    const place = '<x:xmpmeta exif:GPSLatitude="51,30.785N"></x:xmpmeta>';
    const photo = Buffer.from(JSON.stringify({ papers: papers(2), note: place }));
    const hash = createHash('sha256').update(photo).digest('hex');
    const told = await rewritten(file, (doc) => void (doc.photos[0]!.hash = hash), {
      name: `photos/${hash}`,
      bytes: photo,
    });
    const there = await mount(await newFolder());
    expect((await bring(there, told)).statusCode).toBe(201);
    const { files, read } = there.edges.store;
    const hashes = (await read.photos.ofPad(pad.id)).map((row) => row.hash);
    expect(hashes).not.toContain(hash);
    for (const each of hashes) {
      const kept = await files.read('photos', each);
      expect(createHash('sha256').update(kept).digest('hex')).toBe(each);
      expect(kept.includes('GPSLatitude')).toBe(false);
    }
    expect((await files.hashesOn('photos')).sort()).toEqual([...hashes].sort());
  });

  test('what was done and kept travels with it: ticks, left-over parts, layouts of her own', async () => {
    const { here, pad } = await savedPad();
    const { layouts } = valueOf<{ layouts: { id: string }[] }>(
      await ask(here, 'GET', '/api/layouts'),
    );
    await ask(here, 'POST', '/api/layouts', { ...layouts[0]!, id: 'her-own' });
    await ask(here, 'POST', '/api/layouts', { ...layouts[0]!, id: 'not-used' });
    const cards = [{ layout: 'her-own', count: 2 }];
    const plan = valueOf<Plans.Plan>(await ask(here, 'POST', '/api/plans', { pad: pad.id, cards }));
    for (const step of ['slot-1-cut-1', 'slot-1-cut-2'])
      await ask(here, 'POST', `/api/plans/${plan.id}/ticks`, { step, done: true });
    await ask(here, 'POST', `/api/pads/${pad.id}/leftovers`, { plan: plan.id });
    const there = await mount(await newFolder());
    const { rawPayload } = await ask(here, 'GET', `/api/pads/${pad.id}/file`);
    expect((await bring(there, rawPayload)).statusCode).toBe(201);
    for (const way of [`plans/${plan.id}/ticks`, `pads/${pad.id}/leftovers`]) {
      const value = valueOf(await ask(here, 'GET', `/api/${way}`));
      expect(JSON.stringify(value)).toMatch(/cut-1|"size"/);
      expect(valueOf(await ask(there, 'GET', `/api/${way}`))).toEqual(value);
    }
    const own = valueOf<{ layouts: { id: string; origin: string }[] }>(
      await ask(there, 'GET', '/api/layouts'),
    ).layouts.filter(({ origin }) => origin === 'hers');
    expect(own.map(({ id }) => id)).toEqual(['her-own']);
    const again = await ask(there, 'POST', '/api/plans', { pad: pad.id, cards, from: plan.id });
    expect(again.statusCode).toBe(201);
  });

  test('a layout whose id is taken there stays behind; a file from before there were ticks is still read', async () => {
    const { pad, file } = await savedFile();
    const older = await rewritten(file, (doc) => {
      delete doc.ticks;
      delete doc.layouts;
    });
    expect((await bring(await mount(await newFolder()), older)).statusCode).toBe(201);
    const there = await mount(await newFolder());
    const { layouts } = valueOf<{ layouts: Record<string, unknown>[] }>(
      await ask(there, 'GET', '/api/layouts'),
    );
    const own = { ...layouts[0]!, id: 'her-own', name: 'Of this computer' };
    await ask(there, 'POST', '/api/layouts', own);
    const renamed = await rewritten(file, (doc) => {
      doc.layouts = [{ ...own, name: 'Of another' }];
    });
    expect((await bring(there, renamed)).statusCode).toBe(201);
    expect((await ask(there, 'GET', '/api/layouts')).payload).not.toContain('Of another');
    expect((await padAt(there, pad.id)).id).toBe(pad.id);
  });

  test('whether it can be saved is told without one picture or plan being packed', async () => {
    const { here, pad } = await savedPad();
    const { files } = here.edges.store;
    const read = vi.spyOn(files, 'read');
    const answer = await ask(here, 'HEAD', `/api/pads/${pad.id}/file`);
    expect(answer.statusCode).toBe(200);
    expect(answer.headers['content-type']).toBe('application/x-tar');
    expect(answer.rawPayload).toHaveLength(0);
    expect(read).not.toHaveBeenCalled();
    expect((await ask(here, 'HEAD', '/api/pads/none/file')).statusCode).toBe(404);
    await ask(here, 'GET', `/api/pads/${pad.id}/file`);
    expect(read).toHaveBeenCalled();
  });

  test('a photo travels without the place where it was taken', async () => {
    const here = await mount(await newFolder());
    const pad = await newPad(here);
    const place = '<x:xmpmeta exif:GPSLatitude="51,30.785N"></x:xmpmeta>';
    const scene = Buffer.from(JSON.stringify({ papers: papers(2), note: place }));
    const sent = await sendForm(here, `/api/pads/${pad}/photos`, [
      ['side', 'front'],
      ['arrangement', 'one'],
      ['photo', scene, 'photo.jpg'],
    ]);
    expect(sent.statusCode).toBe(201);
    const { rawPayload } = await ask(here, 'GET', `/api/pads/${pad}/file`);
    expect(rawPayload.includes('"papers":[{')).toBe(true);
    expect(rawPayload.includes('GPSLatitude')).toBe(false);
  });

  test('a file of the form before, with its plans in its contents, is still read', async () => {
    const { pad, plan, file } = await savedFile();
    const there = await mount(await newFolder());
    expect((await bring(there, await inForm1(file))).statusCode).toBe(201);
    expect(await padAt(there, pad.id)).toEqual(pad);
    expect(valueOf(await ask(there, 'GET', `/api/plans/${plan.id}`))).toEqual(plan);
  });

  test.each([
    ['more plans than a file may hold', { count: 5001, text: PLAN_TEXT }, 'at most 5000 plans'],
    ['a plan larger than may be', { count: 1, text: PLAN_TEXT.padEnd(2 ** 24 + 1) }, '16 MB'],
    ['more ticks than may be', { count: 5, text: PLAN_TEXT, ticks: 4001 }, 'steps that are ticked'],
  ])('one with %s is refused when it is saved', async (_what, many, reason) => {
    const { here, pad } = await savedPad();
    const refusal = await padAsFile(withPlans(here, many), pad.id).catch((fault: unknown) => fault);
    expect(refusal).toBeInstanceOf(Refusal);
    expect(refusal).toMatchObject({ kind: 'too-large', field: 'pad' });
    expect((refusal as Refusal).message).toContain(reason);
    expect((refusal as Refusal).mend).toMatch(/Delete plans.*backup/);
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
    const { pad, file } = await savedFile();
    await refused(spoil(file), pad.id);
  });

  test.each([
    ['a palette that is none', (doc: Doc) => void (doc.sides[0]!.palette = 'coral')],
    ['a pad without its name', (doc: Doc) => delete doc.pad.name],
    ['a picture that is not in it', (doc: Doc) => void (doc.sides[0]!.swatch = 'a'.repeat(64))],
    ['a path for a picture', (doc: Doc) => void (doc.photos[0]!.picture = '../../secret')],
    ['two sheets of one id', (doc: Doc) => void doc.sheets.push(doc.sheets[0]!)],
    ['a plan without cards', (doc: Doc) => void (doc.plans[0]!.batch = {})],
    ['a plan that is no object', (doc: Doc) => void (doc.plans[0] = 'plan' as never)],
    ['a plan of another pad', (doc: Doc) => void ((doc.plans[0]!.pad as Named).id = 'other')],
    ['a plan asked of another', (doc: Doc) => void ((doc.plans[0]!.asked as Asked).pad = 'other')],
    ['ticks that are none', (doc: Doc) => void (doc.ticks = { plan: 'all' })],
    ['a layout that cannot be made', (doc: Doc) => void (doc.layouts = [CROOKED])],
    ['a revision that no number can count on', (doc: Doc) => void (doc.pad.revision = 2 ** 53 - 1)],
    ['a photo of such a revision', (doc: Doc) => void (doc.photos[0]!.revision = 2 ** 53 - 1)],
    ['a side of such a revision', (doc: Doc) => void (doc.sides[0]!.revision = 1_000_000_001)],
    ['a sheet of no revision', (doc: Doc) => void (doc.sheets[0]!.revision = 0)],
    ['a form of a later version', (doc: Doc) => void (doc.form = 'plyhue pad, form 99')],
  ])('a file with %s is refused and nothing of it stays', async (_what, spoil) => {
    const { pad, file } = await savedFile();
    await refused(await rewritten(file, spoil), pad.id);
  });

  test('a picture with a foreign name never reaches a path', async () => {
    const { file, pad } = await savedFile();
    await refused(
      await rewritten(file, () => undefined, { name: '../outside', bytes: ANYTHING }),
      pad.id,
    );
  });
});

const PLAN_TEXT = '{"asked":{"cards":[]}}';

/** The same service as if the pad had so many plans of that text, each with so many steps ticked off. */
function withPlans(
  { edges }: Mounted,
  { count, text, ticks = 0 }: { count: number; text: string; ticks?: number },
): Edges {
  const { read } = edges.store;
  const steps = Array.from({ length: ticks }, (_, at) => `step-${at}`);
  const plans: Records['plans'] = {
    ...read.plans,
    ofPad: async (pad) => {
      const [plan] = await read.plans.ofPad(pad);
      return Array.from({ length: count }, (_, at) => ({ ...plan!, id: `plan-${at}` }));
    },
    textAt: () => Promise.resolve(text),
    ticks: () => Promise.resolve(steps),
  };
  return { ...edges, store: { ...edges.store, read: { ...read, plans } } };
}

const ANYTHING = Buffer.from('anything');

/** Its only layer lies beside the card. */
const CROOKED = {
  id: 'crooked',
  name: 'Crooked',
  card: { width: '4 1/4 in', height: '5 1/2 in' },
  fold: {
    kind: 'none',
    flat: { width: '4 1/4 in', height: '5 1/2 in' },
    scores: [],
    scoreFrom: 'left',
  },
  layers: [
    {
      id: 'panel',
      role: 'panel',
      material: 'patterned',
      box: { x: '9 in', y: '9 in', width: '4 in', height: '5 1/4 in' },
      shape: { kind: 'rectangle' },
      paper: 'a',
    },
  ],
};

interface Named {
  id: string;
}

interface Asked {
  pad: string;
}

interface Doc {
  form: string;
  pad: Record<string, unknown>;
  photos: Record<string, unknown>[];
  sides: Record<string, unknown>[];
  sheets: Record<string, unknown>[];
  plans: Record<string, unknown>[];
  ticks?: unknown;
  layouts?: unknown;
}

async function savedPad() {
  const here = await mount(await newFolder());
  const pad = await filledPad(here);
  const plan: Plans.Plan = await newPlan(here, pad.id);
  const saved = await ask(here, 'GET', `/api/pads/${pad.id}/file`);
  expect(saved.statusCode).toBe(200);
  return { here, pad: await padAt(here, pad.id), plan, file: saved.rawPayload };
}

/** The file for tests that need no more: saved once, by whichever of them comes first. */
function savedFile(): Promise<Omit<Awaited<ReturnType<typeof savedPad>>, 'here'>> {
  saved ??= savedPad().then(({ pad, plan, file }) => ({ pad, plan, file }));
  return saved;
}

let saved: ReturnType<typeof savedFile> | null = null;

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
async function rewritten(
  file: Buffer,
  spoil: (doc: Doc) => void,
  more?: { readonly name: string; readonly bytes: Buffer },
): Promise<Buffer> {
  const { contents, plans, pictures } = await unpacked(file);
  const doc = { ...contents, plans };
  spoil(doc);
  const { plans: spoiled, ...rest } = doc;
  return packed([
    { name: 'pad.json', bytes: asJson(rest) },
    ...spoiled.map((plan, at) => ({ name: `plans/${at + 1}.json`, bytes: asJson(plan) })),
    ...pictures,
    ...(more === undefined ? [] : [more]),
  ]);
}

/** As files were before plans stood beside the contents. */
async function inForm1(file: Buffer): Promise<Buffer> {
  const { contents, plans, pictures } = await unpacked(file);
  const doc = { ...contents, form: 'plyhue pad, form 1', plans };
  return packed([{ name: 'pad.json', bytes: asJson(doc) }, ...pictures]);
}

interface Entry {
  readonly name: string;
  readonly bytes: Buffer;
}

async function unpacked(file: Buffer): Promise<{
  contents: Omit<Doc, 'plans'>;
  plans: Record<string, unknown>[];
  pictures: Entry[];
}> {
  const entries: Entry[] = [];
  for await (const entry of Readable.from([file]).pipe(extract()))
    entries.push({ name: entry.header.name, bytes: await whole(entry) });
  const [first, ...others] = entries;
  expect(first!.name).toBe('pad.json');
  return {
    contents: JSON.parse(first!.bytes.toString()) as Doc,
    plans: others
      .filter(({ name }) => name.startsWith('plans/'))
      .map(({ bytes }) => JSON.parse(bytes.toString()) as Record<string, unknown>),
    pictures: others.filter(({ name }) => !name.startsWith('plans/')),
  };
}

function packed(entries: readonly Entry[]): Promise<Buffer> {
  const out = pack();
  for (const { name, bytes } of entries) out.entry({ name }, bytes);
  out.finalize();
  return whole(out);
}

function asJson(value: unknown): Buffer {
  return Buffer.from(JSON.stringify(value));
}

async function whole(pieces: AsyncIterable<Uint8Array>): Promise<Buffer> {
  const all: Uint8Array[] = [];
  for await (const piece of pieces) all.push(piece);
  return Buffer.concat(all);
}
