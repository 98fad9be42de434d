import { describe, expect, test } from 'vitest';
import type * as Keys from '../../server/contract/keys.ts';
import type { LeftoverList } from '../../server/contract/leftovers.ts';
import type * as Plans from '../../server/contract/plans.ts';
import { newCode } from '../../server/http/keys.ts';
import { HOUSE } from '../../server/store/asker.ts';
import { newFolder } from '../store/folder.ts';
import { fakeDesk, papers, photoOf } from './fake-desk.ts';
import { form } from './form.ts';
import { ask, mount, problemIn, valueOf } from './mount.ts';
import type { Mounted } from './mount.ts';

type Answer = Awaited<ReturnType<typeof ask>>;
type Method = 'GET' | 'POST' | 'PUT' | 'PATCH' | 'DELETE';

/** A device that shows its key with each question. */
interface Device {
  ask(
    method: Method,
    url: string,
    body?: unknown,
    headers?: Record<string, string>,
  ): Promise<Answer>;
  readonly cookie: string;
}

describe('on this computer alone', () => {
  test('no key is needed, and none can be given to another device', async () => {
    const service = await mount(await newFolder());
    expect((await ask(service, 'GET', '/api/pads')).statusCode).toBe(200);
    expect(valueOf(await ask(service, 'GET', '/api/me'))).toEqual({ pad: null, network: false });
    const answer = await ask(service, 'POST', '/api/codes', { name: 'Phone' });
    expect(problemIn(answer)).toMatchObject({ status: 409, field: 'host' });
  });
});

describe('on a network', () => {
  test('without a key every route but the open ones is closed', async () => {
    const { service } = await shared();
    const open = new Set(['GET /api/health', 'GET /api/health/live', 'POST /api/keys']);
    for (const { method, path } of await routesOf(service)) {
      const answer = await ask(service, method, path.replace(/\{\w+\}/g, 'x'));
      const shut = [answer.statusCode, answer.payload.includes('/problems/no-key')];
      expect([method, path, ...shut]).toEqual([
        method,
        path,
        ...(open.has(`${method} ${path}`) ? [answer.statusCode, false] : [401, true]),
      ]);
    }
    expect((await ask(service, 'GET', '/api/metrics')).statusCode).toBe(401);
    const forged = { cookie: 'plyhue_key=house.AAAA' };
    expect((await ask(service, 'GET', '/api/pads', undefined, forged)).statusCode).toBe(401);
  });

  test('a code gives one key, once, in a cookie that no script reads and no other site sends', async () => {
    const { service, house } = await shared();
    const { code } = valueOf<Keys.Code>(await house.ask('POST', '/api/codes', { name: 'Tablet' }));
    const first = await ask(service, 'POST', '/api/keys', { code });
    expect(first.statusCode).toBe(201);
    expect(first.headers['set-cookie']).toMatch(/; HttpOnly/);
    expect(first.headers['set-cookie']).toMatch(/; SameSite=Strict/);
    const second = await ask(service, 'POST', '/api/keys', { code });
    expect(problemIn(second)).toMatchObject({ status: 404, field: 'code' });
  });

  test('a code that has waited too long gives none', async () => {
    const { service } = await shared();
    const early = { ...service.edges, now: () => '2026-05-04T02:47:00.000Z' };
    const { code } = await newCode(early, { person: HOUSE, pad: null }, 'Late');
    expect((await ask(service, 'POST', '/api/keys', { code })).statusCode).toBe(404);
  });

  test('a key that was taken away opens nothing any more', async () => {
    const { service, house } = await shared();
    const tablet = await device(service, house, { name: 'Tablet' });
    expect((await tablet.ask('GET', '/api/pads')).statusCode).toBe(200);
    const { keys } = valueOf<Keys.KeyList>(await house.ask('GET', '/api/keys'));
    const { id } = keys.find(({ name }) => name === 'Tablet')!;
    expect((await house.ask('DELETE', `/api/keys/${id}`)).statusCode).toBe(204);
    expect((await tablet.ask('GET', '/api/pads')).statusCode).toBe(401);
  });

  test('a phone may look at its pad and add photos to it, and nothing else', async () => {
    const { service, house } = await shared();
    const [pad, other] = [await fill(house), await fill(house)];
    const phone = await device(service, house, { name: 'Phone', pad: pad.pad });
    expect(valueOf(await phone.ask('GET', '/api/me'))).toEqual({ pad: pad.pad, network: true });
    const { pads } = valueOf<{ pads: { id: string }[] }>(await phone.ask('GET', '/api/pads'));
    expect(pads.map(({ id }) => id)).toEqual([pad.pad]);
    expect((await phone.ask('GET', `/api/sides/${pad.side}/swatch`)).statusCode).toBe(200);
    const goesWith = (of: string): string => `/api/pads/${of}/coordination?side=${pad.side}`;
    expect((await phone.ask('GET', goesWith(pad.pad))).statusCode).toBe(200);
    expect((await phone.ask('GET', goesWith(other.pad))).statusCode).toBe(404);
    expect((await sendPhoto(phone, pad.pad, 9)).statusCode).toBe(201);
    expect((await sendPhoto(phone, other.pad, 9)).statusCode).toBe(404);
    for (const way of [
      `/api/pads/${other.pad}`,
      `/api/sides/${other.side}`,
      `/api/plans/${other.plan}`,
    ])
      expect([way, (await phone.ask('GET', way)).statusCode]).toEqual([way, 404]);
    const refused: [Method, string, unknown?][] = [
      ['GET', '/api/supplies'],
      ['GET', '/api/keys'],
      ['POST', '/api/codes', { name: 'Friend' }],
      ['POST', '/api/pads', { name: 'Mine', sheetSize: { width: '6 in', height: '6 in' } }],
      ['PATCH', `/api/pads/${pad.pad}`, { name: 'Mine' }],
      ['DELETE', `/api/pads/${pad.pad}`],
      ['DELETE', `/api/photos/${pad.photo}`],
    ];
    for (const [method, way, body] of refused)
      expect([way, problemIn(await phone.ask(method, way, body)).type]).toEqual([
        way,
        '/problems/beyond-key',
      ]);
  });

  test('a pad that goes takes the keys of its phones along', async () => {
    const { service, house } = await shared();
    const { pad } = await fill(house);
    const phone = await device(service, house, { name: 'Phone', pad });
    await house.ask('DELETE', `/api/pads/${pad}`);
    expect((await phone.ask('GET', '/api/pads')).statusCode).toBe(401);
  });

  test('a stranger with a key of her own finds nothing of another, on no route', async () => {
    const { service, house } = await shared();
    const hers = await fill(house);
    const stranger = await invited(service, house);
    const own = await fill(stranger);
    const routes = await routesOf(service);
    const before = await everything(house, hers);
    let tried = 0;
    for (const { method, path } of routes) {
      const names = [...path.matchAll(/\{(\w+)\}/g)].map(([, name]) => name!);
      if (names.length === 0) continue;
      const way = path.replace(/\{(\w+)\}/g, (_, name: string) => idFor(hers, name));
      const answer = await stranger.ask(method, way, BODIES[`${method} ${path}`]?.(hers));
      expect([method, way, answer.statusCode]).toEqual([method, way, 404]);
      tried += 1;
    }
    expect(tried).toBeGreaterThan(20);
    expect(await everything(house, hers)).toEqual(before);
    const lists = { pads: own.pad, plans: own.plan, supplies: own.supply, layouts: own.layout };
    for (const [list, mine] of Object.entries({ ...lists, keys: 'Guest' })) {
      const { payload } = await stranger.ask('GET', `/api/${list}`);
      const ids = Object.entries(hers).filter(([noun]) => noun !== 'catalogued');
      for (const [, id] of ids) expect(payload).not.toContain(`"${id}"`);
      expect(payload).toContain(mine);
    }
    expect((await stranger.ask('POST', '/api/people', { name: 'Other' })).statusCode).toBe(403);
  });

  test('ids of another person in a body are not found either', async () => {
    const { service, house } = await shared();
    const hers = await fill(house);
    const stranger = await invited(service, house);
    const own = await fill(stranger);
    const cards = [{ layout: own.catalogued, count: 1 }];
    const pins = [{ card: 1, layer: 'base', supply: hers.supply }];
    const asked: [string, unknown][] = [
      ['/api/plans', { pad: hers.pad, cards }],
      ['/api/plans', { pad: own.pad, cards, pins }],
      ['/api/plans', { pad: own.pad, cards: [{ layout: hers.layout, count: 1 }] }],
      ['/api/matches', { supply: hers.supply, side: own.side }],
      ['/api/matches', { supplies: [own.supply], sides: [own.side, hers.side] }],
      ['/api/codes', { name: 'Phone', pad: hers.pad }],
    ];
    for (const [way, body] of asked) {
      const { status, type } = problemIn(await stranger.ask('POST', way, body));
      expect([way, JSON.stringify(body), status, type]).toEqual([
        way,
        JSON.stringify(body),
        404,
        '/problems/not-found',
      ]);
    }
  });

  test('two people may use the same Idempotency-Key', async () => {
    const { service, house } = await shared();
    const stranger = await invited(service, house);
    const wish = { name: 'Tidewrack', sheetSize: { width: '6 in', height: '6 in' } };
    const key = { 'idempotency-key': 'wish-1' };
    const one = valueOf<{ id: string }>(await house.ask('POST', '/api/pads', wish, key));
    const two = valueOf<{ id: string }>(await stranger.ask('POST', '/api/pads', wish, key));
    expect(two.id).not.toBe(one.id);
  });
});

/** Something of every noun, by its id. */
interface Filled {
  readonly pad: string;
  readonly photo: string;
  readonly side: string;
  readonly sheet: string;
  readonly plan: string;
  readonly supply: string;
  readonly layout: string;
  readonly catalogued: string;
  readonly leftover: string;
  readonly upload: string;
}

const BODIES: Record<string, ((hers: Filled) => unknown) | undefined> = {
  'PATCH /api/pads/{pad}': () => ({ name: 'Mine now' }),
  'PATCH /api/photos/{photo}': () => ({ white: SQUARE }),
  'POST /api/photos/{photo}/supplies': () => ({ kind: 'ink', name: 'Mine now', at: [9, 9] }),
  'PATCH /api/photos/{photo}/supplies': ({ pad }) => ({
    pad,
    chips: [
      [9, 9],
      [19, 9],
      [29, 9],
    ],
  }),
  'PATCH /api/sides/{side}': () => ({ corners: SQUARE }),
  'PATCH /api/sheets/{sheet}': () => ({ label: 'Mine now' }),
  'PATCH /api/supplies/{supply}': () => ({ name: 'Mine now' }),
  'POST /api/pads/{pad}/leftovers': ({ plan }) => ({ plan }),
  'PUT /api/layouts/{layout}': () => ONE_LAYER,
  'POST /api/plans/{plan}/ticks': () => ({ step: 'card-1', done: true }),
  'POST /api/plans/{plan}/taken': () => ({ slots: {} }),
};

const ONE_LAYER = {
  name: 'Mine now',
  card: { width: '4 in', height: '5 in' },
  fold: { kind: 'none', flat: { width: '4 in', height: '5 in' }, scores: [], scoreFrom: 'left' },
  layers: [
    {
      id: 'base',
      role: 'base',
      material: 'cardstock',
      box: { x: '0 in', y: '0 in', width: '4 in', height: '5 in' },
      shape: { kind: 'rectangle' },
      paper: 'base',
    },
  ],
};

const SQUARE = [
  [0, 0],
  [50, 0],
  [50, 50],
  [0, 50],
];

async function shared(): Promise<{ service: Mounted; house: Device }> {
  const service = await mount(await newFolder(), fakeDesk(), '0.0.0.0');
  const { code } = await newCode(service.edges, { person: HOUSE, pad: null }, 'First device');
  return { service, house: await withCode(service, code) };
}

async function withCode(service: Mounted, code: string): Promise<Device> {
  const answer = await ask(service, 'POST', '/api/keys', { code });
  const cookie = String(answer.headers['set-cookie']).split(';')[0]!;
  return {
    cookie,
    ask: (method, url, body, headers = {}) =>
      ask(service, method, url, body, { ...headers, cookie }),
  };
}

async function device(service: Mounted, owner: Device, wish: Keys.NewCode): Promise<Device> {
  return withCode(service, valueOf<Keys.Code>(await owner.ask('POST', '/api/codes', wish)).code);
}

async function invited(service: Mounted, house: Device): Promise<Device> {
  const { code } = valueOf<Keys.Invited>(await house.ask('POST', '/api/people', { name: 'Guest' }));
  return withCode(service, code.code);
}

function sendPhoto(
  who: Device,
  pad: string,
  seed: number,
  more: Record<string, string> = {},
): Promise<Answer> {
  const { body, headers } = form([
    ['side', 'front'],
    ['arrangement', `table ${seed}`],
    ['photo', photoOf({ papers: papers(6, seed) }), 'photo.jpg'],
  ]);
  return who.ask('POST', `/api/pads/${pad}/photos`, body, { ...headers, ...more });
}

async function fill(who: Device): Promise<Filled> {
  const made = async (way: string, body: unknown): Promise<string> => {
    const answer = await who.ask('POST', way, body);
    if (answer.statusCode !== 201)
      throw new Error(`${way}: ${answer.statusCode} ${answer.payload}`);
    return valueOf<{ id: string }>(answer).id;
  };
  const sheetSize = { width: '6 in', height: '6 in' };
  const pad = await made('/api/pads', { name: 'Tidewrack', sheetSize });
  const { photo, sides } = valueOf<{ photo: { id: string }; sides: { id: string }[] }>(
    await sendPhoto(who, pad, 1),
  );
  const { sheets } = valueOf<{ sheets: { id: string }[] }>(
    await who.ask('GET', `/api/pads/${pad}`),
  );
  const colour = { lab: [50, 20, 20] };
  const supply = valueOf<{ supplies: { id: string }[] }>(
    await who.ask('POST', '/api/supplies', { kind: 'cardstock', name: 'Coral', colour }),
  ).supplies[0]!.id;
  const { layouts } = valueOf<{ layouts: { id: string }[] }>(await who.ask('GET', '/api/layouts'));
  const { id: catalogued, ...rest } = layouts[0]! as { id: string; origin?: string };
  const layout = await made('/api/layouts', rest);
  const cards = [{ layout: catalogued, count: 1 }];
  const plan = valueOf<Plans.Plan>(await who.ask('POST', '/api/plans', { pad, cards })).id;
  const [side, sheet] = [sides[0]!.id, sheets[0]!.id];
  const part = { sheet, size: { width: '2 in', height: '3 in' } };
  const { leftovers } = valueOf<LeftoverList>(
    await who.ask('POST', `/api/pads/${pad}/leftovers`, part),
  );
  const leftover = leftovers[0]!.id;
  const later = await sendPhoto(who, pad, 2, { prefer: 'respond-async' });
  const upload = valueOf<{ id: string }>(later).id;
  return { pad, photo: photo.id, side, sheet, plan, supply, layout, catalogued, leftover, upload };
}

function idFor(hers: Filled, name: string): string {
  if (name === 'card') return 'card-1';
  if (name === 'slot') return 'slot-1';
  if (name === 'layer') return 'base';
  if (name === 'key') return 'someone-elses';
  const id = hers[name as keyof Filled] as string | undefined;
  if (id === undefined) throw new Error(`Nothing of hers is called ${name}`);
  return id;
}

/** All that its owner sees of it. */
async function everything(who: Device, filled: Filled): Promise<unknown> {
  const { pad, plan } = filled;
  const ways = [
    'pads',
    `pads/${pad}`,
    `pads/${pad}/leftovers`,
    `pads/${pad}/uploads`,
    `plans/${plan}`,
    'supplies',
    'layouts',
    'keys',
  ];
  return Promise.all(ways.map(async (way) => (await who.ask('GET', `/api/${way}`)).payload));
}

async function routesOf(service: Mounted): Promise<{ method: Method; path: string }[]> {
  const { edges } = service;
  const { code } = await newCode(edges, { person: HOUSE, pad: null }, 'Reader');
  const reader = await withCode(service, code);
  const { paths } = valueOf<{ paths: Record<string, Record<string, unknown>> }>(
    await reader.ask('GET', '/api/openapi.json'),
  );
  return Object.entries(paths).flatMap(([path, item]) =>
    Object.keys(item).map((method) => ({ method: method.toUpperCase() as Method, path })),
  );
}
