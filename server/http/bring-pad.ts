import { setImmediate } from 'node:timers/promises';
import type { Layout } from '../contract/layouts.ts';
import * as Wire from '../contract/pads.ts';
import { catalogue } from '../layouts/catalogue.ts';
import { checkLayout } from '../layouts/check-layout.ts';
import type { Grouping } from '../pad/pad.ts';
import { Refusal, expected } from '../refusals/refusal.ts';
import { notAPad, unpackArchive } from '../store/pad-archive.ts';
import type { PadArchive } from '../store/pad-archive.ts';
import type { Received, Shelf } from '../store/files.ts';
import type { Records } from '../store/records.ts';
import type { PadRow } from '../store/rows.ts';
import type { Edges } from './edges.ts';
import { forgetPlace } from './forget-place.ts';
import { ownedBy, understood } from './pad-contents.ts';
import type { PadContents } from './pad-contents.ts';
import { plansOfFile } from './plans-of-file.ts';
import type { PlanOfFile } from './plans-of-file.ts';
import { rowsOfPad } from './read-pad.ts';
import { layoutFromWire } from './wire/layouts.ts';
import { padOnWire, sheetsOf } from './wire/pads.ts';

/**
 * Takes in a pad that another Plyhue has saved as a file: the pictures first, then all rows in one
 * transaction. The plans are looked at before, and within it the pad is read back, as they will be served; if that
 * fails, the file was changed by hand or damaged, and nothing of it stays.
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
    const plans = await plansOfFile(contents.pad.id, contents.plans ?? [], archive.plans);
    const planned = plans.flatMap(({ swatches }) => swatches);
    const there = new Set(files.map(({ shelf, received }) => `${shelf}/${received.hash}`));
    for (const [shelf, hashes] of ownedBy(contents, planned))
      for (const hash of hashes)
        if (!there.has(`${shelf}/${hash}`)) throw notAPad(`no picture ${shelf}/${hash}`);
    if ((await store.read.pads.at(contents.pad.id)) !== null) throw alreadyHere(contents.pad);
    [contents, files] = await placesForgotten(edges, contents, files);
    const grouping = await grouped(edges, contents);
    const owned = ownedBy(contents, planned);
    for (const { shelf, received } of files)
      if (owned.get(shelf)!.has(received.hash)) await store.files.keep(shelf, received);
    const pad = await store.write(async (records) => {
      if ((await records.pads.at(contents.pad.id)) !== null) throw alreadyHere(contents.pad);
      await addAll(records, contents, plans);
      await addLayouts(records, contents.layouts, edges.now());
      return readBack(records, contents, grouping);
    });
    edges.changes.tell(pad.id);
    await setImmediate();
    return pad;
  } finally {
    for (const { received } of files) await store.files.drop(received);
    for (const received of archive.plans) await store.files.drop(received);
  }
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

async function addAll(
  records: Records,
  contents: PadContents,
  plans: readonly PlanOfFile[],
): Promise<void> {
  const { pad, photos, sides, sheets, leftovers, ticks } = contents;
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
    for (const { row, swatches, text } of plans) {
      await records.plans.addText(row, await text(), swatches);
      for (const step of ticks[row.id] ?? []) await records.plans.tick(row.id, step, true);
    }
  } catch (fault) {
    if (!isOfContents(fault)) throw fault;
    throw notAPad(`something that cannot be kept: ${String(fault).slice(0, 120)}`);
  }
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
  { pad }: PadContents,
  grouping: Grouping,
): Promise<Wire.Pad> {
  try {
    // Others are answered between the steps: those of a pad of 48 sheets take ten milliseconds each.
    const rows = await rowsOfPad(records, pad.id);
    await setImmediate();
    const whole = padOnWire(rows, grouping);
    await setImmediate();
    return Wire.Pad.parse(whole);
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
