import { existsSync, readdirSync } from 'node:fs';
import { delimiter, join } from 'node:path';

/** Where Debian's package puts the programs of each version. */
const DEBIAN = '/usr/lib/postgresql';

/** The folder with `initdb` and `pg_ctl`, the newest first; null when there is none on this machine. */
export function postgresPrograms(): string | null {
  const versions = existsSync(DEBIAN) ? readdirSync(DEBIAN) : [];
  const folders = [
    ...versions
      .sort((p, q) => Number(q) - Number(p))
      .map((version) => join(DEBIAN, version, 'bin')),
    ...(process.env.PATH ?? '').split(delimiter),
  ];
  return folders.find((folder) => existsSync(join(folder, 'initdb'))) ?? null;
}
