import { describe, expect, test } from 'vitest';
import type { Pad, PhotoAnswer } from '../../server/contract/pads.ts';
import type { Upload, UploadList } from '../../server/contract/uploads.ts';
import { readNext, startUploadReader } from '../../server/http/upload-reader.ts';
import type { Desk } from '../../server/photo-desk.ts';
import { newFolder } from '../store/folder.ts';
import { fakeDesk, papers, photoOf } from './fake-desk.ts';
import { ask, mount, newPad, padAt, problemIn, sendForm, valueOf } from './mount.ts';
import type { Mounted } from './mount.ts';

/** RFC 7240, section 4.1. */
const LATER = { prefer: 'respond-async, wait=5' };
/** Whatever lies in a bucket is from before this. */
const TOMORROW = new Date(Date.now() + 86_400_000);
const SIX = { papers: papers(6, 1) };

function send(service: Mounted, pad: string, photo: Buffer, headers = {}) {
  const parts = [
    ['side', 'front'],
    ['arrangement', 'one'],
    ['photo', photo, 'photo.jpg'],
  ] as const;
  return sendForm(service, `/api/pads/${pad}/photos`, parts, headers);
}

async function sendForLater(service: Mounted, pad: string, photo: Buffer): Promise<Upload> {
  const answer = await send(service, pad, photo, LATER);
  expect([answer.statusCode, answer.headers['preference-applied']]).toEqual([202, 'respond-async']);
  const upload = valueOf<Upload>(answer);
  expect(answer.headers.location).toBe(`/api/uploads/${upload.id}`);
  return upload;
}

async function stateOf(service: Mounted, { id }: Upload): Promise<Upload> {
  return valueOf<Upload>(await ask(service, 'GET', `/api/uploads/${id}`));
}

describe('a photo that is read later', () => {
  test('is acknowledged when it is safe, waits, and is read as it would have been at once', async () => {
    const service = await mount(await newFolder());
    const [pad, other] = [await newPad(service), await newPad(service)];
    const upload = await sendForLater(service, pad, photoOf(SIX));
    expect(upload).toMatchObject({ pad, side: 'front', state: 'waiting', photo: null });
    expect((await padAt(service, pad)).photos).toEqual([]);
    expect(await readNext(service.edges)).toBe(true);
    expect(await readNext(service.edges)).toBe(false);
    const read = await stateOf(service, upload);
    const now: Pad = await padAt(service, pad);
    expect(read).toMatchObject({ state: 'read', photo: now.photos[0]!.id });
    const atOnce = valueOf<PhotoAnswer>(await send(service, other, photoOf(SIX)));
    expect(now.sheets.map(({ front }) => front!.palette)).toEqual(
      atOnce.sides.map(({ palette }) => palette),
    );
    // Sent once more, now to be read at once, it is the photo that is there.
    const again = valueOf<PhotoAnswer>(await send(service, pad, photoOf(SIX)));
    expect(again.photo.id).toBe(read.photo);
  });

  test('is there after a restart, and is read then', async () => {
    const folder = await newFolder();
    const service = await mount(folder);
    const pad = await newPad(service);
    const upload = await sendForLater(service, pad, photoOf(SIX));
    await service.stop();
    const again = await mount(folder);
    expect((await stateOf(again, upload)).state).toBe('waiting');
    await readNext(again.edges);
    expect((await stateOf(again, upload)).state).toBe('read');
    expect((await padAt(again, pad)).sheets).toHaveLength(6);
  });

  test('that cannot be read keeps its problem until it is forgotten', async () => {
    const service = await mount(await newFolder());
    const pad = await newPad(service);
    const upload = await sendForLater(service, pad, Buffer.from('GIF89a'));
    await readNext(service.edges);
    const { state, problem } = await stateOf(service, upload);
    expect([state, problem?.type]).toEqual(['refused', '/problems/not-a-photo']);
    const list = (): Promise<UploadList> =>
      ask(service, 'GET', `/api/pads/${pad}/uploads`).then(valueOf<UploadList>);
    expect((await list()).uploads.map(({ id }) => id)).toEqual([upload.id]);
    expect((await ask(service, 'DELETE', `/api/uploads/${upload.id}`)).statusCode).toBe(204);
    expect((await list()).uploads).toEqual([]);
    expect(await service.edges.store.files.letGoOthers(new Set(), TOMORROW)).toBe(0);
  });

  test('is tried again when it was no fault of the photo, and given up after five times', async () => {
    let hour = 0;
    const clock = (): string => `2026-05-04T${String((hour += 1)).padStart(2, '0')}:00:00.000Z`;
    const broken: Desk = { ...fakeDesk(), readSides: () => Promise.reject(new Error('broke')) };
    const service = await mount(await newFolder(), broken, '127.0.0.1', clock);
    const upload = await sendForLater(service, await newPad(service), photoOf(SIX));
    for (let time = 0; time < 4; time++) await readNext(service.edges);
    expect((await stateOf(service, upload)).state).toBe('waiting');
    await readNext(service.edges);
    const { state, problem } = await stateOf(service, upload);
    expect([state, problem?.type]).toEqual(['refused', '/problems/broken']);
    expect(await readNext(service.edges)).toBe(false);
  });

  test('that failed once for a passing reason is read by the same process a little later', async () => {
    // The clock stands until the photo rests, so that no lease runs out on a machine that is slow.
    let now = '2026-05-04T03:00:00.000Z';
    const desk = fakeDesk();
    let asked = 0;
    const busyOnce: Desk = {
      ...desk,
      readSides: (task) =>
        (asked += 1) === 1 ? Promise.reject(new Error('broke')) : desk.readSides(task),
    };
    const service = await mount(await newFolder(), busyOnce, '127.0.0.1', () => now);
    const { waiting } = service.edges.store;
    const putBack = waiting.putBack.bind(waiting);
    let rests = false;
    Object.assign(waiting, {
      putBack: async (...words: Parameters<typeof putBack>) => {
        await putBack(...words);
        rests = true;
      },
    });
    const upload = await sendForLater(service, await newPad(service), photoOf(SIX));
    const reader = startUploadReader(service.edges, { places: 2, pace: 5, alive: 5 });
    await expect.poll(() => rests).toBe(true);
    now = '2026-05-04T03:01:00.000Z';
    await expect.poll(async () => (await stateOf(service, upload)).state).toBe('read');
    await reader.stop();
    expect([asked, await waiting.held()]).toEqual([2, []]);
  });

  test('is read again though giving it back could not be written: what is not read is not renewed', async () => {
    const service = await mount(await newFolder());
    const { waiting } = service.edges.store;
    const at = (minute: number): string => `2026-05-04T03:0${minute}:00.000Z`;
    const upload = await sendForLater(service, await newPad(service), photoOf(SIX));
    expect((await waiting.claim(at(1)))?.id).toBe(upload.id);
    const unwritable = {
      toPostgres: () => {
        throw new TypeError('cannot be written');
      },
    };
    await expect(waiting.putBack(upload.id, unwritable as unknown as string)).rejects.toThrow();
    await waiting.renew(at(2));
    expect((await waiting.claim(at(2)))?.id).toBe(upload.id);
    await waiting.renew(at(3));
    expect(await waiting.claim(at(3))).toBeNull();
  });

  test('is one of 500, and of 2 GB, that may wait for one person; more are refused with 503, others go on', async () => {
    const service = await mount(await newFolder());
    const pad = await newPad(service);
    const { store } = service.edges;
    const row = { pad, face: 'front', arrangement: 'one', hash: '', file: '', told: '{}' } as const;
    const came = { createdAt: '', acknowledged: true, photo: null, problem: null };
    const wait = (person: string, from: number, to: number, size: number): Promise<void> =>
      store
        .askedBy(() => ({ person, pad: null }))
        .write(async ({ uploads }) => {
          for (let at = from; at < to; at++)
            await uploads.add({ ...row, ...came, id: `${person} ${at}`, size }, null);
        });
    await wait('another', 0, 500, 4e7);
    await wait('house', 0, 499, 4e6);
    const { id } = await sendForLater(service, pad, photoOf(SIX));
    const many = problemIn(await send(service, pad, photoOf(SIX), LATER));
    expect(many).toMatchObject({ status: 503, field: 'photo' });
    expect(many.detail).toContain('500 photos');
    for (const each of [id, 'house 0']) await store.write(({ uploads }) => uploads.remove(each));
    await wait('house', 0, 1, 8e6);
    const heavy = problemIn(await send(service, pad, photoOf(SIX), LATER));
    expect(heavy).toMatchObject({ status: 503, field: 'photo' });
    expect(heavy.detail).toContain('2.0 GB');
    await store.write(({ uploads }) => uploads.remove('house 1'));
    await sendForLater(service, pad, photoOf(SIX));
    expect((await store.waiting.held()).length).toBe(500 + 499);
  });

  test.each(['while it is looked at', 'just before it is kept'])(
    'does not appear when it is forgotten %s',
    async (when) => {
      const service = await mount(await newFolder());
      const pad = await newPad(service);
      const upload = await sendForLater(service, pad, photoOf(SIX));
      const { desk, store } = service.edges;
      const [real, shelves] = [{ ...desk }, { ...store.files }];
      const forget = async <T>(done: T): Promise<T> => {
        const forgotten = await ask(service, 'DELETE', `/api/uploads/${upload.id}`);
        expect(forgotten.statusCode).toBe(204);
        return done;
      };
      if (when === 'while it is looked at')
        Object.assign(desk, {
          readSides: (...task: Parameters<typeof real.readSides>) =>
            real.readSides(...task).then(forget),
        });
      else
        Object.assign(store.files, {
          shelve: (...file: Parameters<typeof shelves.shelve>) =>
            shelves.shelve(...file).then(forget),
        });
      expect(await readNext(service.edges)).toBe(true);
      expect(await padAt(service, pad)).toMatchObject({ photos: [], sheets: [] });
      expect(await readNext(service.edges)).toBe(false);
    },
  );

  test('that is kept is answered so though its waiting file cannot be removed', async () => {
    const service = await mount(await newFolder());
    const pad = await newPad(service);
    Object.assign(service.edges.store.files, {
      letGo: () => Promise.reject(new Error('EBUSY')),
    });
    expect((await send(service, pad, photoOf(SIX))).statusCode).toBe(201);
    expect((await padAt(service, pad)).photos).toHaveLength(1);
  });

  test('goes with its pad', async () => {
    const service = await mount(await newFolder());
    const pad = await newPad(service);
    const upload = await sendForLater(service, pad, photoOf(SIX));
    await ask(service, 'DELETE', `/api/pads/${pad}`);
    expect(problemIn(await ask(service, 'GET', `/api/uploads/${upload.id}`)).status).toBe(404);
    expect(await readNext(service.edges)).toBe(false);
    expect(await service.edges.store.files.letGoOthers(new Set(), TOMORROW)).toBe(0);
  });
});

describe('work that waits', () => {
  test('is given to one process at a time, in the order of arrival, and to another when that one is silent', async () => {
    const service = await mount(await newFolder());
    const { store, now } = service.edges;
    const pad = await newPad(service);
    const sent: string[] = [];
    for (const seed of [1, 2, 3])
      sent.push((await sendForLater(service, pad, photoOf({ papers: papers(2, seed) }))).id);
    for (const id of [...sent, undefined]) expect((await store.waiting.claim(now()))?.id).toBe(id);
    const later = (seconds: number): string =>
      new Date(Date.parse(now()) + 1000 * seconds).toISOString();
    await store.waiting.renew(later(20));
    expect(await store.waiting.claim(later(40))).toBeNull();
    expect((await store.waiting.claim(later(60)))?.id).toBe(sent[0]);
    await store.waiting.handBack();
    expect((await store.waiting.claim(now()))?.id).toBe(sent[0]);
  });

  test('that someone waits for is not given to others, and leaves nothing behind when it is refused', async () => {
    const service = await mount(await newFolder());
    const { store, now } = service.edges;
    const pad = await newPad(service);
    let seen: unknown = 'not asked';
    const { desk } = service.edges;
    Object.assign(desk, {
      readSides: async () => {
        seen = await store.waiting.claim(now());
        throw new Error('broke');
      },
    });
    expect((await send(service, pad, photoOf(SIX))).statusCode).toBe(500);
    expect(seen).toBeNull();
    expect(await store.waiting.held()).toEqual([]);
    expect(await store.files.letGoOthers(new Set(), TOMORROW)).toBe(0);
  });
});
