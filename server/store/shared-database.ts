import { Kysely, PostgresDialect, sql } from 'kysely';
import type { Transaction } from 'kysely';
import pg from 'pg';
import type { Tables } from './tables.ts';

/**
 * One PostgreSQL database that several processes share.
 *
 * Writing transactions of all processes stand in one line, by a lock that lasts as long as the transaction;
 * they take a few milliseconds each, and what was written in order for one process holds for many.
 */
export interface SharedDatabase {
  readonly db: Kysely<Tables>;
  takeTurn(transaction: Transaction<Tables>): Promise<void>;
  /** Tells every process, this one too, that a pad has changed. */
  tell(pad: string): void;
  /** Calls back with each pad that any process tells of. */
  hear(call: (pad: string) => void): Promise<void>;
  close(): Promise<void>;
}

/** Any number that other programs on the same database are unlikely to take. */
const TURN = 744_320;
const CHANNEL = 'plyhue_pads';

/** How long to wait before asking for news again after the database went away, in milliseconds. */
const PAUSE = 2000;

export function openSharedDatabase(url: string): SharedDatabase {
  const pool = new pg.Pool({ connectionString: url, max: 8, connectionTimeoutMillis: 10_000 });
  // A connection that breaks while idle is replaced at the next question; that question tells of trouble.
  pool.on('error', () => undefined);
  const db = new Kysely<Tables>({ dialect: new PostgresDialect({ pool }) });
  let ear: pg.Client | null = null;
  let open = true;

  const listen = async (call: (pad: string) => void): Promise<void> => {
    const client = new pg.Client({ connectionString: url });
    client.on('notification', ({ payload }) => call(payload ?? ''));
    client.on('error', () => {
      if (!open || ear !== client) return;
      ear = null;
      const again = (): void => {
        if (open) listen(call).catch(() => setTimeout(again, PAUSE).unref());
      };
      setTimeout(again, PAUSE).unref();
    });
    await client.connect();
    await client.query(`listen ${CHANNEL}`);
    ear = client;
  };

  return {
    db,
    takeTurn: async (transaction) => {
      await sql`select pg_advisory_xact_lock(${TURN}::bigint)`.execute(transaction);
    },
    tell: (pad) => {
      // News that is lost costs a reload, so a database that is away is left to the next question.
      sql`select pg_notify(${CHANNEL}, ${pad})`.execute(db).catch(() => undefined);
    },
    hear: listen,
    close: async () => {
      open = false;
      await ear?.end();
      await db.destroy();
    },
  };
}
