import { z } from 'zod';
import { Layout } from '../contract/layouts.ts';
import { words } from '../contract/values.ts';
import { SHELVES } from '../store/files.ts';
import type { Shelf } from '../store/files.ts';
import { notAPad } from '../store/pad-archive.ts';
import { tooLarge } from '../store/pad-limits.ts';
import type { LeftoverRow, PadRow, PhotoRow, SheetRow, SideRow } from '../store/rows.ts';

/** Which form of file this is; a later form gets a later number and the earlier ones stay readable. */
export const FORM = 'plyhue pad, form 2';
/** It had its plans in the contents instead of beside them. */
const FORM_1 = 'plyhue pad, form 1';

/** Steps of all its plans together; each is written by itself. */
const MOST_TICKS = 20_000;

/** What the database and a file hold as a whole number, with room to go on. */
const Revision = z.int().min(1).max(1_000_000_000);
const Row = z.looseObject({ id: words(80), revision: Revision });
export const Hash = z.string().regex(/^[0-9a-f]{64}$/);
const Contents = z.object({
  form: z.literal([FORM, FORM_1]),
  pad: z.looseObject({
    id: words(80),
    revision: Revision,
    name: words(120),
    sheetSize: z.object({ width: z.int().positive(), height: z.int().positive() }),
  }),
  photos: z.array(Row.extend({ hash: Hash, picture: Hash })).max(500),
  sides: z.array(Row.extend({ swatch: Hash })).max(5000),
  sheets: z.array(Row).max(5000),
  leftovers: z
    .array(
      z.looseObject({
        id: words(80),
        size: z.object({ width: z.int().positive(), height: z.int().positive() }),
      }),
    )
    .max(5000)
    .default([]),
  plans: z.array(z.unknown()).max(500).default([]),
  ticks: z
    .record(words(80), z.array(words(80)).max(5000))
    .default({})
    .refine(
      (ticks) => Object.values(ticks).reduce((sum, steps) => sum + steps.length, 0) <= MOST_TICKS,
      `at most ${MOST_TICKS} steps that are ticked off`,
    ),
  layouts: z.array(Layout).max(500).default([]),
});

/**
 * What a file of one pad says of it beside its plans and pictures: its rows as they are kept, the steps that are
 * ticked off in each plan, and the layouts of her own that its plans were made with.
 */
export interface PadContents {
  readonly form: typeof FORM | typeof FORM_1;
  readonly pad: PadRow;
  readonly photos: readonly PhotoRow[];
  readonly sides: readonly SideRow[];
  readonly sheets: readonly SheetRow[];
  readonly leftovers: readonly LeftoverRow[];
  /** Its plans, in a file of form 1. */
  readonly plans?: readonly unknown[];
  readonly ticks: Readonly<Record<string, readonly string[]>>;
  readonly layouts: readonly Layout[];
}

export function understood(raw: unknown): PadContents {
  const read = Contents.safeParse(raw);
  if (read.success) return read.data as unknown as PadContents;
  const [issue] = read.error.issues;
  throw notAPad(`${issue?.path.join('.') ?? 'it'}: ${issue?.message ?? 'another form'}`);
}

/** Refuses to save what could not be brought, because there is more of something than a file may hold. */
export function refuseTooMany(contents: PadContents): void {
  const issue = Contents.safeParse(contents).error?.issues[0];
  if (issue === undefined) return;
  const where = issue.path.join('.');
  throw tooLarge('pad', where, `whose file can be brought again (${where}: ${issue.message})`);
}

/** The pictures that belong to a pad, by shelf; those of its plans are swatches too. */
export function ownedBy(
  { photos, sides }: Pick<PadContents, 'photos' | 'sides'>,
  planned: Iterable<string>,
): Map<Shelf, Set<string>> {
  const owned = new Map(SHELVES.map((shelf) => [shelf, new Set<string>()]));
  for (const { hash, picture } of photos) {
    owned.get('photos')!.add(hash);
    owned.get('pictures')!.add(picture);
  }
  for (const { swatch } of sides) owned.get('swatches')!.add(swatch);
  for (const swatch of planned) owned.get('swatches')!.add(swatch);
  return owned;
}
