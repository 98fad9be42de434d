import type { Kysely } from 'kysely';
import type { Tables } from './tables.ts';

/**
 * The next number in the order of arrival; the clock may jump, this does not. No number is given twice, also when
 * what had it is deleted, so that an id with its number says for good which thing is meant.
 */
export async function nextTurn(
  db: Kysely<Tables>,
  table: 'photos' | 'supplies' | 'layouts' | 'plans' | 'uploads',
): Promise<number> {
  const row = await db
    .selectFrom(table)
    .select((now) => now.fn.max('turn').as('last'))
    .executeTakeFirst();
  const name = `last turn of ${table}`;
  const given = await db
    .selectFrom('facts')
    .select('value')
    .where('name', '=', name)
    .executeTakeFirst();
  const last = (row?.last as number | null | undefined) ?? 0;
  const next = Math.max(last, Number(given?.value ?? 0)) + 1;
  const value = String(next);
  await db
    .insertInto('facts')
    .values({ name, value })
    .onConflict((fact) => fact.column('name').doUpdateSet({ value }))
    .execute();
  return next;
}
