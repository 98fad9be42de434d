import type { PhotoAnswer } from '../../server/contract/pads.ts';
import { announce } from '../table/announce.tsx';
import { photosWords } from '../words/photos.ts';
import { asProblem } from '../wire/ask.ts';
import { isPassing, waitAfter, WAITS } from '../wire/lost.ts';
import { service } from '../wire/service.ts';
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
import { keyOf, leftBehind, oneAtATime } from './left-behind.ts';
import { thumbnailOf } from './thumbnail.ts';
import type { Berth } from './tablefuls.ts';

/** Two at a time keep the wire busy while the service reads, and thirty photos do not stand in each other's way. */
const AT_ONCE = 2;
const underway = new Map<number, Underway>();
/** How often in a row a photo, or the answer to it, was lost on its way. */
const lost = new Map<number, number>();
/** Photos that the service has whole and that she took away before it answered: what it makes of them goes again. */
const unwanted = new Set<number>();

/** Puts photos into the queue; each is kept on this device until the service has it. */
export function enqueue(pad: string, files: readonly File[], berths: readonly Berth[]): void {
  const fresh = files.map((file, n) => newSending(pad, berths[n]!, file, file.name));
  sendings.value = [...sendings.peek(), ...fresh];
  for (const sending of fresh) void prepare(sending);
  pump();
}

/** Takes up again what a reload or a closed tab left behind, in the order in which it was chosen. */
export async function takeUp(): Promise<void> {
  await oneAtATime(async () => {
    const left = await leftBehind(await laidBy());
    const fresh = left.map((one) => newSending(one.pad, one.berth, one.file, one.name));
    sendings.value = [...sendings.peek(), ...fresh];
    // Laid by under this page's name before the old copy goes: a page closed in between loses none.
    for (const sending of fresh) await keep(sending);
    for (const { key } of left) await takeAway(key);
    for (const sending of fresh) show(sending);
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
      const still = sendings.peek().find((one) => one.id === id);
      if (still?.state === 'refused' && lost.get(id) === tries) retry(id);
    },
    waitAfter(tries, fault),
  );
}

/** Takes a photo away. One that the service has whole already is taken away there, or it would appear after all. */
export function stop(id: number): void {
  const one = sendings.peek().find((each) => each.id === id);
  if (one?.state === 'reading') unwanted.add(id);
  else {
    underway.get(id)?.stop();
    underway.delete(id);
  }
  lost.delete(id);
  void takeAway(keyOf(id));
  drop(id);
  if (one?.photo) void takeAwayThere(one.pad, one.photo);
  pump();
}

/** What cannot be taken away there is seen on the table, where it can be tried again. */
async function takeAwayThere(pad: string, photo: string): Promise<void> {
  await service.removePhoto(photo).catch(() => undefined);
  await pads.fresh(pad);
  void padList.fresh('all');
}

async function prepare(sending: Sending): Promise<void> {
  await keep(sending);
  show(sending);
}

async function keep(sending: Sending): Promise<void> {
  await layBy({ key: keyOf(sending.id), ...sending });
}

let shown = Promise.resolve();

/** Makes the small pictures one after the other: to open thirty large photos at once takes more memory than a phone has. */
function show({ id, file }: Sending): void {
  shown = shown.then(async () => {
    if (!sendings.peek().some((one) => one.id === id)) return;
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
    if (underway.has(one.id)) continue;
    if (one.state === 'waiting') return one;
    if (one.state === 'refused' && (lost.get(one.id) ?? Infinity) <= WAITS.length) return null;
  }
  return null;
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
    if (unwanted.has(id)) await takeAwayThere(pad, answer.photo.id);
    else await arrived(sending, answer);
  } catch (fault) {
    const refused = { state: 'refused', problem: asProblem(fault) } as const;
    change(id, refused);
    // What is refused for good would be refused again after a reload.
    if (!holdsPlace({ ...sending, ...refused })) await takeAway(keyOf(id));
    const here = sendings.peek().some((one) => one.id === id);
    if (here && isPassing(fault)) retryLater(id, fault);
    else lost.delete(id);
  }
  unwanted.delete(id);
  underway.delete(id);
  pump();
}

/** Shows what was found until the pad with its new papers is here. */
async function arrived({ id, pad }: Sending, answer: PhotoAnswer): Promise<void> {
  change(id, foundIn(answer));
  announce(photosWords.found(answer.sides.length));
  await takeAway(keyOf(id));
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
