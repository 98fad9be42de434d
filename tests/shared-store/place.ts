import { createHash } from 'node:crypto';
import pg from 'pg';
import { inject } from 'vitest';
import { bucketOf } from '../../server/store/bucket.ts';
import type { Shared } from '../../server/store/open-store.ts';
import { S3_KEY } from './servers.ts';

process.env.AWS_ACCESS_KEY_ID ??= S3_KEY;
process.env.AWS_SECRET_ACCESS_KEY ??= S3_KEY;

/**
 * A database and a part of the bucket that belong to a name, made when it is first asked for; null where
 * the tests run on data folders.
 */
export async function sharedPlace(name: string): Promise<Shared | null> {
  const servers = inject('shared') as ReturnType<typeof inject<'shared'>> | undefined;
  if (servers === undefined || servers === null) return null;
  const own = `t${createHash('sha256').update(name).digest('hex').slice(0, 24)}`;
  const client = new pg.Client({ connectionString: `${servers.database}postgres` });
  await client.connect();
  try {
    await client.query(`create database ${own}`);
  } catch (fault) {
    if (!isThere(fault)) throw fault;
  } finally {
    await client.end();
  }
  return {
    database: `${servers.database}${own}`,
    files: bucketOf(`s3://plyhue/${own}?endpoint=${encodeURIComponent(servers.endpoint)}`)!,
  };
}

/** duplicate_database, or unique_violation when two make it at once (PostgreSQL, appendix A, error codes). */
function isThere(fault: unknown): boolean {
  return fault instanceof Error && 'code' in fault && /^(42P04|23505)$/.test(String(fault.code));
}
