import { setTimeout as pause } from 'node:timers/promises';
import type { Pad, PhotoAnswer, Sheet } from '../../server/contract/pads.ts';
import type { Upload } from '../../server/contract/uploads.ts';
import type { Plan } from '../../server/contract/plans.ts';
import { papers, photoOf } from './fake-desk.ts';
import { form } from './form.ts';
import { lookFor, newLedger, thingsIn } from './kill-ledger.ts';
import type { Ledger } from './kill-ledger.ts';
import { serve } from './served-to-be-killed.ts';
import type { Served, Start } from './served-to-be-killed.ts';

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
  /** Questions that were under way when the service was killed, by what they were. */
  readonly cutOff: Readonly<Record<string, number>>;
  /** Processes of the killed service that had not ended by themselves a while later. */
  readonly orphans: number;
}

export interface Rounds {
  readonly rounds: number;
  readonly seed: number;
  readonly start: Start;
  /** A real photo for rounds in which the real desk reads; every fourth round then does. */
  readonly photo?: Uint8Array;
  /** Told after each round what has come of it so far, so that a long run shows a fault when it happens. */
  readonly tell?: (sofar: KillReport) => void;
}

/** The longest that a round waits for its answers, in milliseconds. */
const PATIENCE = 60_000;

/**
 * Starts the service on a folder, sends photos, edits and plans, kills it (SIGKILL) at a moment that the
 * seed draws, so many answers and milliseconds on, starts it again and looks for all that it had acknowledged.
 */
export async function killRounds(folder: string, asked: Rounds): Promise<KillReport> {
  const { rounds, seed, start, photo, tell } = asked;
  const random = mulberry(seed);
  // A round asks for things of its own, so each start looks for those of the last two, the last one for all.
  const ledgers: Ledger[] = [];
  const [lost, halfSeen]: [string[], string[]] = [[], []];
  const cutOff: Record<string, number> = {};
  const helpers: number[] = [];
  let failedStarts = 0;
  const report = (done: number, orphans = 0): KillReport => {
    const acknowledged = ledgers.reduce((sum, ledger) => sum + thingsIn(ledger), 0);
    return { rounds: done, acknowledged, lost, halfSeen, failedStarts, cutOff, orphans };
  };
  for (let round = 0; round <= rounds; round++) {
    const real = photo !== undefined && round % 4 === 3 ? photo : null;
    const desk = photo === undefined ? 'fake' : 'real';
    const served = await serve(folder, { ...start, desk }).catch(() => null);
    if (served === null) {
      failedStarts += 1;
      continue;
    }
    if (served.missing > 0) lost.push(`${served.missing} files before round ${round}`);
    for (const ledger of round < rounds ? ledgers.slice(-2) : ledgers) {
      const missed = await lookFor(served.address, ledger);
      lost.push(...missed.lost);
      halfSeen.push(...missed.halfSeen);
    }
    if (round < rounds) {
      const ledger = newLedger();
      ledgers.push(ledger);
      const ways = await askUntilKilled(served, { ledger, random, photo: real }, helpers);
      for (const way of ways) cutOff[way] = (cutOff[way] ?? 0) + 1;
    }
    await served.kill();
    if (round < rounds) tell?.(report(round + 1));
  }
  return report(rounds, await stillThere(helpers));
}

interface Asking {
  readonly ledger: Ledger;
  readonly random: () => number;
  /** What is sent as a photo; null for scenes of the fake desk. */
  readonly photo: Uint8Array | null;
}

/** Several askers at once, each with one question after another, until the service is killed; gives what was under way then. */
async function askUntilKilled(
  served: Served,
  asking: Asking,
  helpers: number[],
): Promise<readonly string[]> {
  const { random, photo } = asking;
  let answersLeft = Math.floor((photo === null ? 14 : 8) * random());
  const after = (photo === null ? 60 : 1500) * random();
  let reached: () => void = () => undefined;
  const due = new Promise<void>((resolve) => (reached = resolve));
  const underWay = new Set<{ readonly way: string }>();
  const asker = async (): Promise<void> => {
    try {
      let pad: string | null = null;
      for (;;) {
        const sheets = pad === null ? [] : await sheetsOf(served.address, pad);
        const question = nextQuestion(pad, sheets, asking);
        underWay.add(question);
        pad = (await question.ask(served.address)) ?? pad;
        underWay.delete(question);
        if (--answersLeft <= 0) reached();
      }
    } catch {
      // The service was killed in the middle of an answer: that question was not acknowledged.
    }
  };
  const askers = [asker(), asker(), asker()];
  await Promise.race([due, pause(PATIENCE, undefined, { ref: false })]);
  await pause(after);
  helpers.push(...served.helpers());
  const cut = [...underWay].map(({ way }) => way);
  await served.kill();
  await Promise.all(askers);
  return cut;
}

interface Question {
  readonly way: 'pad' | 'photo' | 'photo for later' | 'edit' | 'plan' | 'tick';
  /** Gives the pad to go on with, when it is a new one. */
  ask(address: string): Promise<string | undefined>;
}

async function sheetsOf(address: string, pad: string): Promise<readonly string[]> {
  const answer = await fetch(`${address}/api/pads/${pad}`);
  return ((await answer.json()) as Pad).sheets.map(({ id }) => id);
}

function nextQuestion(
  pad: string | null,
  sheets: readonly string[],
  { ledger, random, photo }: Asking,
): Question {
  if (pad === null) return { way: 'pad', ask: (address) => startPad(address, ledger) };
  const draw = random();
  const [place, label, colour] = [random(), `Label ${Math.floor(1e6 * random())}`, random()];
  const plans = [...ledger.plans.values()].filter((plan) => plan.pad === pad);
  const pick = <T>(of: readonly T[]): T => of[Math.floor(place * of.length)]!;
  if (draw < 0.5 || sheets.length === 0) {
    const face = draw < 0.3 ? 'front' : 'back';
    const later = random() < 0.3;
    return {
      way: later ? 'photo for later' : 'photo',
      ask: (address) => sendPhoto(address, pad, ledger, { face, place, colour, photo, later }),
    };
  }
  if (draw < 0.75)
    return { way: 'edit', ask: (address) => rename(address, pad, ledger, pick(sheets), label) };
  if (draw < 0.88 || plans.length === 0)
    return { way: 'plan', ask: (address) => startPlan(address, pad, ledger) };
  return { way: 'tick', ask: (address) => tick(address, ledger, pick(plans).id, label) };
}

async function startPad(address: string, ledger: Ledger): Promise<string> {
  const sheetSize = { width: '6 in', height: '6 in' };
  const { id } = await send<Pad>(address, 'POST', '/api/pads', { name: 'Killed', sheetSize });
  ledger.pads.add(id);
  return id;
}

const PAPERS = 4;

async function sendPhoto(
  address: string,
  pad: string,
  ledger: Ledger,
  {
    face,
    place,
    colour,
    photo,
    later,
  }: {
    readonly face: string;
    readonly place: number;
    readonly colour: number;
    readonly photo: Uint8Array | null;
    readonly later: boolean;
  },
): Promise<undefined> {
  const number = Math.floor(1e6 * colour);
  const table = Math.floor(3 * place);
  const { body, headers } = form([
    ['side', face],
    ['arrangement', photo === null ? `table ${table} of ${PAPERS}` : `real table ${number}`],
    [
      'photo',
      photo === null ? photoOf({ papers: papers(PAPERS, number) }) : marked(photo, number),
      'photo.jpg',
    ],
  ]);
  const url = `${address}/api/pads/${pad}/photos`;
  const answer = await fetch(url, {
    method: 'POST',
    body: new Uint8Array(body),
    headers: later ? { ...headers, prefer: 'respond-async' } : headers,
  });
  if (!answer.ok) throw new Error(`${answer.status} ${await answer.text()}`);
  if (later) {
    ledger.uploads.set(((await answer.json()) as Upload).id, pad);
    return;
  }
  const taken = (await answer.json()) as PhotoAnswer;
  ledger.photos.set(taken.photo.id, { ...taken, pad });
}

/** The same picture as another file: a comment of its own behind the first marker (ITU-T T.81, B.2.4.5). */
export function marked(jpeg: Uint8Array, number: number): Buffer {
  const words = Buffer.from(`copy ${number}`);
  const comment = Buffer.from([0xff, 0xfe, 0, words.length + 2]);
  return Buffer.concat([jpeg.subarray(0, 2), comment, words, jpeg.subarray(2)]);
}

async function rename(
  address: string,
  pad: string,
  ledger: Ledger,
  sheet: string,
  label: string,
): Promise<undefined> {
  // A change under way when the service ends may hold or not: only the answer tells.
  ledger.labels.delete(sheet);
  await send<Sheet>(address, 'PATCH', `/api/sheets/${sheet}`, { label });
  ledger.labels.set(sheet, { pad, label });
}

async function startPlan(address: string, pad: string, ledger: Ledger): Promise<undefined> {
  const cards = [{ layout: 'one-paper-us', count: 2 }];
  const plan = await send<Plan>(address, 'POST', '/api/plans', { pad, cards });
  ledger.plans.set(plan.id, plan);
}

async function tick(
  address: string,
  ledger: Ledger,
  plan: string,
  step: string,
): Promise<undefined> {
  await send(address, 'POST', `/api/plans/${plan}/ticks`, { step, done: true });
  ledger.ticks.set(plan, (ledger.ticks.get(plan) ?? new Set()).add(step));
}

async function send<T>(address: string, method: string, path: string, body: unknown): Promise<T> {
  const answer = await fetch(`${address}${path}`, {
    method,
    body: JSON.stringify(body),
    headers: { 'content-type': 'application/json' },
  });
  if (!answer.ok) throw new Error(`${answer.status} ${await answer.text()}`);
  return (await answer.json()) as T;
}

/** How many of the processes still live; those that read a photo may finish it first. */
async function stillThere(pids: readonly number[]): Promise<number> {
  const end = Date.now() + PATIENCE;
  while (Date.now() < end && pids.some(lives)) await pause(500);
  return pids.filter(lives).length;
}

function lives(pid: number): boolean {
  try {
    return process.kill(pid, 0);
  } catch {
    return false;
  }
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
