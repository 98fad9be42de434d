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

/** A pad whose first photo says how the scraps look, and three squares of cardstock in a photo of their own. */
async function padAndSupplies(
  service: Mounted,
): Promise<{ pad: string; photo: string; supplies: readonly Supply[] }> {
  const pad = await newPad(service);
  await sendForm(service, `/api/pads/${pad}/photos`, [
    ['side', 'front'],
    ['arrangement', 'one'],
    ['chips', JSON.stringify(SCRAPS)],
    ['photo', photoOf({ papers: papers(2) }), 'fronts.jpg'],
  ]);
  const answer = await sendForm(service, '/api/supplies', [
    ['photo', photoOf({ papers: papers(3, 4) }), 'stock.jpg'],
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
    expect(now.supplies.map(({ name }) => name)).toEqual(supplies.map(({ name }) => name));
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

  test('a square that is a scrap leaves the list; one that was touched by hand stays and is read where it was', async () => {
    const service = await mount(await newFolder());
    const { pad, photo, supplies } = await padAndSupplies(service);
    const touch = { kind: 'cardstock', name: 'By hand', at: [700, 700] };
    await ask(service, 'POST', `/api/photos/${photo}/supplies`, touch);
    const onThird = [supplies[2]!.corners![0][0] + 500, 700];
    await ask(service, 'PATCH', `/api/photos/${photo}/supplies`, {
      pad,
      chips: [...SCRAPS, onThird],
    });
    const { supplies: left } = await listOf(service);
    expect(left.map(({ name }) => name)).toEqual([supplies[0]!.name, supplies[1]!.name, 'By hand']);
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
