import { stat } from 'node:fs/promises';
import { setImmediate } from 'node:timers/promises';
import type { Layout } from '../contract/layouts.ts';
import { packArchive } from '../store/pad-archive.ts';
import { tallyOf } from '../store/pad-limits.ts';
import type { PadTally } from '../store/pad-limits.ts';
import type { Shelf } from '../store/files.ts';
import type { Records } from '../store/records.ts';
import type { PlanRow } from '../store/rows.ts';
import type { Edges } from './edges.ts';
import { FORM, ownedBy, refuseTooMany } from './pad-contents.ts';
import type { PadContents } from './pad-contents.ts';
import { rowsOfPad } from './read-pad.ts';
import { layoutOnWire } from './wire/layouts.ts';
import type { KeptPlan } from './make-plan.ts';

/**
 * A pad with its photos, swatches and plans as one stream of bytes. Each plan is handed on as the text that is
 * kept: to write a hundred of them anew would stop everyone else. A pad that could not be brought again is refused
 * before the first byte.
 */
export async function padAsFile(edges: Edges, id: string): Promise<NodeJS.ReadableStream> {
  const { read, files } = edges.store;
  const { plans, ...whole } = await padToSave(edges, id);
  return packArchive({ ...whole, plans: textsOf(read, plans) }, files);
}

/** What goes into the file of a pad, told without reading a photo; refused where it could not be brought again. */
export async function padToSave({ store }: Edges, id: string): Promise<PadToSave> {
  const { read, files } = store;
  const tally = tallyOf('pad');
  const rows = await rowsOfPad(read, id);
  const plans = await read.plans.ofPad(id);
  const ticks: Record<string, string[]> = {};
  for (const { id: plan } of plans) ticks[plan] = await read.plans.ticks(plan);
  const leftovers = await read.leftovers.ofPad(id);
  const layouts = await ownLayoutsOf(read, plans, tally);
  const whole: PadContents = { form: FORM, ...rows, leftovers, ticks, layouts };
  refuseTooMany(whole);
  const contents = JSON.stringify(whole);
  tally.contents(Buffer.byteLength(contents));
  const owned: { shelf: Shelf; hash: string }[] = [];
  for (const [shelf, hashes] of ownedBy(whole, await read.plans.swatchesOf(id)))
    for (const hash of hashes) {
      tally.picture((await stat(await files.readable(shelf, hash))).size);
      owned.push({ shelf, hash });
    }
  return { contents, plans, owned };
}

interface PadToSave {
  readonly contents: string;
  readonly plans: readonly PlanRow[];
  readonly owned: readonly { readonly shelf: Shelf; readonly hash: string }[];
}

/** A plan that is deleted while the pad is saved is left out. */
async function* textsOf({ plans }: Records, rows: readonly PlanRow[]): AsyncGenerator<string> {
  for (const { id } of rows) {
    const text = await plans.textAt(id);
    if (text !== null) yield text;
  }
}

async function ownLayoutsOf(
  records: Records,
  plans: readonly PlanRow[],
  tally: PadTally,
): Promise<Layout[]> {
  const used = new Set<string>();
  for (const { id } of plans) {
    const text = await records.plans.textAt(id);
    if (text !== null) {
      tally.plan(Buffer.byteLength(text));
      for (const { layout } of (JSON.parse(text) as KeptPlan).asked.cards) used.add(layout);
    }
    await setImmediate();
  }
  const rows = await Promise.all([...used].map((id) => records.layouts.at(id)));
  return rows.filter((row) => row !== null).map(({ layout }) => layoutOnWire(layout));
}
