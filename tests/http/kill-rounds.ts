import { spawn } from 'node:child_process';
import type { ChildProcess } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { Pad, PhotoAnswer, Sheet } from '../../server/contract/pads.ts';
import type { Plan } from '../../server/contract/plans.ts';
import { papers, photoOf } from './fake-desk.ts';
import { form } from './form.ts';

/** What came of killing the service again and again while it was asked for things. */
export interface KillReport {
  readonly rounds: number;
  /** Changes that were acknowledged, in all rounds. */
  readonly acknowledged: number;
  /** What was acknowledged and is not there after the next start, in words. */
  readonly lost: readonly string[];
  /** States that no whole change leads to, in words. */
  readonly halfSeen: readonly string[];
  readonly failedStarts: number;
}

interface Served {
  readonly address: string;
  readonly process: ChildProcess;
  readonly ended: Promise<void>;
  /** Files that the sweep at the start missed. */
  readonly missing: number;
}

/** What was acknowledged, to be looked for after the next start. */
interface Ledger {
  readonly pads: Set<string>;
  readonly photos: Map<string, PhotoAnswer & { readonly pad: string }>;
  readonly labels: Map<string, { readonly pad: string; readonly label: string }>;
  readonly plans: Map<string, Plan>;
}

/**
 * Starts the service on a folder, sends photos, edits and plans, kills it (SIGKILL) at a moment that the
 * seed draws, starts it again and looks for all that it had acknowledged; so many rounds.
 */
export async function killRounds(
  folder: string,
  rounds: number,
  seed: number,
): Promise<KillReport> {
  const random = mulberry(seed);
  const ledger: Ledger = {
    pads: new Set(),
    photos: new Map(),
    labels: new Map(),
    plans: new Map(),
  };
  const lost: string[] = [];
  const halfSeen: string[] = [];
  let failedStarts = 0;
  for (let round = 0; round <= rounds; round++) {
    const served = await serve(folder).catch(() => null);
    if (served === null) {
      failedStarts += 1;
      continue;
    }
    if (served.missing > 0) lost.push(`${served.missing} files before round ${round}`);
    await lookFor(served.address, ledger, lost, halfSeen);
    if (round === rounds) {
      served.process.kill('SIGKILL');
      await served.ended;
      break;
    }
    const kill = setTimeout(() => served.process.kill('SIGKILL'), 5 + 400 * random());
    await askUntilItEnds(served, ledger, random);
    clearTimeout(kill);
    served.process.kill('SIGKILL');
    await served.ended;
  }
  const { pads, photos, labels, plans } = ledger;
  const acknowledged = pads.size + photos.size + labels.size + plans.size;
  return { rounds, acknowledged, lost, halfSeen, failedStarts };
}

async function serve(folder: string): Promise<Served> {
  const script = fileURLToPath(new URL('./serve-to-be-killed.ts', import.meta.url));
  const child = spawn(process.execPath, ['--import', 'tsx', script, folder], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const ended = new Promise<void>((resolve) => child.on('exit', () => resolve()));
  const line = await new Promise<string>((resolve, reject) => {
    child.stdout.once('data', (data: Buffer) => resolve(String(data)));
    child.on('exit', () => reject(new Error('the service did not start')));
  });
  const { port, missing } = JSON.parse(line) as { port: number; missing: number };
  return { address: `http://127.0.0.1:${port}`, process: child, ended, missing };
}

/** Several askers at once, each with one question after another, until the answers stop coming. */
async function askUntilItEnds(served: Served, ledger: Ledger, random: () => number): Promise<void> {
  const asker = async (): Promise<void> => {
    try {
      const pad = await startPad(served.address, ledger);
      for (let at = 0; at < 50; at++) await askOnce(served.address, pad, ledger, random);
    } catch {
      // The service was killed in the middle of an answer: that question was not acknowledged.
    }
  };
  await Promise.all([asker(), asker(), asker()]);
}

async function startPad(address: string, ledger: Ledger): Promise<string> {
  const sheetSize = { width: '6 in', height: '6 in' };
  const { id } = await send<Pad>(address, 'POST', '/api/pads', { name: 'Killed', sheetSize });
  ledger.pads.add(id);
  return id;
}

async function askOnce(
  address: string,
  pad: string,
  ledger: Ledger,
  random: () => number,
): Promise<void> {
  const draw = random();
  const sheets = (await send<Pad>(address, 'GET', `/api/pads/${pad}`)).sheets;
  if (draw < 0.6 || sheets.length === 0) {
    const { body, headers } = form([
      ['side', draw < 0.3 ? 'front' : 'back'],
      ['arrangement', `table ${Math.floor(3 * random())}`],
      ['photo', photoOf({ papers: papers(4, Math.floor(1e6 * random())) }), 'photo.jpg'],
    ]);
    const url = `${address}/api/pads/${pad}/photos`;
    const answer = await fetch(url, { method: 'POST', body: new Uint8Array(body), headers });
    const taken = (await answer.json()) as PhotoAnswer;
    ledger.photos.set(taken.photo.id, { ...taken, pad });
  } else if (draw < 0.9) {
    const { id } = sheets[Math.floor(random() * sheets.length)]!;
    const label = `Label ${Math.floor(1e6 * random())}`;
    // A change under way when the service ends may hold or not: only the answer tells.
    ledger.labels.delete(id);
    await send<Sheet>(address, 'PATCH', `/api/sheets/${id}`, { label });
    ledger.labels.set(id, { pad, label });
  } else {
    const cards = [{ layout: 'one-paper-us', count: 2 }];
    const plan = await send<Plan>(address, 'POST', '/api/plans', { pad, cards });
    ledger.plans.set(plan.id, plan);
  }
}

async function send<T>(address: string, method: string, path: string, body?: unknown): Promise<T> {
  const answer = await fetch(`${address}${path}`, {
    method,
    ...(body === undefined
      ? {}
      : { body: JSON.stringify(body), headers: { 'content-type': 'application/json' } }),
  });
  if (!answer.ok) throw new Error(`${answer.status} ${await answer.text()}`);
  return (await answer.json()) as T;
}

async function lookFor(
  address: string,
  ledger: Ledger,
  lost: string[],
  halfSeen: string[],
): Promise<void> {
  const pads = new Map<string, Pad>();
  for (const id of ledger.pads) {
    const pad = await send<Pad>(address, 'GET', `/api/pads/${id}`).catch(() => null);
    if (pad === null) lost.push(`pad ${id}`);
    else {
      pads.set(id, pad);
      halfSeen.push(...faultsOf(pad));
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
  for (const [id, plan] of ledger.plans) {
    const now = await send<Plan>(address, 'GET', `/api/plans/${id}`).catch(() => null);
    if (JSON.stringify(now) !== JSON.stringify(plan)) lost.push(`plan ${id}`);
  }
}

/** Each photo has its four sides on sheets, each side stands in one place, no sheet is bare. */
function faultsOf(pad: Pad): string[] {
  const faults: string[] = [];
  const placed = pad.sheets.flatMap(({ front, back }) => [front, back]).filter((s) => s !== null);
  if (new Set(placed.map(({ id }) => id)).size !== placed.length)
    faults.push(`a side twice in ${pad.id}`);
  if (pad.sheets.some(({ front, back }) => front === null && back === null))
    faults.push(`a bare sheet in ${pad.id}`);
  for (const { id } of pad.photos)
    if (placed.filter(({ photo }) => photo === id).length !== 4)
      faults.push(`photo ${id} half placed`);
  return faults;
}

/** mulberry32, a small seeded generator in the public domain (from memory). */
function mulberry(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}
