import { announce } from '../table/announce.tsx';
import { photosWords } from '../words/photos.ts';
import { asProblem } from '../wire/ask.ts';
import { isPassing, waitAfter, WAITS } from '../wire/lost.ts';
import { padList, pads } from '../wire/shelves.ts';
import { sendBeside } from './send-beside.ts';
import type { Underway } from './send-photo.ts';
import {
  change,
  drop,
  foundIn,
  holdsPlace,
  newSending,
  sendings,
  type Sending,
} from './sending.ts';
import { layBy, laidBy, takeAway } from './laid-by.ts';
import { thumbnailOf } from './thumbnail.ts';
import type { Berth } from './tablefuls.ts';

/** Two at a time keep the wire busy while the service reads, and thirty photos do not stand in each other's way. */
const AT_ONCE = 2;
/** Tells the photos of this page from those that an earlier one left behind. */
const session = String(performance.timeOrigin);
const underway = new Map<number, Underway>();
/** How often in a row a photo, or the answer to it, was lost on its way. */
const lost = new Map<number, number>();

/** Puts photos into the queue; each is kept on this device until the service has it. */
export function enqueue(pad: string, files: readonly File[], berths: readonly Berth[]): void {
  const fresh = files.map((file, n) => newSending(pad, berths[n]!, file, file.name));
  sendings.value = [...sendings.peek(), ...fresh];
  for (const sending of fresh) void prepare(sending);
  pump();
}

/** Takes up again what a reload or a closed tab left behind. */
export async function takeUp(): Promise<void> {
  const left = (await laidBy()).filter(({ key }) => !key.startsWith(`${session}-`));
  const fresh = left.map((one) => newSending(one.pad, one.berth, one.file, one.name));
  sendings.value = [...sendings.peek(), ...fresh];
  // Laid by under this page's name before the old copy goes: a page closed in between loses none.
  for (const sending of fresh) await keep(sending);
  for (const { key } of left) await takeAway(key);
  for (const sending of fresh) void show(sending);
  pump();
}

export function retry(id: number): void {
  change(id, { state: 'waiting', problem: null, sent: 0 });
  pump();
}

/** Sends again what only the lost connection, or a busy service, stopped. */
export function retryLost(): void {
  for (const { id, state } of sendings.peek()) if (state === 'refused' && lost.has(id)) retry(id);
}

/** Sends a photo again by itself, a few times, each after a longer wait; the same bytes twice are one photo there. */
function retryLater(id: number, fault: unknown): void {
  const tries = (lost.get(id) ?? 0) + 1;
  lost.set(id, tries);
  if (tries > WAITS.length) return;
  setTimeout(
    () => {
      const still = sendings.peek().find((one) => one.id === id);
      if (still?.state === 'refused' && lost.get(id) === tries) retry(id);
    },
    waitAfter(tries, fault),
  );
}

export function stop(id: number): void {
  underway.get(id)?.stop();
  underway.delete(id);
  lost.delete(id);
  void takeAway(keyOf(id));
  drop(id);
  pump();
}

async function prepare(sending: Sending): Promise<void> {
  await keep(sending);
  await show(sending);
}

async function keep(sending: Sending): Promise<void> {
  await layBy({ key: keyOf(sending.id), ...sending });
}

async function show(sending: Sending): Promise<void> {
  change(sending.id, { thumbnail: await thumbnailOf(sending.file) });
}

function pump(): void {
  while (underway.size < AT_ONCE) {
    const next = sendings.peek().find(({ state, id }) => state === 'waiting' && !underway.has(id));
    if (!next) return;
    void send(next);
  }
}

async function send(sending: Sending): Promise<void> {
  const { id, pad } = sending;
  change(id, { state: 'sending' });
  const sent = sendBeside(sending, (share) => {
    change(id, { sent: share, state: share >= 1 ? 'reading' : 'sending' });
  });
  underway.set(id, sent);
  try {
    const answer = await sent.answer;
    lost.delete(id);
    change(id, foundIn(answer));
    announce(photosWords.found(answer.sides.length));
    await takeAway(keyOf(id));
    // The next one need not wait until the pad with its new papers is grouped and here.
    underway.delete(id);
    pump();
    await loaded(answer.photo.picture);
    await pads.fresh(pad);
    void padList.fresh('all');
    drop(id);
  } catch (fault) {
    const refused = { state: 'refused', problem: asProblem(fault) } as const;
    change(id, refused);
    // What is refused for good would be refused again after a reload.
    if (!holdsPlace({ ...sending, ...refused })) await takeAway(keyOf(id));
    const here = sendings.peek().some((one) => one.id === id);
    if (here && isPassing(fault)) retryLater(id, fault);
    else lost.delete(id);
  }
  underway.delete(id);
  pump();
}

/** The large picture is here before it takes the place of the small one, which would leave that blank for a moment. */
async function loaded(picture: string): Promise<void> {
  const ahead = new Image();
  ahead.src = picture;
  await ahead.decode().catch(() => undefined);
}

function keyOf(id: number): string {
  return `${session}-${id}`;
}
