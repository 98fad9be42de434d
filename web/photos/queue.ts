import type { PhotoAnswer } from '../../server/contract/pads.ts';
import { announce } from '../table/announce.tsx';
import { photosWords } from '../words/photos.ts';
import { asProblem } from '../wire/ask.ts';
import { isPassing, waitAfter, WAITS } from '../wire/lost.ts';
import { padList, pads } from '../wire/shelves.ts';
import { keepAs, layBy, laidBy, noteWhole, takeAway } from './laid-by.ts';
import { leftBehind, newKey, oneAtATime } from './left-behind.ts';
import { sendBeside } from './send-beside.ts';
import type { Underway } from './send-photo.ts';
import {
  change,
  drop,
  foundIn,
  holdsPlace,
  newSending,
  sendingAt,
  sendings,
  type Sending,
} from './sending.ts';
import { isBeingCleared, takeBack } from './take-back.ts';
import { thumbnailOf } from './thumbnail.ts';
import type { Berth } from './tablefuls.ts';

/** Two at a time keep the wire busy while the service reads, and thirty photos do not stand in each other's way. */
const AT_ONCE = 2;
const underway = new Map<number, Underway>();
/** How often in a row a photo, or the answer to it, was lost on its way. */
const lost = new Map<number, number>();

/** Puts photos into the queue; each is kept on this device until the service has it. */
export function enqueue(pad: string, files: readonly File[], berths: readonly Berth[]): void {
  const fresh = files.map((file, n) =>
    newSending({ key: newKey(), pad, berth: berths[n]!, file, name: file.name, whole: false }),
  );
  sendings.value = [...sendings.peek(), ...fresh];
  for (const sending of fresh) void prepare(sending);
  pump();
}

/**
 * Takes up again what a reload or a closed tab left behind, in the order in which it was chosen. Each is shown only once it
 * is kept under this page's name, so that what she then takes away is gone under every name.
 */
export async function takeUp(): Promise<void> {
  await oneAtATime(async () => {
    for (const left of await leftBehind(await laidBy())) {
      const key = await keepAs(left.key, newKey());
      if (key === null) continue;
      const sending = newSending({ ...left, key });
      if (left.unwanted) clear(sending, null);
      else {
        sendings.value = [...sendings.peek(), sending];
        show(sending);
      }
    }
  });
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

/** Sends a photo again by itself, each time after a longer wait; the same bytes twice are one photo there. */
function retryLater(id: number, fault: unknown): void {
  const tries = (lost.get(id) ?? 0) + 1;
  lost.set(id, tries);
  setTimeout(
    () => {
      const still = sendingAt(id);
      if (still?.state === 'refused' && lost.get(id) === tries) retry(id);
    },
    waitAfter(tries, fault),
  );
}

/** Takes a photo away. One that the service may have already is taken away there, or it would appear after all. */
export function stop(id: number): void {
  const one = sendingAt(id);
  if (one === undefined) return;
  const way = underway.get(id);
  drop(id);
  lost.delete(id);
  if (one.whole || one.photo !== null) clear(one, way?.answer ?? null);
  else {
    way?.stop();
    underway.delete(id);
    void takeAway(one.key);
  }
  pump();
}

/** What waits for the place of a photo goes on once it is free. */
function clear(one: Sending, answer: Underway['answer'] | null): void {
  void takeBack(one, answer).then(pump);
}

async function prepare(sending: Sending): Promise<void> {
  await layBy({ ...sending, unwanted: false });
  show(sending);
}

let shown = Promise.resolve();

/** Makes the small pictures one after the other: to open thirty large photos at once takes more memory than a phone has. */
function show({ id, file }: Sending): void {
  shown = shown.then(async () => {
    if (sendingAt(id) === undefined) return;
    change(id, { thumbnail: await thumbnailOf(file) });
  });
}

function pump(): void {
  while (underway.size < AT_ONCE) {
    const next = nextInTurn();
    if (next === null) return;
    void send(next);
  }
}

/**
 * The first photo that waits. Behind one that was lost on its way the others wait too, so that their order stays and
 * a connection that is away is told once; one that is lost again and again lets them pass.
 */
function nextInTurn(): Sending | null {
  for (const one of sendings.peek()) {
    if (underway.has(one.id) || isBeingCleared(one)) continue;
    if (one.state === 'waiting') return one;
    if (one.state === 'refused' && (lost.get(one.id) ?? Infinity) <= WAITS.length) return null;
  }
  return null;
}

async function send(sending: Sending): Promise<void> {
  const { id, key } = sending;
  change(id, { state: 'sending' });
  const sent = sendBeside(sending, (share) => progressed(id, share));
  underway.set(id, sent);
  try {
    const answer = await sent.answer;
    lost.delete(id);
    if (sendingAt(id)) await arrived(sending, answer);
  } catch (fault) {
    const refused = { state: 'refused', problem: asProblem(fault) } as const;
    change(id, refused);
    if (sendingAt(id) && !holdsPlace({ ...sending, ...refused })) {
      // What is refused for good is not there, and would be refused again after a reload.
      change(id, { whole: false });
      await takeAway(key);
    }
    if (sendingAt(id) && isPassing(fault)) {
      // A browser tells now and then how much it has sent: more than it told may have arrived.
      if (navigator.onLine) sentWhole(id);
      retryLater(id, fault);
    } else lost.delete(id);
  }
  underway.delete(id);
  pump();
}

function progressed(id: number, share: number): void {
  change(id, { sent: share, state: share >= 1 ? 'reading' : 'sending' });
  if (share >= 1) sentWhole(id);
}

function sentWhole(id: number): void {
  const one = sendingAt(id);
  if (one === undefined || one.whole) return;
  change(id, { whole: true });
  void noteWhole(one.key);
}

/** Shows what was found until the pad with its new papers is here. */
async function arrived({ id, key, pad }: Sending, answer: PhotoAnswer): Promise<void> {
  change(id, foundIn(answer));
  announce(photosWords.found(answer.sides.length));
  await takeAway(key);
  // The next one need not wait until the pad is grouped and here.
  underway.delete(id);
  pump();
  await loaded(answer.photo.picture);
  await pads.fresh(pad);
  void padList.fresh('all');
  drop(id);
}

/** The large picture is here before it takes the place of the small one, which would leave that blank for a moment. */
async function loaded(picture: string): Promise<void> {
  const ahead = new Image();
  ahead.src = picture;
  await ahead.decode().catch(() => undefined);
}
