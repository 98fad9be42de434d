import { sql } from 'kysely';
import type { RawBuilder, SqlBool } from 'kysely';

/** For whom the store is asked. */
export interface Asker {
  readonly person: string;
  /** The one pad that it may see, for a phone; null for all that the person has. */
  readonly pad: string | null;
}

/** The person whose computer it is, and who has all that was kept before there were others. */
export const HOUSE = 'house';

/** Who asks now; null is the service itself, which sees everything. */
export type Whose = () => Asker | null;

/** Who has what is kept now. */
export function ownerNow(whose: Whose): string {
  return whose()?.person ?? HOUSE;
}

/** Of the pads: those that the asker may see. */
export function isSeenPad(whose: Whose): RawBuilder<SqlBool> {
  const asker = whose();
  if (asker === null) return EVERYTHING;
  const { person, pad } = asker;
  return pad === null ? sql`owner = ${person}` : sql`owner = ${person} and id = ${pad}`;
}

/** Of the rows of pads, as sides and plans are: those of pads that the asker may see. */
export function isOfSeenPad(whose: Whose): RawBuilder<SqlBool> {
  if (whose() === null) return EVERYTHING;
  return sql`pad in (select id from pads where ${isSeenPad(whose)})`;
}

/** Of the photos, which may be of a pad or of supplies: those that the asker may see. */
export function isSeenPhoto(whose: Whose): RawBuilder<SqlBool> {
  const asker = whose();
  if (asker === null) return EVERYTHING;
  const { person, pad } = asker;
  return pad === null ? sql`owner = ${person}` : sql`owner = ${person} and pad = ${pad}`;
}

/** Of what belongs to a person and to no pad: all of the person's, and nothing for a phone. */
export function isOwn(whose: Whose): RawBuilder<SqlBool> {
  const asker = whose();
  if (asker === null) return EVERYTHING;
  return asker.pad === null ? sql`owner = ${asker.person}` : sql`1 = 0`;
}

const EVERYTHING: RawBuilder<SqlBool> = sql`1 = 1`;
