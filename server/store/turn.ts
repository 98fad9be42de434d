import type { Kysely } from 'kysely';
import type { Tables } from './tables.ts';

/** The next number in the order of arrival; the clock may jump, this does not. */
export async function nextTurn(
  db: Kysely<Tables>,
  table: 'photos' | 'supplies' | 'layouts' | 'plans',
): Promise<number> {
  const row = await db
    .selectFrom(table)
    .select((now) => now.fn.max('turn').as('last'))
    .executeTakeFirst();
  return ((row?.last as number | null | undefined) ?? 0) + 1;
}
