import { describe, expect, test } from 'vitest';
import type { ColourNames, Match, Supplies, Supply } from '../../server/contract/supplies.ts';
import { newFolder } from '../store/folder.ts';
import { papers, photoOf } from './fake-desk.ts';
import type { Scene } from './fake-desk.ts';
import { ask, filledPad, mount, newPad, problemIn, sendForm, sendPhoto, valueOf } from './mount.ts';

const SHELL = { kind: 'cardstock', name: 'Shell', colour: { lab: [92, 1, 6] } };

describe('supplies', () => {
  test('typed: kept with its colour, its name on the screen and its uncertainty', async () => {
    const service = await mount(await newFolder());
    const answer = await ask(service, 'POST', '/api/supplies', SHELL);
    const [supply] = valueOf<Supplies>(answer).supplies;
    expect(answer.statusCode).toBe(201);
    expect(supply).toMatchObject({ kind: 'cardstock', name: 'Shell', photo: null, sheets: null });
    expect(supply!.colour.lab).toEqual([92, 1, 6]);
    expect(supply!.colour.hex).toMatch(/^#[0-9a-f]{6}$/);
    const all = valueOf<Supplies>(await ask(service, 'GET', '/api/supplies'));
    expect(all.supplies).toEqual([supply]);
  });

  test('told in words: the colour of its ISCC-NBS or CSS name, stated roughly; unknown words are refused with near ones', async () => {
    const service = await mount(await newFolder());
    const told = (words: string): ReturnType<typeof ask> =>
      ask(service, 'POST', '/api/supplies', { ...SHELL, colour: { words } });
    const [rust] = valueOf<Supplies>(await told('Dark reddish orange')).supplies;
    expect(rust!.colour.name).toBe('dark reddish orange');
    expect(rust!.colour.uncertainty).toBeGreaterThan(5);
    const [forest] = valueOf<Supplies>(await told('forest green')).supplies;
    expect(forest!.colour.hex).toBe('#228b22');
    const problem = problemIn(await told('mossy dark green'));
    expect(problem).toMatchObject({ status: 400, field: 'colour.words' });
    expect(problem.mend).toContain('dark green');
    const { names } = valueOf<ColourNames>(await ask(service, 'GET', '/api/colour-names'));
    expect(names.find(({ name }) => name === 'forestgreen')?.hex).toBe('#228b22');
  });

  test('photographed: one name for all is counted on; as many names as colours are given in order', async () => {
    const service = await mount(await newFolder());
    const photo = ['photo', photoOf({ papers: papers(3) }), 'inks.jpg'] as const;
    const one = await sendForm(service, '/api/supplies', [photo, ['kind', 'ink'], ['name', 'Ink']]);
    const names = (answer: typeof one): string[] =>
      valueOf<Supplies>(answer).supplies.map(({ name }) => name);
    expect(names(one)).toEqual(['Ink 1', 'Ink 2', 'Ink 3']);
    expect(valueOf<Supplies>(one).supplies[2]!.corners).toHaveLength(4);
    const [first] = valueOf<Supplies>(one).supplies;
    const { photos } = valueOf<Supplies>(await ask(service, 'GET', '/api/supplies'));
    expect(photos?.map(({ id }) => id)).toEqual([first!.photo]);
    const touch = { kind: 'ink', name: 'Missed', at: [1900, 700] };
    const more = await ask(service, 'POST', `/api/photos/${photos![0]!.id}/supplies`, touch);
    expect(more.statusCode).toBe(201);
    const each = [
      ['name', 'Kelp'],
      ['name', 'Coral'],
      ['name', 'Slate'],
    ] as const;
    const three = await sendForm(service, '/api/supplies', [photo, ['kind', 'ink'], ...each]);
    expect(names(three)).toEqual(['Kelp', 'Coral', 'Slate']);
    const two = await sendForm(service, '/api/supplies', [
      photo,
      ['kind', 'ink'],
      each[0],
      each[1],
    ]);
    expect(problemIn(two)).toMatchObject({ status: 422, field: 'name' });
  });

  test('photographed without a name: each is called by its colour, counted where two are called alike', async () => {
    const service = await mount(await newFolder());
    const [one, two] = papers(2);
    const photo = ['photo', photoOf({ papers: [one!, two!, one!] }), 'stock.jpg'] as const;
    const answer = await sendForm(service, '/api/supplies', [photo, ['kind', 'cardstock']]);
    expect(answer.statusCode).toBe(201);
    const { supplies } = valueOf<Supplies>(answer);
    const called = supplies.map(({ colour }) => colour.name.replace(/^./, (l) => l.toUpperCase()));
    expect(called[0]).not.toBe(called[1]);
    expect(supplies.map(({ name }) => name)).toEqual([
      `${called[0]!} 1`,
      called[1]!,
      `${called[0]!} 2`,
    ]);
  });

  test('touched in a photo of papers: its colour, its photo; the same key adds it once', async () => {
    const service = await mount(await newFolder());
    const scene = { papers: papers(3) };
    const { photo, sides } = await sendPhoto(service, await newPad(service), 'front', scene);
    const url = `/api/photos/${photo.id}/supplies`;
    const wish = { kind: 'cardstock', name: 'Scrap', at: [1900, 700] };
    const key = { 'idempotency-key': 'touch-1' };
    const answer = await ask(service, 'POST', url, wish, key);
    const [supply] = valueOf<Supplies>(answer).supplies;
    const { l, a, b } = scene.papers[1]!;
    expect(supply!.colour.lab.map(Math.round)).toEqual([l, a, b].map(Math.round));
    expect(supply).toMatchObject({ name: 'Scrap', photo: photo.id });
    expect(valueOf<Supplies>(await ask(service, 'POST', url, wish, key)).supplies).toEqual([
      supply,
    ]);
    const all = valueOf<Supplies>(await ask(service, 'GET', '/api/supplies'));
    expect(all.supplies).toHaveLength(1);
    const match = { supply: supply!.id, side: sides[1]!.id };
    expect(valueOf<Match>(await ask(service, 'POST', '/api/matches', match)).verdict).toBe('match');
  });

  test('smears in which the light mirrors are told by number and keep no verdict, over the picture with its size', async () => {
    const service = await mount(await newFolder());
    const scene = { papers: papers(3), glossy: [0, 2] };
    const sent = await sendForm(service, '/api/supplies', [
      ['photo', photoOf(scene), 'inks.jpg'],
      ['kind', 'ink'],
      ['name', 'Wet'],
    ]);
    const { supplies, notes, picture } = valueOf<Supplies>(sent);
    expect(supplies.map(({ name, glossy }) => [name, glossy])).toEqual([
      ['Wet 1', true],
      ['Wet 2', false],
      ['Wet 3', true],
    ]);
    expect(notes.join()).toContain('mirrors in smears 1 and 3');
    expect(picture).toMatchObject({ address: `/api/photos/${supplies[0]!.photo}/picture` });
    for (const [x, y] of supplies.flatMap(({ corners }) => corners ?? [])) {
      expect(x).toBeLessThanOrEqual(picture!.width);
      expect(y).toBeLessThanOrEqual(picture!.height);
    }
    const kept = valueOf<Supply>(await ask(service, 'GET', `/api/supplies/${supplies[2]!.id}`));
    expect(kept.glossy).toBe(true);
    const pad = await newPad(service);
    const { sides } = await sendPhoto(service, pad, 'front', { papers: papers(3) });
    const asked = await ask(service, 'POST', '/api/matches', {
      supply: kept.id,
      side: sides[2]!.id,
    });
    expect(valueOf<Match>(asked)).toMatchObject({ verdict: 'cannot tell' });
    expect(valueOf<Match>(asked).reason).toMatch(/glossy smear/i);
  });

  test('a touch beside everything plain, or beside the photo, is refused with what to touch', async () => {
    const service = await mount(await newFolder());
    const { photo } = await sendPhoto(service, await newPad(service), 'front', {
      papers: papers(1),
    });
    const url = `/api/photos/${photo.id}/supplies`;
    for (const at of [
      [3900, 2900],
      [9000, 10],
    ]) {
      const problem = problemIn(await ask(service, 'POST', url, { kind: 'ink', name: 'Kelp', at }));
      expect([problem.status, problem.field]).toEqual([422, 'at']);
      expect(problem.mend).toContain('Touch');
    }
  });

  test.each([
    [{ ...SHELL, kind: 'paint' }, 'kind'],
    [{ ...SHELL, colour: { lab: [192, 1, 6] } }, 'colour.lab[0]'],
    [{ ...SHELL, colour: { lab: [92, 1] } }, 'colour.lab'],
    [{ ...SHELL, colour: 'red' }, 'colour'],
    [{ ...SHELL, sheets: -1 }, 'sheets'],
    [{ ...SHELL, name: ' ' }, 'name'],
  ])('a wrong wish is refused with its field: %j', async (body, field) => {
    const service = await mount(await newFolder());
    const problem = problemIn(await ask(service, 'POST', '/api/supplies', body));
    expect([problem.status, problem.field]).toEqual([400, field]);
  });

  test('can be renamed, counted and deleted', async () => {
    const service = await mount(await newFolder());
    const [{ id }] = valueOf<Supplies>(await ask(service, 'POST', '/api/supplies', SHELL))
      .supplies as [Supply];
    const change = { name: 'Pale shell', sheets: 12 };
    const answer = await ask(service, 'PATCH', `/api/supplies/${id}`, change);
    expect(valueOf<Supply>(answer)).toMatchObject(change);
    const stale = await ask(service, 'PATCH', `/api/supplies/${id}`, change, { 'if-match': '"1"' });
    expect(stale.statusCode).toBe(412);
    expect((await ask(service, 'DELETE', `/api/supplies/${id}`)).statusCode).toBe(204);
    const gone = await ask(service, 'GET', `/api/supplies/${id}`);
    expect(problemIn(gone)).toMatchObject({ status: 404, field: 'supply' });
  });
});

describe('matches', () => {
  test('the ground’s own colour is its match; each verdict comes with the caution', async () => {
    const service = await mount(await newFolder());
    const side = (await filledPad(service)).sheets[0]!.front!;
    const supply = { ...SHELL, colour: { lab: side.palette[0]!.lab } };
    const [made] = valueOf<Supplies>(await ask(service, 'POST', '/api/supplies', supply)).supplies;
    const wish = { supply: made!.id, side: side.id };
    const match = valueOf<Match>(await ask(service, 'POST', '/api/matches', wish));
    expect(match).toMatchObject({ ...wish, nearest: { share: 0.7 } });
    expect(match.difference).toBeLessThan(0.1);
    expect(match.verdict).not.toBe('apart');
    expect(match.caution).toMatch(/not a measurement/);
    // Asked of another colour of the side, the verdict is of that one; a place beyond the palette is refused.
    const other = valueOf<Match>(
      await ask(service, 'POST', '/api/matches', { ...wish, colour: 1 }),
    );
    expect(other.nearest.lab).toEqual(side.palette[1]!.lab);
    expect(other.difference).toBeGreaterThan(match.difference);
    const beyond = await ask(service, 'POST', '/api/matches', { ...wish, colour: 60 });
    expect(problemIn(beyond)).toMatchObject({ status: 400, field: 'colour' });
  });

  test('many at once are the same as one by one', async () => {
    const service = await mount(await newFolder());
    const pad = await filledPad(service);
    const [made] = valueOf<Supplies>(await ask(service, 'POST', '/api/supplies', SHELL)).supplies;
    const sides = pad.sheets.map(({ front }) => front!.id);
    const wish = { supplies: [made!.id], sides };
    const batch = await ask(service, 'POST', '/api/matches', wish);
    const { matches } = valueOf<{ matches: Match[] }>(batch);
    for (const [at, side] of sides.entries()) {
      const one = await ask(service, 'POST', '/api/matches', { supply: made!.id, side });
      expect(matches[at]).toEqual(valueOf(one));
    }
  });

  test('a supply and a side in one picture, sent once for each, compare finer than in two', async () => {
    const service = await mount(await newFolder());
    const together = { papers: papers(3, 2) };
    const { sides } = await sendPhoto(service, await newPad(service), 'front', together);
    const uncertaintyFrom = async (scene: Scene): Promise<number> => {
      const answer = await sendForm(service, '/api/supplies', [
        ['kind', 'cardstock'],
        ['name', 'Square'],
        ['photo', photoOf(scene), 'photo.jpg'],
      ]);
      const [{ id }] = valueOf<Supplies>(answer).supplies as [Supply];
      const wish = { supply: id, side: sides[0]!.id };
      return valueOf<Match>(await ask(service, 'POST', '/api/matches', wish)).uncertainty;
    };
    const apart = await uncertaintyFrom({ ...together, shift: 1 });
    expect(await uncertaintyFrom(together)).toBeLessThan(0.5 * apart);
  });

  test('what is not there is named', async () => {
    const service = await mount(await newFolder());
    const [made] = valueOf<Supplies>(await ask(service, 'POST', '/api/supplies', SHELL)).supplies;
    const wish = { supply: made!.id, side: 'none' };
    const answer = await ask(service, 'POST', '/api/matches', wish);
    expect(problemIn(answer)).toMatchObject({ status: 404, field: 'side', received: 'none' });
  });

  test.each([
    [{ supply: 'a' }, 'side'],
    [{ supplies: ['a'] }, 'sides'],
    [{ supplies: [], sides: ['a'] }, 'supplies'],
    [{ supply: 'a b', side: 'c' }, 'supply'],
  ])(
    'a question that is neither one nor many is refused with its field: %j',
    async (wish, field) => {
      const service = await mount(await newFolder());
      const problem = problemIn(await ask(service, 'POST', '/api/matches', wish));
      expect([problem.status, problem.field]).toEqual([400, field]);
    },
  );
});
