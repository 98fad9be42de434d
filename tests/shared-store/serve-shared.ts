/** Serves a shared place with a desk that needs no pixels: `serve-shared.ts FOLDER PLACE-AS-JSON`. */
import { randomBytes } from 'node:crypto';
import { buildApp } from '../../server/app.ts';
import { createChanges } from '../../server/http/changes.ts';
import { openStore } from '../../server/store/open-store.ts';
import type { Shared } from '../../server/store/open-store.ts';
import { fakeDesk } from '../http/fake-desk.ts';

const [folder, place] = process.argv.slice(2);
const store = await openStore(folder!, JSON.parse(place!) as Shared);
const app = await buildApp(
  {
    store,
    desk: fakeDesk(),
    now: () => new Date().toISOString(),
    newId: () => randomBytes(12).toString('base64url'),
    changes: await createChanges(store),
    doing: () => null,
    version: '0.0.0',
  },
  { host: '127.0.0.1', page: 'no such folder' },
);
console.log(await app.listen({ port: 0, host: '127.0.0.1' }));
