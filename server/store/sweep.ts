import type { Kysely } from 'kysely';
import { SHELVES } from './files.ts';
import type { Files, Shelf } from './files.ts';
import type { Tables } from './tables.ts';
import type { WaitingUploads } from './uploads.ts';

/** What the sweep at start found: how much it cleared away, and files that a row names but are gone. */
export interface Swept {
  readonly cleared: number;
  readonly missing: readonly { readonly shelf: Shelf; readonly hash: string }[];
}

/** Removes half-written files and files that nothing owns, and says which are missing. */
export async function sweep(
  db: Kysely<Tables>,
  files: Files,
  waiting: ReadonlySet<string>,
): Promise<Swept> {
  let cleared = (await files.clearIncoming()) + (await files.letGoOthers(waiting, new Date()));
  const missing: { shelf: Shelf; hash: string }[] = [];
  const owned = await ownedHashes(db);
  for (const shelf of SHELVES) {
    const there = new Set(await files.hashesOn(shelf));
    for (const hash of owned[shelf]) if (!there.has(hash)) missing.push({ shelf, hash });
    for (const hash of there) {
      if (owned[shelf].has(hash) || !/^[0-9a-f]{64}$/.test(hash)) continue;
      await files.remove(shelf, hash);
      cleared += 1;
    }
  }
  return { cleared, missing };
}

/** Removes photos from a shared bucket that wait for nothing and have lain there since before a time; gives how many. */
export async function sweepWaiting(
  waiting: Pick<WaitingUploads, 'held'>,
  files: Files,
  before: Date,
): Promise<number> {
  const held = await waiting.held();
  return files.letGoOthers(new Set(held.map(({ file }) => file)), before);
}

export async function ownedHashes(db: Kysely<Tables>): Promise<Record<Shelf, Set<string>>> {
  const photos = await db.selectFrom('photos').select(['hash', 'picture']).execute();
  const sides = await db.selectFrom('sides').select('swatch').execute();
  const planned = await db.selectFrom('plan_swatches').select('swatch').execute();
  return {
    photos: new Set(photos.map(({ hash }) => hash)),
    pictures: new Set(photos.map(({ picture }) => picture)),
    swatches: new Set([...sides, ...planned].map(({ swatch }) => swatch)),
  };
}
