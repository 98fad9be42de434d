import { setTimeout as pause } from 'node:timers/promises';
import type { Pad, PhotoAnswer } from '../../server/contract/pads.ts';
import type { Upload } from '../../server/contract/uploads.ts';
import type { Plan } from '../../server/contract/plans.ts';

/** What the service has acknowledged, to be looked for after its next start. */
export interface Ledger {
  readonly pads: Set<string>;
  readonly photos: Map<string, PhotoAnswer & { readonly pad: string }>;
  /** Photos that were acknowledged before they were read, with their pad. */
  readonly uploads: Map<string, string>;
  readonly labels: Map<string, { readonly pad: string; readonly label: string }>;
  readonly plans: Map<string, Plan>;
  /** Steps of a plan's guide that are ticked off. */
  readonly ticks: Map<string, Set<string>>;
}

export function newLedger(): Ledger {
  return {
    pads: new Set(),
    photos: new Map(),
    uploads: new Map(),
    labels: new Map(),
    plans: new Map(),
    ticks: new Map(),
  };
}

export function thingsIn({ pads, photos, uploads, labels, plans, ticks }: Ledger): number {
  const ticked = [...ticks.values()].reduce((sum, { size }) => sum + size, 0);
  return pads.size + photos.size + uploads.size + labels.size + plans.size + ticked;
}

export interface Missed {
  /** What was acknowledged and is not there, in words. */
  readonly lost: readonly string[];
  /** States that no whole change leads to, in words. */
  readonly halfSeen: readonly string[];
}

/** Looks for everything in the ledger. */
export async function lookFor(address: string, ledger: Ledger): Promise<Missed> {
  const [lost, halfSeen]: [string[], string[]] = [[], []];
  for (const [id, pad] of ledger.uploads) {
    const upload = await whenRead(address, id);
    const whole = await get<Pad>(address, `/api/pads/${pad}`);
    if (whole?.photos.some((photo) => photo.id === upload?.photo) !== true)
      lost.push(`upload ${id}: ${JSON.stringify(upload)}`);
  }
  const pads = new Map<string, Pad>();
  for (const id of ledger.pads) {
    const pad = await get<Pad>(address, `/api/pads/${id}`);
    if (pad === null) lost.push(`pad ${id}`);
    else {
      pads.set(id, pad);
      halfSeen.push(...faultsOf(pad, ledger));
    }
  }
  for (const { photo, sides, pad } of ledger.photos.values()) {
    if (pads.get(pad)?.photos.some(({ id }) => id === photo.id) !== true)
      lost.push(`photo ${photo.id}`);
    const pictures = [photo.picture, ...sides.map(({ swatch }) => swatch)];
    for (const picture of pictures.slice(0, 2))
      if (!(await fetch(`${address}${picture}`)).ok) lost.push(`picture ${picture}`);
  }
  for (const [id, { pad, label }] of ledger.labels)
    if (pads.get(pad)?.sheets.find((sheet) => sheet.id === id)?.label !== label)
      lost.push(`label of ${id}`);
  for (const [id, plan] of ledger.plans)
    if (JSON.stringify(await get<Plan>(address, `/api/plans/${id}`)) !== JSON.stringify(plan))
      lost.push(`plan ${id}`);
  for (const [id, steps] of ledger.ticks) {
    const kept = await get<{ ticks: string[] }>(address, `/api/plans/${id}/ticks`);
    for (const step of steps)
      if (kept?.ticks.includes(step) !== true) lost.push(`tick ${step} of plan ${id}`);
  }
  return { lost, halfSeen };
}

/** An upload once it no longer waits; null when it is gone. */
async function whenRead(address: string, id: string): Promise<Upload | null> {
  const end = Date.now() + READ_WITHIN;
  for (;;) {
    const upload = await get<Upload>(address, `/api/uploads/${id}`);
    if (upload?.state !== 'waiting' || Date.now() > end) return upload;
    await pause(50);
  }
}

/** Longer than this after a start a photo is taken for lost, in milliseconds. */
const READ_WITHIN = 120_000;

async function get<T>(address: string, path: string): Promise<T | null> {
  const answer = await fetch(`${address}${path}`);
  return answer.ok ? ((await answer.json()) as T) : null;
}

/** Each photo has its sides on sheets, all or none; each side stands in one place; no sheet is bare. */
function faultsOf(pad: Pad, { photos }: Ledger): string[] {
  const faults: string[] = [];
  const placed = pad.sheets.flatMap(({ front, back }) => [front, back]).filter((s) => s !== null);
  if (new Set(placed.map(({ id }) => id)).size !== placed.length)
    faults.push(`a side twice in ${pad.id}`);
  if (pad.sheets.some(({ front, back }) => front === null && back === null))
    faults.push(`a bare sheet in ${pad.id}`);
  for (const { id, arrangement } of pad.photos) {
    const sides = placed.filter(({ photo }) => photo === id).length;
    const whole = photos.get(id)?.sides.length ?? sidesOn(arrangement);
    if (whole === null ? sides === 0 : sides !== whole) faults.push(`photo ${id} half placed`);
  }
  return faults;
}

/** A photo of the fake desk says by its arrangement how many papers it shows; a real one does not. */
function sidesOn(arrangement: string): number | null {
  const told = /^table \d+ of (\d+)$/.exec(arrangement)?.[1];
  return told === undefined ? null : Number(told);
}
