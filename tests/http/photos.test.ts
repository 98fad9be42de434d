import { describe, expect, test } from 'vitest';
import type { Pad, PhotoAnswer, Side } from '../../server/contract/pads.ts';
import { fakeDesk, papers, photoOf } from './fake-desk.ts';
import { newFolder } from '../store/folder.ts';
import {
  ask,
  filledPad,
  mount,
  newPad,
  newPlan,
  padAt,
  problemIn,
  sendForm,
  sendPhoto,
  valueOf,
} from './mount.ts';

const FRONTS = { papers: papers(6, 1) };
const BACKS = { papers: papers(6, 2), shift: 40 };

function faces(pad: Pad): [string, boolean, boolean][] {
  return pad.sheets.map(({ label, front, back }) => [label, front !== null, back !== null]);
}

describe('photos', () => {
  test('fronts, then backs: six sheets with both sides, in reading order', async () => {
    const service = await mount(await newFolder());
    const id = await newPad(service);
    const fronts = await sendPhoto(service, id, 'front', FRONTS);
    expect(fronts.photo).toMatchObject({ width: 4000, height: 3000, side: 'front' });
    expect(fronts.notes).toEqual(['no white card']);
    const backs = await sendPhoto(service, id, 'back', BACKS);
    const pad = await padAt(service, id);
    expect(faces(pad)).toEqual([1, 2, 3, 4, 5, 6].map((n) => [`Sheet ${n}`, true, true]));
    expect(pad.sheets.map(({ front }) => front!.id)).toEqual(fronts.sides.map(({ id }) => id));
    expect(pad.sheets.map(({ back }) => back!.id)).toEqual(backs.sides.map(({ id }) => id));
  });

  test('backs first come to the same', async () => {
    const service = await mount(await newFolder());
    const id = await newPad(service);
    const backs = await sendPhoto(service, id, 'back', BACKS);
    const fronts = await sendPhoto(service, id, 'front', FRONTS);
    const pad = await padAt(service, id);
    expect(faces(pad)).toEqual([1, 2, 3, 4, 5, 6].map((n) => [`Sheet ${n}`, true, true]));
    expect(pad.sheets.map(({ front }) => front!.id)).toEqual(fronts.sides.map(({ id }) => id));
    expect(pad.sheets.map(({ back }) => back!.id)).toEqual(backs.sides.map(({ id }) => id));
  });

  test('other arrangements go on counting; a back that lies alone gets its own sheet', async () => {
    const service = await mount(await newFolder());
    const id = await newPad(service);
    await sendPhoto(service, id, 'front', { papers: papers(2, 1) }, 'one');
    await sendPhoto(service, id, 'front', { papers: papers(1, 3) }, 'two');
    await sendPhoto(service, id, 'back', { papers: papers(3, 4) }, 'one');
    expect(faces(await padAt(service, id))).toEqual([
      ['Sheet 1', true, true],
      ['Sheet 2', true, true],
      ['Sheet 3', true, false],
      ['Sheet 4', false, true],
    ]);
  });

  test('the words of the form may come after the file', async () => {
    const service = await mount(await newFolder());
    const id = await newPad(service);
    const answer = await sendForm(service, `/api/pads/${id}/photos`, [
      ['photo', photoOf(FRONTS), 'photo.jpg'],
      ['arrangement', 'kitchen table'],
      ['side', 'front'],
    ]);
    expect(answer.statusCode).toBe(201);
    expect(valueOf<PhotoAnswer>(answer).photo.arrangement).toBe('kitchen table');
  });

  test('the same bytes in the same place again are the same photo; elsewhere another', async () => {
    const service = await mount(await newFolder());
    const id = await newPad(service);
    const [first, second] = await Promise.all([
      sendPhoto(service, id, 'front', FRONTS),
      sendPhoto(service, id, 'front', FRONTS),
    ]);
    const third = await sendPhoto(service, id, 'front', FRONTS);
    expect(second).toEqual(first);
    expect(third).toEqual(first);
    expect((await padAt(service, id)).sheets).toHaveLength(6);
    const elsewhere = await sendPhoto(service, id, 'front', FRONTS, 'two');
    expect(elsewhere.photo.id).not.toBe(first.photo.id);
  });

  test('a photo that was answered is on the disk with its swatches, and nothing half-written is', async () => {
    const folder = await newFolder();
    const service = await mount(folder);
    const { photo, sides } = await sendPhoto(service, await newPad(service), 'front', FRONTS);
    const row = (await service.edges.store.read.photos.at(photo.id))!;
    const { files } = service.edges.store;
    expect(await files.read('photos', row.hash)).toEqual(photoOf(FRONTS));
    for (const side of sides)
      expect((await ask(service, 'GET', side.swatch)).payload).toContain('swatch');
    expect((await ask(service, 'GET', photo.picture)).headers['content-type']).toBe('image/jpeg');
    expect(await service.edges.store.files.clearIncoming()).toBe(0);
  });

  test('all stays after a restart', async () => {
    const folder = await newFolder();
    const service = await mount(folder);
    const before = await filledPad(service);
    const plan = await newPlan(service, before.id);
    await service.stop();
    const again = await mount(folder);
    expect(await padAt(again, before.id)).toEqual(before);
    expect(valueOf(await ask(again, 'GET', `/api/plans/${plan.id}`))).toEqual(plan);
  });

  test.each([
    [
      'no file',
      [
        ['side', 'front'],
        ['arrangement', 'one'],
      ],
      400,
      'photo',
    ],
    [
      'no side',
      [
        ['arrangement', 'one'],
        ['photo', photoOf(FRONTS), 'a.jpg'],
      ],
      400,
      'side',
    ],
    [
      'a third side',
      [
        ['side', 'edge'],
        ['arrangement', 'one'],
        ['photo', photoOf(FRONTS), 'a'],
      ],
      400,
      'side',
    ],
    [
      'no arrangement',
      [
        ['side', 'front'],
        ['photo', photoOf(FRONTS), 'a.jpg'],
      ],
      400,
      'arrangement',
    ],
    [
      'a file under another name',
      [
        ['side', 'front'],
        ['arrangement', 'one'],
        ['picture', photoOf(FRONTS), 'a'],
      ],
      400,
      'picture',
    ],
    [
      'two photos',
      [
        ['side', 'front'],
        ['arrangement', 'one'],
        ['photo', photoOf(FRONTS), 'a'],
        ['photo', photoOf(BACKS), 'b'],
      ],
      400,
      'photo',
    ],
    [
      'no photo at all',
      [
        ['side', 'front'],
        ['arrangement', 'one'],
        ['photo', Buffer.from('GIF89a'), 'a'],
      ],
      422,
      'photo',
    ],
    [
      'an empty table',
      [
        ['side', 'front'],
        ['arrangement', 'one'],
        ['photo', photoOf({ papers: [] }), 'a'],
      ],
      422,
      'photo',
    ],
    [
      'corners that are none',
      [
        ['side', 'front'],
        ['arrangement', 'one'],
        ['white', '[[0,'],
        ['photo', photoOf(FRONTS), 'a'],
      ],
      400,
      'white',
    ],
  ] as const)('%s is refused and leaves nothing behind', async (_, parts, status, field) => {
    const folder = await newFolder();
    const service = await mount(folder);
    const id = await newPad(service);
    const answer = await sendForm(service, `/api/pads/${id}/photos`, parts);
    expect([answer.statusCode, problemIn(answer).field]).toEqual([status, field]);
    expect(await service.edges.store.files.clearIncoming()).toBe(0);
    expect((await padAt(service, id)).photos).toEqual([]);
  });

  test('a wrong word of the form is shown back', async () => {
    const service = await mount(await newFolder());
    const answer = await sendForm(service, `/api/pads/${await newPad(service)}/photos`, [
      ['side', 'middle'],
      ['arrangement', 'one'],
      ['photo', photoOf(FRONTS), 'a.jpg'],
    ]);
    expect(problemIn(answer)).toMatchObject({ status: 400, field: 'side', received: 'middle' });
  });

  test('a photo for a pad that is not there is not found', async () => {
    const service = await mount(await newFolder());
    const answer = await sendForm(service, '/api/pads/none/photos', [
      ['side', 'front'],
      ['arrangement', 'one'],
      ['photo', photoOf(FRONTS), 'a.jpg'],
    ]);
    expect(problemIn(answer)).toMatchObject({ status: 404, field: 'pad' });
  });

  test('a file above 40 MB is refused', async () => {
    const service = await mount(await newFolder());
    const id = await newPad(service);
    const answer = await sendForm(service, `/api/pads/${id}/photos`, [
      ['side', 'front'],
      ['arrangement', 'one'],
      ['photo', Buffer.alloc(40 * 2 ** 20 + 1), 'a.jpg'],
    ]);
    expect(problemIn(answer)).toMatchObject({ type: '/problems/too-large', status: 413 });
  });

  test('a full desk refuses with the time to wait', async () => {
    const { Refusal } = await import('../../server/refusals/refusal.ts');
    const busy = new Refusal({
      kind: 'busy',
      field: 'photo',
      received: null,
      message: 'There are 64 pictures being worked on already',
      mend: 'Wait a moment.',
    });
    const desk = { ...fakeDesk(), readSides: () => Promise.reject(busy) };
    const service = await mount(await newFolder(), desk);
    const answer = await sendForm(service, `/api/pads/${await newPad(service)}/photos`, [
      ['side', 'front'],
      ['arrangement', 'one'],
      ['photo', photoOf(FRONTS), 'a.jpg'],
    ]);
    expect(problemIn(answer)).toMatchObject({ type: '/problems/busy', status: 503 });
    expect(Number(answer.headers['retry-after'])).toBeGreaterThan(0);
  });

  test('deleting a photo takes its sides away, and a sheet that has none left', async () => {
    const service = await mount(await newFolder());
    const id = await newPad(service);
    const fronts = await sendPhoto(service, id, 'front', FRONTS);
    const backs = await sendPhoto(service, id, 'back', BACKS);
    expect((await ask(service, 'DELETE', `/api/photos/${backs.photo.id}`)).statusCode).toBe(204);
    expect(faces(await padAt(service, id)).every(([, front, back]) => front && !back)).toBe(true);
    await ask(service, 'DELETE', `/api/photos/${fronts.photo.id}`);
    expect((await padAt(service, id)).sheets).toEqual([]);
    const gone = await ask(service, 'GET', fronts.sides[0]!.swatch);
    expect(problemIn(gone)).toMatchObject({ status: 404, field: 'side' });
  });

  test('corners moved by hand: the side is read again and its swatch has a new address', async () => {
    const service = await mount(await newFolder());
    const { sides } = await sendPhoto(service, await newPad(service), 'front', FRONTS);
    const before = sides[3]!;
    const corners = [
      [10, 20],
      [900, 25],
      [905, 910],
      [12, 900],
    ];
    const answer = await ask(service, 'PATCH', `/api/sides/${before.id}`, { corners });
    const after = valueOf<Side>(answer);
    expect(after.corners).toEqual(corners);
    expect(after.notes).toEqual(['tapped']);
    expect(after.swatch).not.toBe(before.swatch);
    expect(after.revision).toBe(before.revision + 1);
    expect(valueOf(await ask(service, 'GET', `/api/sides/${before.id}`))).toEqual(after);
    const wrong = await ask(service, 'PATCH', `/api/sides/${before.id}`, { corners: [[1, 2]] });
    expect(problemIn(wrong).field).toMatch(/^corners/);
  });

  test('of two edits of one side made at once from one state, the later is told so (RFC 9110, If-Match)', async () => {
    const service = await mount(await newFolder());
    const { sides } = await sendPhoto(service, await newPad(service), 'front', FRONTS);
    const way = `/api/sides/${sides[0]!.id}`;
    const tag = String((await ask(service, 'GET', way)).headers.etag);
    const move = (by: number): ReturnType<typeof ask> => {
      const corners = [
        [10 + by, 10],
        [110, 12],
        [108, 115],
        [9, 112],
      ];
      return ask(service, 'PATCH', way, { corners }, { 'if-match': tag });
    };
    const answers = await Promise.all([move(0), move(3)]);
    expect(answers.map(({ statusCode }) => statusCode).sort()).toEqual([200, 412]);
    const kept = answers.find(({ statusCode }) => statusCode === 200)!;
    expect((await ask(service, 'GET', way)).json()).toEqual(kept.json());
  });

  test('corners and a white card beyond the rim of the photo are refused', async () => {
    const service = await mount(await newFolder());
    const { photo, sides } = await sendPhoto(service, await newPad(service), 'front', FRONTS);
    const beyond = [
      [4300, 10],
      [4900, 10],
      [4900, 600],
      [4300, 600],
    ];
    const id = sides[0]!.id;
    const moved = await ask(service, 'PATCH', `/api/sides/${id}`, { corners: beyond });
    expect(problemIn(moved)).toMatchObject({ status: 422, field: 'corners' });
    const white = await ask(service, 'PATCH', `/api/photos/${photo.id}`, { white: beyond });
    expect(problemIn(white)).toMatchObject({ status: 422, field: 'white' });
    expect(valueOf(await ask(service, 'GET', `/api/sides/${id}`))).toEqual(sides[0]);
  });

  test('the white card shown by hand: the photo is read again where its sheets lie', async () => {
    const service = await mount(await newFolder());
    const { photo, sides } = await sendPhoto(service, await newPad(service), 'front', FRONTS);
    const white = [
      [1, 2],
      [30, 2],
      [30, 40],
      [1, 40],
    ];
    const answer = await ask(service, 'PATCH', `/api/photos/${photo.id}`, { white });
    const after = valueOf<PhotoAnswer>(answer);
    expect(after.photo.white).toEqual({ kind: 'tapped', corners: white });
    expect(after.sides.map(({ corners }) => corners)).toEqual(sides.map(({ corners }) => corners));
  });

  test('one touch shows the white card, in the upload and afterwards', async () => {
    const service = await mount(await newFolder());
    const id = await newPad(service);
    const sent = await sendForm(service, `/api/pads/${id}/photos`, [
      ['side', 'front'],
      ['arrangement', 'one'],
      ['white', '[700, 500]'],
      ['photo', photoOf(FRONTS), 'a.jpg'],
    ]);
    const { photo } = valueOf<PhotoAnswer>(sent);
    expect(photo.white.kind).toBe('tapped');
    expect(photo.white.corners![0]).toEqual([691, 491]);
    const again = await ask(service, 'PATCH', `/api/photos/${photo.id}`, { white: [90, 80] });
    expect(valueOf<PhotoAnswer>(again).photo.white.corners![0]).toEqual([81, 71]);
    const beyond = await ask(service, 'PATCH', `/api/photos/${photo.id}`, { white: [90, 8000] });
    expect(problemIn(beyond)).toMatchObject({ status: 422, field: 'white' });
    const nothing = await ask(service, 'PATCH', `/api/photos/${photo.id}`, {});
    expect(problemIn(nothing)).toMatchObject({ status: 400, field: 'white' });
    // A place has two forms, one touch or four corners: the refusal names the field that missed both.
    for (const [patch, field] of [
      [
        {
          white: [
            [1, 2],
            [3, 4],
          ],
        },
        'white',
      ],
      [{ white: [1, 'x'] }, 'white[1]'],
      [
        {
          chips: [
            [500, 100],
            ['x', 1],
          ],
        },
        'chips[1][0]',
      ],
    ] as const) {
      const wrong = await ask(service, 'PATCH', `/api/photos/${photo.id}`, patch);
      expect(problemIn(wrong)).toMatchObject({ status: 400, field });
    }
  });

  test('scraps: the first photo defines their colours, later ones are tied to it, and it is kept', async () => {
    const service = await mount(await newFolder());
    const id = await newPad(service);
    const chips = '[[500, 100], [600, 100], [[690, 90], [710, 90], [710, 110], [690, 110]]]';
    const send = async (face: string, scene: unknown): Promise<PhotoAnswer['photo']> =>
      valueOf<PhotoAnswer>(
        await sendForm(service, `/api/pads/${id}/photos`, [
          ['side', face],
          ['arrangement', 'one'],
          ['chips', chips],
          ['photo', photoOf(scene as typeof FRONTS), 'a.jpg'],
        ]),
      ).photo;
    const first = await send('front', FRONTS);
    expect(first.chips.tie).toBe('first');
    expect(first.chips.scraps.map(({ lab }) => lab[0])).toEqual([90, 60, 30]);
    const second = await send('back', BACKS);
    expect(second.chips.tie).toBe('tied');
    expect(second.chips.scraps.map(({ lab }) => lab)).toEqual(
      first.chips.scraps.map(({ lab }) => lab),
    );
    const pad = await padAt(service, id);
    expect(pad.photos.map((photo) => photo.chips.tie)).toEqual(['first', 'tied']);

    const side = pad.sheets[0]!.front!;
    await ask(service, 'PATCH', `/api/sides/${side.id}`, { corners: side.corners });
    expect((await padAt(service, id)).photos[0]!.chips).toEqual(first.chips);

    await ask(service, 'DELETE', `/api/photos/${first.id}`);
    const third = await send('front', { papers: papers(2, 5) });
    expect(third.chips.tie).toBe('tied');
  });

  test('two scraps, or words that are no places, are refused by name', async () => {
    const service = await mount(await newFolder());
    const id = await newPad(service);
    for (const chips of ['[[1, 2], [3, 4]]', '[[1, 2], [3, 4], [5]]', 'here']) {
      const answer = await sendForm(service, `/api/pads/${id}/photos`, [
        ['side', 'front'],
        ['arrangement', 'one'],
        ['chips', chips],
        ['photo', photoOf(FRONTS), 'a.jpg'],
      ]);
      expect(problemIn(answer).status).toBe(400);
      expect(problemIn(answer).field).toMatch(/^chips/);
    }
  });

  test('a photo that is gone from the disk is told plainly when its side is read again', async () => {
    const service = await mount(await newFolder());
    const { photo, sides } = await sendPhoto(service, await newPad(service), 'front', FRONTS);
    const { store } = service.edges;
    await store.files.remove('photos', (await store.read.photos.at(photo.id))!.hash);
    const corners = [
      [0, 0],
      [9, 0],
      [9, 9],
      [0, 9],
    ];
    const answer = await ask(service, 'PATCH', `/api/sides/${sides[0]!.id}`, { corners });
    expect(problemIn(answer)).toMatchObject({ status: 404, field: 'photos' });
    expect((await ask(service, 'GET', '/api/pads')).statusCode).toBe(200);
  });
});
