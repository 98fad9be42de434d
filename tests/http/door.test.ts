import { describe, expect, test } from 'vitest';
import { newFolder } from '../store/folder.ts';
import { fakeDesk, papers, photoOf } from './fake-desk.ts';
import { ask, mount, newPad, problemIn, sendForm, valueOf } from './mount.ts';

const PAD = { name: 'Moss', sheetSize: { width: '6 in', height: '6 in' } };

describe('the door', () => {
  test.each(['evil.example', 'evil.example:7443', '127.0.0.1.evil.example', 'a b'])(
    'a foreign host name is refused (DNS rebinding): "%s"',
    async (host) => {
      const service = await mount(await newFolder());
      const answer = await ask(service, 'GET', '/api/pads', undefined, { host });
      expect(problemIn(answer)).toMatchObject({ status: 403, type: '/problems/foreign-host' });
    },
  );

  test.each(['localhost:7443', '127.0.0.1:7443', '[::1]:7443', '192.168.1.20:7443'])(
    'an own name or an address in figures is let in: %s',
    async (host) => {
      const service = await mount(await newFolder());
      const answer = await ask(service, 'GET', '/api/pads', undefined, { host });
      expect(answer.statusCode).toBe(200);
    },
  );

  test.each([
    { origin: 'https://evil.example' },
    { origin: 'null' },
    { origin: 'http://localhost:9999' },
    { 'sec-fetch-site': 'cross-site' },
  ])('another page may change nothing: %j', async (headers) => {
    const service = await mount(await newFolder());
    const host = { host: 'localhost:7443', ...headers } as Record<string, string>;
    const answer = await ask(service, 'POST', '/api/pads', PAD, host);
    expect(problemIn(answer)).toMatchObject({ status: 403, type: '/problems/foreign-page' });
    expect(valueOf(await ask(service, 'GET', '/api/pads'))).toEqual({ pads: [] });
  });

  test('the own page may', async () => {
    const service = await mount(await newFolder());
    const headers = { host: 'localhost:7443', origin: 'http://localhost:7443' };
    expect((await ask(service, 'POST', '/api/pads', PAD, headers)).statusCode).toBe(201);
  });

  test('every answer forbids inline script, framing and guessing of types', async () => {
    const service = await mount(await newFolder());
    for (const url of ['/api/pads', '/api/none', '/api/openapi.json']) {
      const { headers } = await ask(service, 'GET', url);
      const policy = String(headers['content-security-policy']);
      expect(policy).toContain("script-src 'self'");
      expect(policy).not.toContain('unsafe-inline');
      expect(policy).toContain("frame-ancestors 'none'");
      expect(headers['x-content-type-options']).toBe('nosniff');
      expect(headers['x-powered-by']).toBeUndefined();
    }
  });
});

describe('a question that cannot be read', () => {
  test.each([
    ['no JSON', '/api/pads', '{"name":', 400, 'the body'],
    ['a field of JavaScript’s own', '/api/pads', '{"__proto__":{"name":"x"}}', 400, 'the body'],
    ['an address that is no UTF-8', '/api/pads/%E0%A4%A/photos', '{}', 400, 'address'],
    ['an id that is longer than any', `/api/pads/${'x'.repeat(300)}/photos`, '{}', 404, 'pad'],
  ])('%s: the problem names where', async (_what, address, body, status, field) => {
    const service = await mount(await newFolder());
    const headers = { 'content-type': 'application/json' };
    const answer = await ask(service, 'POST', address, Buffer.from(body), headers);
    expect(problemIn(answer)).toMatchObject({ status, field });
  });

  test('a body of another kind: the problem names its content-type', async () => {
    const service = await mount(await newFolder());
    const headers = { 'content-type': 'text/xml' };
    const answer = await ask(service, 'POST', '/api/pads', Buffer.from('<pad/>'), headers);
    expect(problemIn(answer)).toMatchObject({ status: 415, field: 'content-type' });
  });
});

describe('how often one device may ask', () => {
  test.each([
    ['POST', '/api/keys', 30],
    ['POST', '/api/plans', 1200],
    ['GET', '/api/plans/none/guide.pdf', 1200],
    ['GET', '/api/plans/none/others', 1200],
    ['POST', '/api/pads/none/photos', 1200],
    ['POST', '/api/supplies', 1200],
    ['GET', '/api/pads/none/file', 1200],
    ['GET', '/api/pads', 60_000],
  ] as const)('%s %s: at most %i a minute', async (method, url, most) => {
    const service = await mount(await newFolder());
    const { headers } = await ask(service, method, url, method === 'GET' ? undefined : {});
    expect(headers['x-ratelimit-limit']).toBe(String(most));
  });

  test('beyond that it is told when to come back, and other ways still answer', async () => {
    const service = await mount(await newFolder(), fakeDesk(), '0.0.0.0');
    const guess = (): ReturnType<typeof ask> =>
      ask(service, 'POST', '/api/keys', { code: 'guess' });
    for (let at = 0; at < 30; at++) expect((await guess()).statusCode).toBeLessThan(429);
    const answer = await guess();
    expect(problemIn(answer)).toMatchObject({ status: 429, type: '/problems/too-many' });
    expect(Number(answer.headers['retry-after'])).toBeGreaterThan(0);
    expect((await ask(service, 'GET', '/api/health')).statusCode).toBe(200);
  });
});

describe('problems (RFC 9457)', () => {
  test('an unknown address is not found; a known one asked wrongly says how', async () => {
    const service = await mount(await newFolder());
    expect(problemIn(await ask(service, 'GET', '/api/none'))).toMatchObject({ status: 404 });
    const wrong = await ask(service, 'PUT', '/api/pads', PAD);
    expect(problemIn(wrong)).toMatchObject({ status: 405, received: 'PUT' });
    expect(wrong.headers.allow).toBe('GET, HEAD, POST');
  });

  test('a body of another kind, a broken one and one too large', async () => {
    const service = await mount(await newFolder());
    const send = (body: string, type = 'application/json'): ReturnType<typeof ask> =>
      ask(service, 'POST', '/api/pads', body, { 'content-type': type });
    expect(problemIn(await send('<pad/>', 'text/xml')).status).toBe(415);
    expect(problemIn(await send('{"name":')).status).toBe(400);
    expect(problemIn(await send('{"__proto__":{"a":1}}')).status).toBe(400);
    expect(problemIn(await send(`"${'x'.repeat(2 ** 20)}"`)).status).toBe(413);
    const photos = `/api/pads/${await newPad(service)}/photos`;
    expect(problemIn(await ask(service, 'POST', photos, PAD)).status).toBe(400);
  });

  test('a form of too many parts, and one with a word longer than any, are refused and leave nothing behind', async () => {
    const service = await mount(await newFolder());
    const photos = `/api/pads/${await newPad(service)}/photos`;
    const photo = ['photo', photoOf({ papers: papers(2) }), 'a.jpg'] as const;
    const words = [
      ['side', 'front'],
      ['arrangement', 'one'],
    ] as const;
    const many = Array.from({ length: 71 }, (_, at) => [`word ${at}`, 'x'] as const);
    const files = [photo, ['photo', Buffer.from('b'), 'b.jpg'] as const];
    const long = ['arrangement', 'x'.repeat(5000)] as const;
    for (const parts of [
      [...many, photo],
      [...words, ...files],
      [words[0], long, photo],
    ]) {
      const { status, mend } = problemIn(await sendForm(service, photos, parts));
      expect([400, 413]).toContain(status);
      expect(mend).toMatch(/\w/);
    }
    expect(await service.edges.store.files.clearIncoming()).toBe(0);
  });

  test('a fault of the service itself tells nothing of how it is made', async () => {
    const broken = new Error('SELECT secret FROM /srv/plyhue/server/store/pads.ts');
    const desk = { ...fakeDesk(), readSides: () => Promise.reject(broken) };
    const service = await mount(await newFolder(), desk);
    const answer = await sendForm(service, `/api/pads/${await newPad(service)}/photos`, [
      ['side', 'front'],
      ['arrangement', 'one'],
      ['photo', photoOf({ papers: papers(2) }), 'a.jpg'],
    ]);
    expect(problemIn(answer)).toMatchObject({ status: 500, type: '/problems/broken' });
    expect(answer.payload).not.toMatch(/secret|\.ts|stack|select/i);
    expect((await ask(service, 'GET', '/api/pads')).statusCode).toBe(200);
  });

  test('the type of a problem is an address that answers', async () => {
    const service = await mount(await newFolder());
    const { type } = problemIn(await ask(service, 'GET', '/api/none'));
    expect((await ask(service, 'GET', type)).payload).toContain('Not found');
  });
});

test('health tells that the service is ready', async () => {
  const service = await mount(await newFolder());
  const answer = await ask(service, 'GET', '/api/health');
  expect(answer.statusCode).toBe(200);
  expect(valueOf(answer)).toMatchObject({ status: 'ok', live: true, ready: true });
});
