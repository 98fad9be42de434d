/** Starts the service: settings, data folder, desk, port; the demo pad at the first start; and ends it without loss. */
import { randomBytes } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { buildApp } from './app.ts';
import { loadDemo } from './demo.ts';
import { isOnNetwork } from './http/askers.ts';
import { createChanges } from './http/changes.ts';
import type { Edges, Service } from './http/edges.ts';
import { addressesWith, newCode } from './http/keys.ts';
import { HOUSE } from './store/asker.ts';
import { deskLimits, openDesk } from './photo-desk.ts';
import { WrongSetting, inRoot, readSettings } from './settings.ts';
import type { ServiceSettings } from './settings.ts';
import { FolderInUse } from './store/folder-lock.ts';
import { openStore } from './store/open-store.ts';

try {
  await start(readSettings(process.env));
} catch (fault) {
  console.error(saying(fault));
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
  endWell(app, edges);
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
function endWell(app: Service, { store, desk }: Edges): void {
  let ending = false;
  const end = (): void => {
    if (ending) process.exit(1);
    ending = true;
    console.log('Finishing what is under way …');
    app
      .close()
      .then(() => desk.close())
      .then(() => store.close())
      .then(
        () => process.exit(0),
        (fault: unknown) => {
          console.error(saying(fault));
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

/** What stopped the start, in a sentence that says what to do. */
function saying(fault: unknown): string {
  if (fault instanceof WrongSetting || fault instanceof FolderInUse) return fault.message;
  if (!(fault instanceof Error)) return String(fault);
  const code = 'code' in fault ? String(fault.code) : '';
  if (code === 'EADDRINUSE')
    return 'The port is already taken. Stop what runs there, or choose another: PORT=7444 npm start';
  if (code === 'EADDRNOTAVAIL')
    return 'HOST is not an address of this computer. Leave it out to listen on 127.0.0.1.';
  if (/^(ECONNREFUSED|ENOTFOUND|EAI_AGAIN|28|3D000)/.test(code))
    return `Expected a database and a bucket that answer at DATABASE_URL and PHOTOS_URL: ${fault.message}`;
  if (code === 'EACCES' || code === 'EROFS' || code === 'EPERM')
    return `Expected a data folder and a port that may be used, but this is not allowed: ${fault.message}`;
  if (/SQLITE_(CORRUPT|NOTADB|IOERR)/.test(code))
    return 'The database in the data folder is damaged. Bring the folder back from a backup, or start with another DATA_DIR.';
  if (/SQLITE_(READONLY|CANTOPEN|PERM)/.test(code))
    return 'The data folder cannot be written. Allow it, or start with another DATA_DIR.';
  return fault.stack ?? fault.message;
}
