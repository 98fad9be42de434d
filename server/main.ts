/** Starts the service: settings, data folder, desk, port; the demo pad at the first start; and ends it without loss. */
import { randomBytes } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { buildApp } from './app.ts';
import { loadDemo } from './demo.ts';
import { faultInWords } from './fault-in-words.ts';
import { isOnNetwork } from './http/askers.ts';
import { createChanges } from './http/changes.ts';
import type { Edges, Service } from './http/edges.ts';
import { startUploadReader } from './http/upload-reader.ts';
import type { UploadReader } from './http/upload-reader.ts';
import { addressesWith, newCode } from './http/keys.ts';
import { HOUSE } from './store/asker.ts';
import { deskLimits, openDesk } from './photo-desk.ts';
import { inRoot, readSettings } from './settings.ts';
import type { ServiceSettings } from './settings.ts';
import { openStore } from './store/open-store.ts';

try {
  await start(readSettings(process.env));
} catch (fault) {
  console.error(faultInWords(fault));
  process.exit(1);
}

async function start(settings: ServiceSettings): Promise<void> {
  const store = await openStore(settings.dataFolder, settings.shared);
  const { cleared, missing } = store.swept;
  if (cleared > 0) console.log(`Cleared ${cleared} unfinished files away.`);
  for (const { shelf, hash } of missing)
    console.warn(`A file of ${shelf} is missing from the data folder: ${hash.slice(0, 12)}…`);
  const limits = deskLimits();
  const desk = openDesk({
    ...limits,
    photoProcesses: settings.photoProcesses ?? limits.photoProcesses,
  });
  let doing: string | null = 'starting';
  const edges: Edges = {
    store,
    desk,
    now: () => new Date().toISOString(),
    newId: () => randomBytes(12).toString('base64url'),
    changes: await createChanges(store),
    doing: () => doing,
    version: versionOfPackage(),
  };
  const app = await buildApp(edges, {
    host: settings.host,
    page: inRoot('dist', 'web'),
    logger: { level: 'warn', stream: process.stderr },
  });
  const reader = startUploadReader(edges);
  endWell(app, edges, reader);
  await app.listen({ port: settings.port, host: settings.host });
  if (settings.demo) {
    doing = 'reading the demo pad';
    await loadDemo(edges, inRoot('sample-swatches'), (line) => console.log(line));
  }
  doing = null;
  await sayWhere(app, edges, settings.host);
}

/** On a network the address carries a code, good once, that gives the first device its key. */
async function sayWhere(app: Service, edges: Edges, host: string): Promise<void> {
  if (!isOnNetwork(host)) {
    console.log(`Plyhue is ready at ${addressOf(app)}`);
    return;
  }
  const { code } = await newCode(edges, { person: HOUSE, pad: null }, 'First device');
  const { port } = new URL(addressOf(app));
  const [address = `${addressOf(app)}/#code=${code}`] = addressesWith(code, Number(port));
  console.log(
    `Plyhue is ready on your network. Open this within a quarter of an hour; it works once:`,
  );
  console.log(`  ${address}`);
}

/** At the first signal nothing new is taken, what is under way is finished; at the second it ends at once. */
function endWell(app: Service, { store, desk }: Edges, reader: UploadReader): void {
  let ending = false;
  const end = (): void => {
    if (ending) process.exit(1);
    ending = true;
    console.log('Finishing what is under way …');
    app
      .close()
      .then(() => reader.stop())
      .then(() => desk.close())
      .then(() => store.close())
      .then(
        () => process.exit(0),
        (fault: unknown) => {
          console.error(faultInWords(fault));
          process.exit(1);
        },
      );
  };
  process.on('SIGINT', end);
  process.on('SIGTERM', end);
}

function addressOf(app: Service): string {
  const address = app.server.address();
  if (address === null || typeof address === 'string') return String(address);
  const name = address.family === 'IPv6' ? `[${address.address}]` : address.address;
  return `http://${name}:${address.port}`;
}

function versionOfPackage(): string {
  const file = JSON.parse(readFileSync(inRoot('package.json'), 'utf8')) as { version: string };
  return file.version;
}
