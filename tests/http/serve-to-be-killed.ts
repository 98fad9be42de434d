/**
 * Serves the data folder named on the command line, or with a second word the shared place that it holds as JSON,
 * on a free port, with the fake desk, where DESK is 'real' with one that reads real photos too, or where it is 'stuck' with one that
 * never reads; prints the port, and serves until it is killed.
 */
import { randomBytes } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import type { AddressInfo } from 'node:net';
import { buildApp } from '../../server/app.ts';
import { createChanges } from '../../server/http/changes.ts';
import type { Edges } from '../../server/http/edges.ts';
import { openDesk } from '../../server/photo-desk.ts';
import type { Desk } from '../../server/photo-desk.ts';
import { openStore } from '../../server/store/open-store.ts';
import type { Shared } from '../../server/store/open-store.ts';
import { startUploadReader } from '../../server/http/upload-reader.ts';
import { fakeDesk } from './fake-desk.ts';

/** A killed process is taken for dead soon, so that the tests need not wait; in milliseconds. */
const PATIENCE = 3000;

const [folder, place] = process.argv.slice(2);
const shared = place === undefined ? null : (JSON.parse(place) as Shared);
const store = await openStore(folder!, shared, PATIENCE);
const edges: Edges = {
  store,
  desk: deskCalled(process.env.DESK),
  now: () => new Date().toISOString(),
  newId: () => randomBytes(12).toString('base64url'),
  changes: await createChanges(store),
  doing: () => null,
  version: '0.0.0',
};
const app = await buildApp(edges, { host: '127.0.0.1', page: 'no such folder' });
startUploadReader(edges, { places: 2, pace: 50, alive: PATIENCE / 5 });
await app.listen({ port: 0, host: '127.0.0.1' });
const { missing } = store.swept;
console.log(
  JSON.stringify({ port: (app.server.address() as AddressInfo).port, missing: missing.length }),
);

function deskCalled(name: string | undefined): Desk {
  if (name === 'real') return deskForBoth();
  if (name !== 'stuck') return fakeDesk();
  return { ...fakeDesk(), readSides: () => new Promise<never>(() => undefined) };
}

/** Scenes are read by the fake desk, other pictures by the real one: what waits may be of either kind. */
function deskForBoth(): Desk {
  const [fake, real] = [fakeDesk(), openDesk()];
  return {
    ...fake,
    readSides: async (task) => {
      const isScene = (await readFile(task.file)).subarray(0, 1).toString() === '{';
      return (isScene ? fake : real).readSides(task);
    },
    load: () => real.load(),
    close: () => real.close(),
  };
}
