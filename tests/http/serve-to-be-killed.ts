/**
 * Serves the data folder named on the command line, or with a second word the shared place that it holds as JSON,
 * on a free port, with the fake desk, or with the real one where DESK is 'real'; prints the port, and serves until it is killed.
 */
import { randomBytes } from 'node:crypto';
import type { AddressInfo } from 'node:net';
import { buildApp } from '../../server/app.ts';
import { createChanges } from '../../server/http/changes.ts';
import { openDesk } from '../../server/photo-desk.ts';
import { openStore } from '../../server/store/open-store.ts';
import type { Shared } from '../../server/store/open-store.ts';
import { fakeDesk } from './fake-desk.ts';

const [folder, place] = process.argv.slice(2);
const shared = place === undefined ? null : (JSON.parse(place) as Shared);
const store = await openStore(folder!, shared);
const app = await buildApp(
  {
    store,
    desk: process.env.DESK === 'real' ? openDesk() : fakeDesk(),
    now: () => new Date().toISOString(),
    newId: () => randomBytes(12).toString('base64url'),
    changes: await createChanges(store),
    doing: () => null,
    version: '0.0.0',
  },
  { host: '127.0.0.1', page: 'no such folder' },
);
await app.listen({ port: 0, host: '127.0.0.1' });
const { missing } = store.swept;
console.log(
  JSON.stringify({ port: (app.server.address() as AddressInfo).port, missing: missing.length }),
);
