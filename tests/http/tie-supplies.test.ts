import { describe, expect, test } from 'vitest';
import type { PhotoAnswer } from '../../server/contract/pads.ts';
import type { Supplies, Supply } from '../../server/contract/supplies.ts';
import { newFolder } from '../store/folder.ts';
import { papers, photoOf } from './fake-desk.ts';
import { ask, mount, newPad, problemIn, sendForm, valueOf } from './mount.ts';
import type { Mounted } from './mount.ts';

/** Scraps beside the papers, in pixels of the photo; the fake desk lays squares from 200, 1200 apart. */
const SCRAPS = [
  [1250, 100],
  [1270, 100],
  [1290, 100],
];

/** Two squares of cardstock and one that is the black scrap; two scraps beside them, and a touch on the black. */
const WITH_BLACK = [...papers(2, 4), { l: 30, a: 0, b: 0 }];
const ON_BLACK = [...SCRAPS.slice(0, 2), [3100, 700]];

/** A pad whose first photo says how the scraps look, and three squares of cardstock in a photo of their own. */
async function padAndSupplies(
  service: Mounted,
  stock = papers(3, 4),
): Promise<{ pad: string; photo: string; supplies: readonly Supply[] }> {
  const pad = await newPad(service);
  await sendForm(service, `/api/pads/${pad}/photos`, [
    ['side', 'front'],
    ['arrangement', 'one'],
    ['chips', JSON.stringify(SCRAPS)],
    ['photo', photoOf({ papers: papers(2) }), 'fronts.jpg'],
  ]);
  const answer = await sendForm(service, '/api/supplies', [
    ['photo', photoOf({ papers: stock }), 'stock.jpg'],
    ['kind', 'cardstock'],
  ]);
  const { supplies } = valueOf<Supplies>(answer);
  return { pad, photo: supplies[0]!.photo!, supplies };
}

async function listOf(service: Mounted): Promise<Supplies> {
  return valueOf<Supplies>(await ask(service, 'GET', '/api/supplies'));
}

describe('scraps in a photo of supplies', () => {
  test('touched once each, they tie it to the photos of a pad, and its colours are read again', async () => {
    const service = await mount(await newFolder());
    const { pad, photo, supplies } = await padAndSupplies(service);
    const [untied] = (await listOf(service)).photos!;
    expect(untied).toMatchObject({ id: photo, chips: { tie: 'none' }, tiedTo: null });
    const answer = await ask(service, 'PATCH', `/api/photos/${photo}/supplies`, {
      pad,
      chips: SCRAPS,
    });
    expect(answer.statusCode).toBe(200);
    const lightness = (of: readonly Supply[]): number[] => of.map(({ colour }) => colour.lab[0]);
    expect(lightness(valueOf<Supplies>(answer).supplies)).toEqual(
      lightness(supplies).map((l) => l + 1),
    );
    const now = await listOf(service);
    expect(lightness(now.supplies)).toEqual(lightness(supplies).map((l) => l + 1));
    expect(now.supplies.map(({ id }) => id)).toEqual(supplies.map(({ id }) => id));
    const [tied] = now.photos!;
    expect(tied).toMatchObject({ id: photo, chips: { tie: 'tied' }, tiedTo: pad });
    // They look as the pad's first photo shows them.
    expect(tied!.chips.scraps.map(({ lab }) => lab[0])).toEqual([90, 60, 30]);
  });

  test('it stays tied when the pad is gone, and one touched in it later is read so too', async () => {
    const service = await mount(await newFolder());
    const { pad, photo } = await padAndSupplies(service);
    await ask(service, 'PATCH', `/api/photos/${photo}/supplies`, { pad, chips: SCRAPS });
    await ask(service, 'DELETE', `/api/pads/${pad}`);
    const [kept] = (await listOf(service)).photos!;
    expect(kept).toMatchObject({ chips: { tie: 'tied' } });
    const asked: unknown[] = [];
    const { desk } = service.edges;
    const plain = { ...desk };
    desk.readTouched = (task) => {
      asked.push(task);
      return plain.readTouched(task);
    };
    const touch = { kind: 'cardstock', name: 'Missed', at: [700, 700] };
    expect((await ask(service, 'POST', `/api/photos/${photo}/supplies`, touch)).statusCode).toBe(
      201,
    );
    expect(asked).toMatchObject([
      { look: 'squares', chipColours: [{ l: 90 }, { l: 60 }, { l: 30 }] },
    ]);
  });

  test('a square that is one of the scraps is laid aside; one that was touched by hand stays and is read where it was', async () => {
    const service = await mount(await newFolder());
    const { pad, photo, supplies } = await padAndSupplies(service, WITH_BLACK);
    const touch = { kind: 'cardstock', name: 'By hand', at: [700, 700] };
    await ask(service, 'POST', `/api/photos/${photo}/supplies`, touch);
    const tied = await ask(service, 'PATCH', `/api/photos/${photo}/supplies`, {
      pad,
      chips: ON_BLACK,
    });
    expect(valueOf<Supplies>(tied).notes).toEqual(['no white card']);
    const now = await listOf(service);
    expect(now.supplies.slice(0, 2).map(({ id }) => id)).toEqual(
      supplies.slice(0, 2).map(({ id }) => id),
    );
    expect(now.supplies.slice(2)).toMatchObject([{ name: 'By hand' }]);
    expect(now.photos).toMatchObject([{ id: photo, aside: [supplies[2]!.name] }]);
  });

  test('a slip onto cardstock beside scraps that tie takes nothing from the list, and is told', async () => {
    const service = await mount(await newFolder());
    const { pad, photo, supplies } = await padAndSupplies(service);
    const kept = { name: 'Mossy', sheets: 7 };
    await ask(service, 'PATCH', `/api/supplies/${supplies[2]!.id}`, kept);
    const answer = await ask(service, 'PATCH', `/api/photos/${photo}/supplies`, {
      pad,
      chips: [...SCRAPS, [3100, 700]],
    });
    expect(valueOf<Supplies>(answer).notes.at(-1)).toMatch(
      /You touched Mossy,.* stays in your list/,
    );
    const now = await listOf(service);
    expect(now.supplies.map(({ id }) => id)).toEqual(supplies.map(({ id }) => id));
    expect(now.supplies[2]).toMatchObject(kept);
    expect(now.photos).toMatchObject([{ aside: [], chips: { tie: 'tied' } }]);
  });

  test('cardstock that is only somewhat like a scrap is none: it is named, and nothing changes', async () => {
    const service = await mount(await newFolder());
    const { pad, photo } = await padAndSupplies(service, [...papers(2, 4), { l: 48, a: 0, b: 0 }]);
    const before = await listOf(service);
    const answer = await ask(service, 'PATCH', `/api/photos/${photo}/supplies`, {
      pad,
      chips: ON_BLACK,
    });
    expect(problemIn(answer)).toMatchObject({
      status: 422,
      field: 'chips',
      received: before.supplies[2]!.name,
    });
    expect(await listOf(service)).toEqual(before);
  });

  test('untied, what was laid aside is in the list again, with its name and count; tied anew, what is touched no more', async () => {
    const service = await mount(await newFolder());
    const { pad, photo, supplies } = await padAndSupplies(service, WITH_BLACK);
    const way = `/api/photos/${photo}/supplies`;
    const kept = { name: 'Slate', sheets: 7 };
    await ask(service, 'PATCH', `/api/supplies/${supplies[2]!.id}`, kept);
    for (const chips of [[], SCRAPS]) {
      await ask(service, 'PATCH', way, { pad, chips: ON_BLACK });
      expect((await listOf(service)).supplies).toHaveLength(2);
      const { statusCode } = await ask(service, 'PATCH', way, {
        ...(chips.length === 0 ? {} : { pad }),
        chips,
      });
      expect(statusCode).toBe(200);
      const now = await listOf(service);
      expect(now.supplies.map(({ id }) => id)).toEqual(supplies.map(({ id }) => id));
      expect(now.supplies[2]).toMatchObject({ id: supplies[2]!.id, photo, ...kept });
      const isTied = chips.length > 0;
      expect(now.photos).toMatchObject([
        { aside: [], tiedTo: isTied ? pad : null, chips: { tie: isTied ? 'tied' : 'none' } },
      ]);
      // Read as it was before anything was tied, or a little lighter.
      expect(now.supplies[2]!.colour.lab[0]).toBe(isTied ? 31 : 30);
    }
  });

  test('a photo in which all were scraps is listed, and goes with the last that was found in it', async () => {
    const service = await mount(await newFolder());
    const { pad, photo, supplies } = await padAndSupplies(service, [{ l: 30, a: 0, b: 0 }]);
    const way = `/api/photos/${photo}/supplies`;
    await ask(service, 'PATCH', way, { pad, chips: [...SCRAPS.slice(0, 2), [700, 700]] });
    expect(await listOf(service)).toMatchObject({
      supplies: [],
      photos: [{ id: photo, aside: [supplies[0]!.name] }],
    });
    await ask(service, 'PATCH', way, { chips: [] });
    const { supplies: back } = await listOf(service);
    expect(back).toHaveLength(1);
    expect((await ask(service, 'DELETE', `/api/supplies/${back[0]!.id}`)).statusCode).toBe(204);
    expect(await listOf(service)).toMatchObject({ supplies: [], photos: [] });
    expect((await ask(service, 'GET', `/api/photos/${photo}/picture`)).statusCode).toBe(404);
  });

  test('what is called by its colour is called by the colour that it has once it is read again; a name of her own stays', async () => {
    const service = await mount(await newFolder());
    const { pad, photo, supplies } = await padAndSupplies(service);
    await ask(service, 'PATCH', `/api/supplies/${supplies[1]!.id}`, { name: 'Mossy' });
    const { desk } = service.edges;
    const plain = { ...desk };
    desk.readSupplies = async (task) => {
      const read = await plain.readSupplies(task);
      const lab = { l: 25, a: 3, b: -30 };
      return { ...read, supplies: read.supplies.map((one) => ({ ...one, lab })) };
    };
    await ask(service, 'PATCH', `/api/photos/${photo}/supplies`, { pad, chips: SCRAPS });
    const names = (await listOf(service)).supplies.map(({ name }) => name);
    const word = (await listOf(service)).supplies[0]!.colour.name;
    expect(names.map((name) => name.toLowerCase())).toEqual([
      `${word.toLowerCase()} 1`,
      'mossy',
      `${word.toLowerCase()} 2`,
    ]);
    expect(names[0]).not.toBe(supplies[0]!.name);
  });

  test('a pad without scraps, places outside the photo, two scraps and a photo of sheets are refused, and nothing changes', async () => {
    const service = await mount(await newFolder());
    const { pad, photo } = await padAndSupplies(service);
    const before = await listOf(service);
    const bare = await newPad(service, 'Bare');
    const sheets = valueOf<PhotoAnswer>(
      await sendForm(service, `/api/pads/${bare}/photos`, [
        ['side', 'front'],
        ['arrangement', 'one'],
        ['photo', photoOf({ papers: papers(2) }), 'fronts.jpg'],
      ]),
    ).photo.id;
    const refused = [
      [photo, { pad: bare, chips: SCRAPS }, 422, 'pad'],
      [photo, { pad: 'nobody', chips: SCRAPS }, 404, 'pad'],
      [photo, { pad, chips: [...SCRAPS, [9000, 1]] }, 422, 'chips'],
      [photo, { pad, chips: SCRAPS.slice(1) }, 400, 'chips'],
      [photo, { chips: SCRAPS }, 400, 'pad'],
      [sheets, { pad, chips: SCRAPS }, 404, 'photo of supplies'],
    ] as const;
    for (const [id, body, status, field] of refused)
      expect(
        problemIn(await ask(service, 'PATCH', `/api/photos/${id}/supplies`, body)),
      ).toMatchObject({ status, field });
    const stale = { 'if-match': '"7"' };
    const late = await ask(
      service,
      'PATCH',
      `/api/photos/${photo}/supplies`,
      { pad, chips: SCRAPS },
      stale,
    );
    expect(late.statusCode).toBe(412);
    expect(await listOf(service)).toEqual(before);
  });

  test('scraps that are not those of the pad tie nothing, and nothing changes', async () => {
    const service = await mount(await newFolder());
    const { pad, photo } = await padAndSupplies(service);
    const before = await listOf(service);
    const { desk } = service.edges;
    const plain = { ...desk };
    desk.readSupplies = async (task) => ({
      ...(await plain.readSupplies(task)),
      chips: { tie: 'none', scraps: [] },
    });
    const answer = await ask(service, 'PATCH', `/api/photos/${photo}/supplies`, {
      pad,
      chips: SCRAPS,
    });
    expect(problemIn(answer)).toMatchObject({ status: 422, field: 'chips' });
    expect(await listOf(service)).toEqual(before);
  });
});
