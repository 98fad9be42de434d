import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { newFolder } from '../store/folder.ts';
import { ask, filledPad, mount, newPlan, valueOf } from './mount.ts';
import type { Mounted } from './mount.ts';

interface Operation {
  readonly method: 'GET' | 'POST' | 'PATCH' | 'DELETE';
  readonly path: string;
}

/** Every way in the OpenAPI document. */
async function operations(service: Mounted): Promise<Operation[]> {
  const { paths } = valueOf<{ paths: Record<string, Record<string, unknown>> }>(
    await ask(service, 'GET', '/api/openapi.json'),
  );
  return Object.entries(paths).flatMap(([path, item]) =>
    Object.keys(item)
      .filter((method) => /^(get|post|patch|delete)$/.test(method))
      .map((method) => ({ method: method.toUpperCase() as Operation['method'], path })),
  );
}

/** Words that the wire knows, so that a wild body gets past the first check. */
const KNOWN = ['name', 'sheetSize', 'width', 'height', 'kind', 'colour', 'lab', 'corners', 'cards'];
const MORE = ['layout', 'count', 'pins', 'layer', 'card', 'front', 'back', 'copies', 'label'];
const KEYS = [...KNOWN, ...MORE, 'pad', 'taste', 'supplies', 'sides', 'white', 'fold', 'box', 'id'];

const wildText = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 60 }),
  fc.constantFrom('\u0000', '\ud800', '\u202e', '__proto__', "'; drop table pads; --", '../../x'),
  fc.constantFrom('6 in', '1e999 in', '-4 mm', '¾', 'cardstock', 'front', 'NaN', ''),
  fc.string({ unit: 'grapheme', minLength: 200, maxLength: 400 }),
);
const wildValue = fc.letrec((tie) => ({
  value: fc.oneof(
    { depthSize: 'small', withCrossShrink: true },
    wildText,
    fc.double({ noNaN: false }),
    fc.constantFrom(1e308, -1, 0, 2 ** 53, null, true, false),
    fc.array(tie('value'), { maxLength: 5 }),
    fc.dictionary(fc.constantFrom(...KEYS), tie('value'), { maxKeys: 6 }),
  ),
})).value;

function deep(levels: number): string {
  return `${'{"name":['.repeat(levels)}1${']}'.repeat(levels)}`;
}

/** The path with each name filled in: one that exists, or a wild one. */
function fill(path: string, known: Readonly<Record<string, string>>, wild: string | null): string {
  return path.replace(/\{(\w+)\}/g, (_, name: string) =>
    encodeURIComponent(wild ?? known[name] ?? 'none'),
  );
}

async function prepared(): Promise<{ service: Mounted; known: Record<string, string> }> {
  const service = await mount(await newFolder());
  const pad = await filledPad(service);
  const plan = await newPlan(service, pad.id);
  const sheet = pad.sheets[0]!;
  const side = sheet.front!;
  const photo = pad.photos[0]!.id;
  const known = { pad: pad.id, plan: plan.id, sheet: sheet.id, side: side.id, photo };
  return { service, known: { ...known, card: 'card-1' } };
}

describe('wild questions', () => {
  test('the document lists the ways of the wire', async () => {
    const service = await mount(await newFolder());
    const all = (await operations(service)).map(({ method, path }) => `${method} ${path}`);
    expect(all).toEqual(
      expect.arrayContaining([
        'GET /api/health',
        'POST /api/pads',
        'GET /api/pads',
        'GET /api/pads/{pad}',
        'POST /api/pads/{pad}/photos',
        'POST /api/supplies',
        'GET /api/supplies',
        'POST /api/matches',
        'GET /api/layouts',
        'POST /api/plans',
        'GET /api/plans/{plan}',
        'GET /api/plans/{plan}/cards/{card}.png',
        'GET /api/plans/{plan}/guide.pdf',
      ]),
    );
  });

  test('none is answered with 500, whatever the body, and the service goes on', async () => {
    const { service, known } = await prepared();
    const ways = (await operations(service)).filter(({ path }) => !path.endsWith('/events'));
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(...ways),
        fc.oneof(wildValue, fc.object({ maxDepth: 2 })),
        fc.option(wildText.filter((text) => text !== '' && isWellFormed(text))),
        async ({ method, path }, body, wild) => {
          // Deleting the very things that the next questions need would tell nothing.
          const url = fill(path, method === 'DELETE' ? {} : known, wild);
          const sent =
            method === 'GET' ? undefined : ((JSON.stringify(body) as string | undefined) ?? 'null');
          const { statusCode, payload } = await ask(service, method, url, sent);
          expect([statusCode < 500, payload.slice(0, 300)]).toEqual([true, expect.anything()]);
        },
      ),
      { numRuns: 400, seed: 20260504 },
    );
    expect((await ask(service, 'GET', '/api/health')).statusCode).toBe(200);
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
