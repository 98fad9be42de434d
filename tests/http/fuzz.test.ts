import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { newFolder } from '../store/folder.ts';
import { papers, photoOf } from './fake-desk.ts';
import { form } from './form.ts';
import { ask, filledPad, mount, newPlan, valueOf } from './mount.ts';
import type { Mounted } from './mount.ts';
import { almostRight, wildText, wildValue } from './wild-questions.ts';
import type { Known, Schema } from './wild-questions.ts';

type Method = 'GET' | 'POST' | 'PUT' | 'PATCH' | 'DELETE';

interface Operation {
  readonly method: Method;
  readonly path: string;
  readonly json: Schema | null;
  readonly form: Schema | null;
  /** The type of what it takes as it comes, neither form nor JSON. */
  readonly file: string | null;
  readonly query: Readonly<Record<string, Schema>>;
}

interface Described {
  readonly parameters?: readonly { in: string; name: string; schema: Schema }[];
  readonly requestBody?: {
    readonly content: Readonly<Record<string, { readonly schema: Schema }>>;
  };
}

const READ = new Set(['application/json', 'multipart/form-data']);

/** Every way in the OpenAPI document. */
async function operations(service: Mounted): Promise<Operation[]> {
  const { paths } = valueOf<{ paths: Record<string, Record<string, Described>> }>(
    await ask(service, 'GET', '/api/openapi.json'),
  );
  return Object.entries(paths).flatMap(([path, item]) =>
    Object.entries(item).map(([method, { parameters = [], requestBody }]) => ({
      method: method.toUpperCase() as Method,
      path,
      json: requestBody?.content['application/json']?.schema ?? null,
      form: requestBody?.content['multipart/form-data']?.schema ?? null,
      file: Object.keys(requestBody?.content ?? {}).find((type) => !READ.has(type)) ?? null,
      query: Object.fromEntries(
        parameters.filter((one) => one.in === 'query').map(({ name, schema }) => [name, schema]),
      ),
    })),
  );
}

function deep(levels: number): string {
  return `${'{"name":['.repeat(levels)}1${']}'.repeat(levels)}`;
}

/** The path with each name filled in: one that exists, or a wild one. */
function fill(path: string, known: Known, wild: string | null): string {
  return path.replace(/\{(\w+)\}/g, (_, name: string) =>
    encodeURIComponent(wild ?? known[name] ?? 'none'),
  );
}

interface Prepared {
  readonly service: Mounted;
  readonly known: Known;
  /** Bodies that are taken, by their way, where chance alone would seldom write one. */
  readonly right: Readonly<Record<string, unknown>>;
}

/** A service in which there is one of everything that a question may name. */
async function prepared(): Promise<Prepared> {
  const service = await mount(await newFolder());
  const pad = await filledPad(service);
  const plan = await newPlan(service, pad.id);
  const sheet = pad.sheets[0]!;
  const lab = { lab: [50, 20, -10] };
  const ink = { kind: 'ink', name: 'Kelp', colour: lab };
  const { supplies } = valueOf<{ supplies: { id: string }[] }>(
    await ask(service, 'POST', '/api/supplies', ink),
  );
  const supply = supplies[0]!.id;
  const { layouts } = valueOf<{ layouts: { id: string }[] }>(
    await ask(service, 'GET', '/api/layouts'),
  );
  const own = await ask(service, 'POST', '/api/layouts', { ...layouts[0]!, id: 'own-one' });
  expect(own.statusCode).toBe(201);
  const part = { sheet: sheet.id, size: { width: '2 in', height: '3 in' } };
  const kept = await ask(service, 'POST', `/api/pads/${pad.id}/leftovers`, part);
  const { leftovers } = valueOf<{ leftovers: { id: string }[] }>(kept);
  const side = sheet.front!;
  const { body: sent, headers } = form([
    ['side', 'front'],
    ['arrangement', 'later'],
    ['photo', photoOf({ papers: papers(2, 8) }), 'photo.jpg'],
  ]);
  const later = { ...headers, prefer: 'respond-async' };
  const { id: upload } = valueOf<{ id: string }>(
    await ask(service, 'POST', `/api/pads/${pad.id}/photos`, sent, later),
  );
  const layout = layouts[0]!;
  const slots = Object.fromEntries(plan.sheetsUsed.map((used) => [used.slot, used.sheet]));
  const scene = photoOf({ papers: papers(3, 9) }).toString();
  return {
    service,
    right: {
      'POST /api/pads/{pad}/photos': { side: 'front', arrangement: 'more', photo: scene },
      'PATCH /api/photos/{photo}': { white: [700, 700] },
      'PATCH /api/sides/{side}': { corners: side.corners },
      'POST /api/photos/{photo}/supplies': { kind: 'ink', name: 'Coral', at: [700, 700] },
      'PATCH /api/supplies/{supply}': { name: 'Deep teal' },
      'POST /api/matches': { supply, side: side.id },
      'POST /api/layouts': { ...layout, id: 'another' },
      'POST /api/layouts/check': layout,
      'PUT /api/layouts/{layout}': { ...layout, id: 'own-one' },
      'POST /api/plans': { pad: pad.id, cards: [{ layout: layout.id, count: 2 }] },
      'POST /api/plans/{plan}/taken': { slots },
      'POST /api/supplies.csv': 'kind,name,L,a,b,sheets\nink,Slate,40,0,-5,',
    },
    known: {
      pad: pad.id,
      plan: plan.id,
      from: plan.id,
      sheet: sheet.id,
      side: side.id,
      front: side.id,
      back: sheet.back!.id,
      photo: pad.photos[0]!.id,
      supply,
      upload,
      leftover: leftovers[0]!.id,
      layer: plan.cards[0]!.layers[0]!.layer,
      layout: 'own-one',
      card: 'card-1',
      slot: plan.sheetsUsed[0]!.slot,
      without: pad.sheets[3]!.id,
    },
  };
}

/** What is sent beside the address: JSON, a form, or bytes where neither is described. */
function bodyFor(operation: Operation, body: unknown): { sent: unknown; type: string } {
  if (operation.method === 'GET') return { sent: undefined, type: 'none' };
  if (operation.json !== null || operation.form === null)
    return {
      sent: operation.json === null && typeof body === 'string' ? body : asJson(body),
      type: operation.file ?? 'application/json',
    };
  return asForm(body);
}

function asJson(value: unknown): string {
  return value === undefined ? 'null' : JSON.stringify(value);
}

/** As it stands in a form or an address; what is no text is written as JSON. */
function asWord(value: unknown): string {
  return typeof value === 'string' ? value : asJson(value);
}

function asForm(body: unknown): { sent: Buffer; type: string } {
  const words = typeof body === 'object' && body !== null ? Object.entries(body) : [];
  const parts = words.map(([name, value]: [string, unknown]) => {
    const text = asWord(value);
    return name === 'photo'
      ? ([name, Buffer.from(photoIn(text)), 'photo.jpg'] as const)
      : ([name, text] as const);
  });
  const { body: sent, headers } = form(parts);
  return { sent, type: headers['content-type']! };
}

/** A scene that the fake desk reads, or what it refuses as no photo; it cannot tell a broken scene from a whole one. */
function photoIn(text: string): string {
  return text.startsWith('{"papers":[{') ? text : `no scene: ${text}`;
}

/** Ways that delete what later questions need come last. */
function inOrder(all: readonly Operation[]): readonly Operation[] {
  const last = all.filter(({ method }) => method === 'DELETE').reverse();
  return [...all.filter(({ method }) => method !== 'DELETE'), ...last];
}

const ANYTHING: Schema = { type: 'object' };

/** What describes the service, or looks after it, is not a question for the page. */
const BESIDE_THE_DOCUMENT = new Set(['GET /api/openapi.json', 'GET /api/metrics', 'GET /api/*']);

describe('wild questions', () => {
  test('every way that is served is in the document', async () => {
    const service = await mount(await newFolder());
    const described = (await operations(service)).map(({ method, path }) => `${method} ${path}`);
    const served = waysIn(service.app.printRoutes({ commonPrefix: false }))
      .filter((way) => way.includes(' /api/'))
      .map((way) => way.replace(/:(\w+)/g, '{$1}'))
      .filter((way) => !BESIDE_THE_DOCUMENT.has(way));
    expect(described.length).toBeGreaterThan(60);
    expect([...described].sort()).toEqual(served.sort());
  });

  test('every way that takes something says what', async () => {
    const service = await mount(await newFolder());
    const silent = (await operations(service))
      .filter(({ method }) => method !== 'GET' && method !== 'DELETE')
      .filter(({ json, form: words, file }) => json === null && words === null && file === null)
      .map(({ method, path }) => `${method} ${path}`);
    expect(silent).toEqual([]);
  });

  test('none is answered with 500, whatever the body, and the service goes on', async () => {
    const { service, known, right } = await prepared();
    const answered = new Map<string, Set<number>>();
    for (const operation of inOrder(await operations(service))) {
      const { method, path, json, form: words, query } = operation;
      // It would go on for ever where its pad exists.
      const names = path.endsWith('/events') ? {} : known;
      const schema = json ?? words;
      const example = right[`${method} ${path}`];
      const body = almostRight(schema ?? ANYTHING, known, example);
      const asked = fc.record({
        body: fc.oneof({ arbitrary: body, weight: 5 }, { arbitrary: wildValue, weight: 1 }),
        query: almostRight({ type: 'object', properties: query }, known),
        wild: fc.option(
          wildText.filter((text) => text !== '' && isWellFormed(text)),
          { freq: 3 },
        ),
      });
      const statuses = new Set<number>();
      answered.set(`${method} ${path}`, statuses);
      await fc.assert(
        fc.asyncProperty(asked, async (drawn) => {
          // The first question of each kind names what exists, so that it gets past the door.
          const wild = statuses.size === 0 ? null : drawn.wild;
          const { sent, type } = bodyFor(operation, drawn.body);
          const url = `${fill(path, names, wild)}${asQuery(drawn.query)}`;
          const headers = { 'content-type': type };
          const { statusCode, payload } = await ask(service, method, url, sent, headers);
          expect([method, url, statusCode < 500, payload.slice(0, 300)]).toEqual([
            method,
            url,
            true,
            expect.anything(),
          ]);
          statuses.add(statusCode);
        }),
        { numRuns: schema === null && example === undefined ? 12 : 24, seed: 20260504 },
      );
    }
    expect((await ask(service, 'GET', '/api/health')).statusCode).toBe(200);
    // Questions that are almost right reach behind the door: most ways have also done what they are for.
    const done = [...answered.values()].filter((statuses) => [...statuses].some((s) => s < 300));
    expect(done.length).toBeGreaterThan(0.85 * answered.size);
  });

  test.each([
    ['nested a thousand deep', deep(1000)],
    ['nested a hundred thousand deep', deep(100_000)],
    ['a number beyond all', '{"name":"a","sheetSize":{"width":1e400,"height":1e400}}'],
    ['half a character', '{"name":"\\ud800","sheetSize":{"width":"6 in","height":"6 in"}}'],
    ['a nought character', '{"name":"a\\u0000b","sheetSize":{"width":"6 in","height":"6 in"}}'],
    ['broken UTF-8', Buffer.from([0x7b, 0x22, 0xff, 0xfe, 0x22, 0x3a, 0x31, 0x7d])],
    ['nothing', ''],
    ['null', 'null'],
  ])('a body that is %s is refused in words', async (_, body) => {
    const service = await mount(await newFolder());
    const answer = await ask(service, 'POST', '/api/pads', body);
    expect(answer.statusCode).toBeGreaterThanOrEqual(400);
    expect(answer.statusCode).toBeLessThan(500);
    expect(answer.headers['content-type']).toMatch(/^application\/problem\+json/);
  });

  test.each([
    '/api/pads/%',
    '/api/pads/%ff',
    '/api/pads/..%2f..%2fetc%2fpasswd',
    '/api//pads',
    '/%00',
  ])('a broken address is refused in words: %s', async (url) => {
    const service = await mount(await newFolder());
    const answer = await ask(service, 'GET', url);
    expect(answer.statusCode).toBeGreaterThanOrEqual(400);
    expect(answer.statusCode).toBeLessThan(500);
    expect(answer.headers['content-type']).toMatch(/^application\/problem\+json/);
  });
});

function isWellFormed(text: string): boolean {
  return !/\p{Cs}/u.test(text);
}

/** The query of an address. */
function asQuery(query: unknown): string {
  if (typeof query !== 'object' || query === null) return '';
  const words = Object.entries(query).map(([name, value]: [string, unknown]) => {
    const text = asWord(value);
    return isWellFormed(name + text)
      ? `${encodeURIComponent(name)}=${encodeURIComponent(text)}`
      : '';
  });
  return words.length === 0 ? '' : `?${words.join('&')}`;
}

/** The ways in the tree that the web framework prints: a step a line, deeper by four letters, its methods behind it. */
function waysIn(tree: string): string[] {
  const above: string[] = [];
  return tree.split('\n').flatMap((line) => {
    const [, deep = '', step, methods = ''] =
      /^([│ ]*)[├└]── (\S+)(?: \((.*)\))?$/.exec(line) ?? [];
    if (step === undefined) return [];
    const depth = deep.length / 4;
    above[depth] = `${depth === 0 ? '' : above[depth - 1]!}${step}`;
    const known = methods.split(', ').filter((method) => method !== '' && method !== 'HEAD');
    return known.map((method) => `${method} ${above[depth]!}`);
  });
}
