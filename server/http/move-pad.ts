import { setImmediate } from 'node:timers/promises';
import { z } from 'zod';
import { Layout } from '../contract/layouts.ts';
import * as Wire from '../contract/pads.ts';
import { Plan } from '../contract/plans.ts';
import { words } from '../contract/values.ts';
import { catalogue } from '../layouts/catalogue.ts';
import { checkLayout } from '../layouts/check-layout.ts';
import type { Grouping } from '../pad/pad.ts';
import { Refusal, expected } from '../refusals/refusal.ts';
import { notAPad, packArchive, unpackArchive } from '../store/pad-archive.ts';
import type { PadArchive } from '../store/pad-archive.ts';
import { SHELVES } from '../store/files.ts';
import type { Received, Shelf } from '../store/files.ts';
import type { Records } from '../store/records.ts';
import type { LeftoverRow, PadRow, PhotoRow, SheetRow, SideRow } from '../store/rows.ts';
import type { Edges } from './edges.ts';
import type { KeptPlan } from './make-plan.ts';
import { forgetPlace } from './forget-place.ts';
import { rowsOfPad } from './read-pad.ts';
import { layoutFromWire, layoutOnWire } from './wire/layouts.ts';
import { padOnWire, sheetsOf } from './wire/pads.ts';
import { planOnWire } from './wire/plans.ts';

/** Which form of file this is; a later form gets a later number and this one stays readable. */
const FORM = 'plyhue pad, form 1';
/** Steps of all its plans together; each is written by itself. */
const MOST_TICKS = 20_000;

/** What the database and a file hold as a whole number, with room to go on. */
const Revision = z.int().min(1).max(1_000_000_000);
const Row = z.looseObject({ id: words(80), revision: Revision });
const Hash = z.string().regex(/^[0-9a-f]{64}$/);
const Contents = z.object({
  form: z.literal(FORM),
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
  plans: z.array(z.looseObject({ id: words(80), swatches: z.record(z.string(), Hash) })).max(500),
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
 * What a file of one pad holds: its rows as they are kept, every plan made from it with the steps that are
 * ticked off, and the layouts of her own that those plans were made with.
 */
interface PadContents {
  readonly form: typeof FORM;
  readonly pad: PadRow;
  readonly photos: readonly PhotoRow[];
  readonly sides: readonly SideRow[];
  readonly sheets: readonly SheetRow[];
  readonly leftovers: readonly LeftoverRow[];
  readonly plans: readonly KeptPlan[];
  readonly ticks: Readonly<Record<string, readonly string[]>>;
  readonly layouts: readonly Layout[];
}

/** A pad with its photos, swatches and plans as one stream of bytes. */
export async function padAsFile({ store }: Edges, id: string): Promise<NodeJS.ReadableStream> {
  const rows = await rowsOfPad(store.read, id);
  const plans: KeptPlan[] = [];
  const ticks: Record<string, string[]> = {};
  for (const { id: plan } of await store.read.plans.ofPad(id)) {
    plans.push((await store.read.plans.at(plan)) as KeptPlan);
    ticks[plan] = await store.read.plans.ticks(plan);
  }
  const leftovers = await store.read.leftovers.ofPad(id);
  const layouts = await ownLayoutsOf(store.read, plans);
  const contents: PadContents = { form: FORM, ...rows, leftovers, plans, ticks, layouts };
  const owned: { shelf: Shelf; hash: string }[] = [];
  for (const [shelf, hashes] of ownedBy(contents))
    for (const hash of hashes) {
      await store.files.readable(shelf, hash);
      owned.push({ shelf, hash });
    }
  return packArchive(contents, owned, store.files);
}

/**
 * Takes in a pad that another Plyhue has saved as a file: the pictures first, then all rows in one
 * transaction. Within it the pad and its plans are read back as they will be served; if that fails,
 * the file was changed by hand or damaged, and nothing of it stays.
 */
export async function takePadFile(
  edges: Edges,
  source: AsyncIterable<Uint8Array>,
): Promise<Wire.Pad> {
  const { store } = edges;
  const archive = await unpackArchive(source, store.files);
  let { files } = archive;
  try {
    let contents = understood(archive.contents);
    const there = new Set(files.map(({ shelf, received }) => `${shelf}/${received.hash}`));
    for (const [shelf, hashes] of ownedBy(contents))
      for (const hash of hashes)
        if (!there.has(`${shelf}/${hash}`)) throw notAPad(`no picture ${shelf}/${hash}`);
    if ((await store.read.pads.at(contents.pad.id)) !== null) throw alreadyHere(contents.pad);
    [contents, files] = await placesForgotten(edges, contents, files);
    const grouping = await grouped(edges, contents);
    const owned = ownedBy(contents);
    for (const { shelf, received } of files)
      if (owned.get(shelf)!.has(received.hash)) await store.files.keep(shelf, received);
    const pad = await store.write(async (records) => {
      if ((await records.pads.at(contents.pad.id)) !== null) throw alreadyHere(contents.pad);
      await addAll(records, contents);
      await addLayouts(records, contents.layouts, edges.now());
      return readBack(records, contents, grouping);
    });
    edges.changes.tell(pad.id);
    return pad;
  } finally {
    for (const { received } of files) await store.files.drop(received);
  }
}

function understood(raw: unknown): PadContents {
  const read = Contents.safeParse(raw);
  if (read.success) return read.data as unknown as PadContents;
  const [issue] = read.error.issues;
  throw notAPad(`${issue?.path.join('.') ?? 'it'}: ${issue?.message ?? 'another form'}`);
}

/**
 * The photos without the place where they were taken, as an upload is kept: another Plyhue may be older, or the
 * file made by hand. A photo that changes is named anew, after what is in it.
 */
async function placesForgotten(
  { store }: Edges,
  contents: PadContents,
  files: PadArchive['files'],
): Promise<[PadContents, PadArchive['files']]> {
  const names = new Map<string, string>();
  const kept: { shelf: Shelf; received: Received }[] = [];
  for (const { shelf, received } of files) {
    if (shelf === 'photos') {
      const without = await forgetPlace(received, store.files);
      names.set(received.hash, without.hash);
      kept.push({ shelf, received: without });
    } else kept.push({ shelf, received });
  }
  const photos = contents.photos.map((photo) => ({
    ...photo,
    hash: names.get(photo.hash) ?? photo.hash,
  }));
  return [{ ...contents, photos }, kept];
}

function ownedBy({ photos, sides, plans }: PadContents): Map<Shelf, Set<string>> {
  const owned = new Map(SHELVES.map((shelf) => [shelf, new Set<string>()]));
  for (const { hash, picture } of photos) {
    owned.get('photos')!.add(hash);
    owned.get('pictures')!.add(picture);
  }
  for (const { swatch } of sides) owned.get('swatches')!.add(swatch);
  for (const { swatches } of plans)
    for (const swatch of Object.values(swatches)) owned.get('swatches')!.add(swatch);
  return owned;
}

async function addAll(records: Records, contents: PadContents): Promise<void> {
  const { pad, photos, sides, sheets, leftovers, plans, ticks } = contents;
  const before = await records.pads.lastRevision(pad.id);
  /** A revision that was seen here must not come again and mean something else. */
  const after = (revision: number): number =>
    before === 0 ? revision : Math.max(revision, before) + 1;
  const later = <Row extends { readonly revision: number }>(row: Row): Row => ({
    ...row,
    pad: pad.id,
    revision: after(row.revision),
  });
  try {
    await records.pads.add({ ...pad, revision: after(pad.revision) });
    for (const photo of photos) await records.photos.add(later(photo));
    for (const side of sides) await records.sides.add(later(side));
    for (const sheet of sheets) await records.sheets.add(later(sheet));
    for (const part of leftovers) await records.leftovers.add({ ...part, pad: pad.id });
    for (const plan of plans) {
      const { id, createdAt, batch, swatches } = plan;
      const row = {
        id,
        pad: pad.id,
        cards: batch.cards.length,
        value: batch.plan.value,
        createdAt,
        from: plan.asked.from ?? null,
      };
      await records.plans.add(row, plan, Object.values(swatches));
      for (const step of ticks[id] ?? []) await records.plans.tick(id, step, true);
    }
  } catch (fault) {
    if (!isOfContents(fault)) throw fault;
    throw notAPad(`something that cannot be kept: ${String(fault).slice(0, 120)}`);
  }
}

async function ownLayoutsOf(records: Records, plans: readonly KeptPlan[]): Promise<Layout[]> {
  const used = new Set(plans.flatMap(({ asked }) => asked.cards.map(({ layout }) => layout)));
  const rows = await Promise.all([...used].map((id) => records.layouts.at(id)));
  return rows.filter((row) => row !== null).map(({ layout }) => layoutOnWire(layout));
}

/** A layout whose id is taken here stays behind; the plans made with it hold all that they need of it. */
async function addLayouts(
  records: Records,
  layouts: readonly Layout[],
  createdAt: string,
): Promise<void> {
  for (const each of layouts) {
    const taken = catalogue.some(({ id }) => id === each.id);
    if (taken || (await records.layouts.isTaken(each.id))) continue;
    await records.layouts.add({ layout: makeable(each), createdAt });
  }
}

function makeable(each: Layout): ReturnType<typeof layoutFromWire> {
  try {
    const layout = layoutFromWire(each);
    checkLayout(layout);
    return layout;
  } catch (fault) {
    throw notAPad(`a layout that cannot be made: ${String(fault).slice(0, 120)}`);
  }
}

/** Classes 22 and 23 of PostgreSQL's error codes: data that does not fit, integrity that would break. */
const INTEGRITY = /^2[23]\w{3}$/;

/** A full disk is not the file's fault; a row that a table refuses, or a value of the wrong kind, is. */
function isOfContents(fault: unknown): boolean {
  if (fault instanceof TypeError || fault instanceof RangeError) return true;
  const code = fault instanceof Error && 'code' in fault ? String(fault.code) : '';
  return code.includes('CONSTRAINT') || INTEGRITY.test(code);
}

async function readBack(
  records: Records,
  { pad, plans }: PadContents,
  grouping: Grouping,
): Promise<Wire.Pad> {
  try {
    const rows = await rowsOfPad(records, pad.id);
    for (const plan of plans) {
      Plan.parse(planOnWire(plan));
      await setImmediate();
    }
    return Wire.Pad.parse(padOnWire(rows, grouping));
  } catch (fault) {
    throw notAPad(`something that cannot be shown: ${String(fault).slice(0, 120)}`);
  }
}

/** Worked out by the clerk before anything is kept: a file made by hand may ask for more than can be done. */
async function grouped({ desk }: Edges, contents: PadContents): Promise<Grouping> {
  try {
    return await desk.clerk.group(sheetsOf(contents));
  } catch (fault) {
    if (fault instanceof Refusal) throw fault;
    throw notAPad(`something that cannot be grouped: ${String(fault).slice(0, 120)}`);
  }
}

function alreadyHere({ id, name }: PadRow): Error {
  return expected(
    'a pad that is not here yet',
    'file',
    name,
    `The pad ${id} is already here. Keep it, or delete it first and bring the file again.`,
    'clash',
  );
}
