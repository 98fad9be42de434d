import { networkInterfaces } from 'node:os';
import { z } from 'zod';
import * as Wire from '../contract/keys.ts';
import { HOUSE } from '../store/asker.ts';
import type { Asker } from '../store/asker.ts';
import type { KeyRow } from '../store/keys.ts';
import { answers, NOTHING } from './answers.ts';
import { askerNow } from './askers.ts';
import type { Edges, Service } from './edges.ts';
import { found } from './found.ts';
import { KEY_COOKIE, KEY_MANNERS, cookieOf, hashOf, newSecret } from './key-cookie.ts';
import { Spoken, problem } from './problem.ts';

const A_MINUTE = 60_000;

/** How long a code waits for its device. */
const CODE_LASTS = 15 * A_MINUTE;

/** Guessing a code is hopeless; this keeps the log of a guesser short. */
const FEW = { rateLimit: { max: 30, timeWindow: '1 minute' } };

/** Devices that are let in on a network, and people who share one service. */
export function keyRoutes(app: Service, edges: Edges, network: boolean): void {
  const { store } = edges;

  app.post(
    '/api/keys',
    {
      config: { ...FEW, open: true },
      schema: {
        summary: 'Bring a code and be given a key, as a cookie; the code is used up.',
        body: Wire.NewKey,
        response: answers({ 201: Wire.Key }),
      },
    },
    async (request, reply) => {
      const secret = newSecret();
      const key = await store.write(async ({ keys }) => {
        const code = await keys.takeCode(hashOf(request.body.code), edges.now());
        if (code === null) return null;
        const { person, pad, name } = code;
        const row = { id: edges.newId(), person, pad, name };
        const whole = { ...row, hash: hashOf(secret), createdAt: edges.now() };
        await keys.add(whole);
        return whole;
      });
      if (key === null) throw noSuchCode();
      void reply.setCookie(KEY_COOKIE, cookieOf(key, secret), KEY_MANNERS);
      return reply.code(201).send(onWire(key));
    },
  );

  app.post(
    '/api/codes',
    {
      config: FEW,
      schema: {
        summary:
          'A code for another device: a phone for one pad, or one that may do all that you may.',
        body: Wire.NewCode,
        response: answers({ 201: Wire.Code }),
      },
    },
    async (request, reply) => {
      if (!network) throw aloneHere();
      const { pad = null, name } = request.body;
      const { person } = askerNow();
      if (pad !== null) found(await store.read.pads.at(pad), 'pad', pad);
      const code = await newCode(edges, { person, pad }, name);
      return reply.code(201).send(onAddresses(code, app));
    },
  );

  app.get(
    '/api/keys',
    {
      schema: {
        summary: 'Your devices that are let in.',
        response: answers({ 200: Wire.KeyList }),
      },
    },
    async () => {
      const keys = await store.read.keys.ofPerson(askerNow().person);
      return { keys: keys.map(onWire), needed: network };
    },
  );

  app.delete(
    '/api/keys/:key',
    {
      schema: {
        summary: 'Take a key away; the device is not let in any more.',
        params: z.object({ key: z.string() }),
        response: answers({ 204: NOTHING }),
      },
    },
    async (request, reply) => {
      const { key: id } = request.params;
      await store.write(async ({ keys }) => {
        const key = await keys.at(id);
        found(key?.person === askerNow().person ? key : null, 'key', id);
        await keys.remove(id);
      });
      return reply.code(204).send();
    },
  );

  app.get(
    '/api/me',
    {
      config: { phone: true },
      schema: { summary: 'What this device may see.', response: answers({ 200: Wire.Me }) },
    },
    () => ({ pad: askerNow().pad, network }),
  );

  peopleRoutes(app, edges);
}

/** Only the person of the house invites others. */
function peopleRoutes(app: Service, edges: Edges): void {
  const { store } = edges;
  const onlyHouse = (): void => {
    if (askerNow().person === HOUSE) return;
    throw new Spoken(
      problem('beyond-key', {
        detail: 'Only whose computer this is may invite people.',
        mend: 'Ask her to invite them.',
      }),
    );
  };

  app.post(
    '/api/people',
    {
      config: FEW,
      schema: {
        summary: 'Invite a person, who will have pads of her own here.',
        body: Wire.NewPerson,
        response: answers({ 201: Wire.Invited }),
      },
    },
    async (request, reply) => {
      onlyHouse();
      const person = { id: edges.newId(), name: request.body.name, createdAt: edges.now() };
      await store.write(({ keys }) => keys.addPerson(person));
      const code = await newCode(edges, { person: person.id, pad: null }, person.name);
      return reply.code(201).send({ person, code: onAddresses(code, app) });
    },
  );

  app.get(
    '/api/people',
    { schema: { summary: 'Who was invited.', response: answers({ 200: Wire.PersonList }) } },
    async () => {
      onlyHouse();
      return { people: await store.read.keys.people() };
    },
  );
}

/** Makes a code; only its hash is kept. */
export async function newCode(
  { store, now }: Pick<Edges, 'store' | 'now'>,
  { person, pad }: Asker,
  name: string,
): Promise<Omit<Wire.Code, 'addresses'>> {
  const code = newSecret();
  const expiresAt = new Date(Date.parse(now()) + CODE_LASTS).toISOString();
  await store.write(({ keys }) =>
    keys.addCode({ hash: hashOf(code), person, pad, name, expiresAt }),
  );
  return { code, expiresAt };
}

/** The addresses of this computer on its networks, for a code that stands behind the # and so in no log. */
export function addressesWith(code: string, port: number): string[] {
  return Object.values(networkInterfaces())
    .flatMap((each) => each ?? [])
    .filter(({ internal, family }) => !internal && family === 'IPv4')
    .map(({ address }) => `http://${address}:${port}/#code=${code}`);
}

function onAddresses(code: Omit<Wire.Code, 'addresses'>, app: Service): Wire.Code {
  const address = app.server.address();
  const port = address === null || typeof address === 'string' ? 0 : address.port;
  return { ...code, addresses: addressesWith(code.code, port) };
}

function onWire({ id, name, pad, createdAt }: KeyRow): Wire.Key {
  return { id, name, pad, createdAt };
}

function noSuchCode(): Spoken {
  return new Spoken(
    problem('not-found', {
      detail: 'This code was used already, or has waited too long.',
      field: 'code',
      mend: 'Have a new one shown, and open it within a quarter of an hour.',
    }),
  );
}

function aloneHere(): Spoken {
  return new Spoken(
    problem('clash', {
      detail: 'Plyhue listens on this computer only, so no other device can reach it.',
      field: 'host',
      mend: 'Stop it and start it for your home network: HOST=0.0.0.0 npm start',
    }),
  );
}
