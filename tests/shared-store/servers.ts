import { execFileSync } from 'node:child_process';
import { chownSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import S3rver from 's3rver';

/** The keys that the S3 server knows. */
export const S3_KEY = 'S3RVER';

/** PostgreSQL and an S3 server of one's own, on free ports of this computer. */
export interface SharedServers {
  /** `postgres://...` up to the name of the database. */
  readonly database: string;
  /** Of the S3 server; its bucket is `plyhue`. */
  readonly endpoint: string;
  stop(): Promise<void>;
}

/** Starts both; `programs` is the folder with `initdb` and `pg_ctl`. */
export async function startServers(programs: string): Promise<SharedServers> {
  const folder = mkdtempSync(join(tmpdir(), 'plyhue-shared-'));
  const port = await freePort();
  const owner = ownerOfServer();
  if (owner !== null) chownSync(folder, owner.uid, owner.gid);
  const run = (program: string, ...words: string[]): void => {
    execFileSync(join(programs, program), words, { ...owner, cwd: folder, stdio: 'ignore' });
  };
  const data = join(folder, 'database');
  run('initdb', '-D', data, '-U', 'plyhue', '--auth=trust', '--no-sync');
  // Tests of killed processes ask for order, not for a power cut: the server itself is never killed.
  const options = `-p ${port} -c listen_addresses=127.0.0.1 -c unix_socket_directories= -c fsync=off -c max_connections=300`;
  run('pg_ctl', '-D', data, '-w', '-o', options, '-l', join(folder, 'log'), 'start');

  const pictures = join(folder, 'bucket');
  mkdirSync(pictures);
  const s3 = new S3rver({
    port: 0,
    address: '127.0.0.1',
    silent: true,
    directory: pictures,
    configureBuckets: [{ name: 'plyhue', configs: [] }],
  });
  const { port: s3Port } = await s3.run();
  return {
    database: `postgres://plyhue@127.0.0.1:${port}/`,
    endpoint: `http://127.0.0.1:${s3Port}`,
    stop: async () => {
      await s3.close();
      run('pg_ctl', '-D', data, '-w', '-m', 'immediate', 'stop');
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** PostgreSQL does not run as root; there it is run as the user that its package has made. */
function ownerOfServer(): { readonly uid: number; readonly gid: number } | null {
  if (process.getuid?.() !== 0) return null;
  const id = (which: string): number => Number(execFileSync('id', [which, 'postgres']));
  return { uid: id('-u'), gid: id('-g') };
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const server = createServer();
    server.on('error', reject);
    server.listen(0, '127.0.0.1', () => {
      const { port } = server.address() as AddressInfo;
      server.close(() => resolve(port));
    });
  });
}
