import { sql } from 'kysely';
import type { Kysely } from 'kysely';
import type { Tables } from './tables.ts';

/**
 * Every step that the tables have taken, oldest first. A step that was once released is never changed;
 * a new one is added below.
 */
const STEPS: readonly (readonly string[])[] = [
  [
    `create table pads (id text primary key, name text not null, width integer not null,
      height integer not null, created_at text not null, revision integer not null)`,
    `create table photos (id text primary key, pad text, face text, arrangement text not null,
      hash text not null, picture text not null, doc text not null, created_at text not null,
      revision integer not null, turn integer not null)`,
    `create unique index photos_once on photos (pad, face, arrangement, hash) where pad is not null`,
    `create table sides (id text primary key, pad text not null, photo text not null,
      place integer not null, swatch text not null, doc text not null, revision integer not null)`,
    `create index sides_of_pad on sides (pad)`,
    `create index sides_of_photo on sides (photo)`,
    `create table sheets (id text primary key, pad text not null, label text not null,
      copies integer not null, front text, back text, place integer not null,
      revision integer not null)`,
    `create index sheets_of_pad on sheets (pad, place)`,
    `create table supplies (id text primary key, kind text not null, name text not null, photo text,
      doc text not null, created_at text not null, revision integer not null, turn integer not null)`,
    `create table layouts (id text primary key, doc text not null, created_at text not null,
      turn integer not null)`,
    `create table plans (id text primary key, pad text not null, cards integer not null,
      value real not null, doc text not null, created_at text not null, turn integer not null)`,
    `create index plans_of_pad on plans (pad, turn)`,
    `create table plan_swatches (plan text not null, swatch text not null,
      primary key (plan, swatch))`,
    `create table requests (key text primary key, fingerprint text not null, made text not null,
      created_at text not null)`,
    `create table facts (name text primary key, value text not null)`,
  ],
  [
    `alter table pads add column owner text not null default 'house'`,
    `alter table photos add column owner text not null default 'house'`,
    `alter table supplies add column owner text not null default 'house'`,
    `alter table layouts add column owner text not null default 'house'`,
    `create index pads_of_owner on pads (owner)`,
    `create table people (id text primary key, name text not null, created_at text not null)`,
    `create table keys (id text primary key, person text not null, pad text, name text not null,
      hash text not null, created_at text not null)`,
    `create table codes (hash text primary key, person text not null, pad text, name text not null,
      expires_at text not null)`,
  ],
  [
    `alter table plans add column made_from text`,
    `create table ticks (plan text not null, step text not null, primary key (plan, step))`,
  ],
  [
    `create table leftovers (id text primary key, pad text not null, sheet text not null,
      label text not null, width integer not null, height integer not null, plan text,
      created_at text not null)`,
    `create index leftovers_of_pad on leftovers (pad)`,
  ],
  [`create table gone_pads (id text primary key, revision integer not null)`],
  [
    `create table uploads (id text primary key, pad text not null, owner text not null, face text not null,
      arrangement text not null, hash text not null, file text not null, told text not null,
      created_at text not null, acknowledged integer not null, tries integer not null, worker text,
      until text, photo text, problem text, turn integer not null)`,
    `create index uploads_of_pad on uploads (pad)`,
    `create index uploads_in_turn on uploads (turn)`,
  ],
  [`alter table uploads add column size integer not null default 0`],
  [`alter table plans add column anew integer not null default 0`],
];

export type Speech = 'sqlite' | 'postgres';

/** Two processes that start at once take the steps one after the other; any number will do. */
const STEPPING = 744_319;

/**
 * Brings the tables to the newest step, all steps or none; refuses a database from a later version.
 * The steps are written in what SQLite and PostgreSQL both understand, but for `real`: in SQLite that has
 * eight bytes, in PostgreSQL four.
 */
export async function migrate(db: Kysely<Tables>, speech: Speech): Promise<void> {
  await db.transaction().execute(async (whole) => {
    if (speech === 'postgres')
      await sql`select pg_advisory_xact_lock(${STEPPING}::bigint)`.execute(whole);
    await sql`create table if not exists steps (step integer primary key)`.execute(whole);
    const { rows } = await sql<{
      step: number | null;
    }>`select max(step) as step from steps`.execute(whole);
    const taken = rows[0]?.step ?? 0;
    if (taken > STEPS.length)
      throw new Error(
        'This data was written by a later version of Plyhue. Use that version, or choose another DATA_DIR or DATABASE_URL.',
      );
    for (const [index, statements] of STEPS.entries()) {
      if (index < taken) continue;
      for (const statement of statements)
        await sql.raw(speech === 'postgres' ? inPostgres(statement) : statement).execute(whole);
      await sql`insert into steps (step) values (${index + 1})`.execute(whole);
    }
  });
}

function inPostgres(statement: string): string {
  return statement.replace(/\breal\b/g, 'double precision');
}
