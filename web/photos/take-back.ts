import { asProblem } from '../wire/ask.ts';
import { waitAfter } from '../wire/lost.ts';
import { service } from '../wire/service.ts';
import { padList, pads } from '../wire/shelves.ts';
import { layBy, takeAway } from './laid-by.ts';
import { sendBeside } from './send-beside.ts';
import type { Underway } from './send-photo.ts';
import { isForGood, type Sending } from './sending.ts';

/** Photos that she took away and that the service may still have, by the names under which they are kept. */
const unwanted = new Map<string, Sending>();

/**
 * Takes a photo away at the service, which may have it. It is kept on this device as unwanted until the service has said that
 * it is gone, so that neither a lost answer nor a closed page brings it back. Where no answer tells its id there, it is
 * sent once more: the same bytes at the same place are the photo that is there.
 *
 * Takes       the answer to the sending that is under way; null where there is none.
 */
export async function takeBack(one: Sending, underway: Underway['answer'] | null): Promise<void> {
  unwanted.set(one.key, one);
  // Rather seen on the table after all than sent again by the next page as if it were wanted.
  if (!(await layBy({ ...one, unwanted: true }))) await takeAway(one.key);
  await untilGone(one, underway);
  await takeAway(one.key);
  unwanted.delete(one.key);
  await pads.fresh(one.pad);
  void padList.fresh('all');
}

/** Whether the place of a photo is not free yet: the same bytes sent there would be the photo that is being taken away. */
export function isBeingCleared({ pad, berth }: Sending): boolean {
  return [...unwanted.values()].some(
    (one) =>
      one.pad === pad &&
      one.berth.arrangement === berth.arrangement &&
      one.berth.side === berth.side,
  );
}

/** Until it is gone, or refused for good: what cannot be taken away is seen on the table, where it can be tried again. */
async function untilGone(one: Sending, underway: Underway['answer'] | null): Promise<void> {
  let answer = underway;
  let photo = one.photo;
  for (let tries = 1; ; tries += 1) {
    try {
      photo ??= (await (answer ?? sentAgain(one))).photo.id;
      await service.removePhoto(photo);
      return;
    } catch (fault) {
      if (isForGood(asProblem(fault))) return;
      answer = null;
      await new Promise((resolve) => setTimeout(resolve, waitAfter(tries, fault)));
    }
  }
}

function sentAgain(one: Sending): Underway['answer'] {
  return sendBeside(one, () => undefined).answer;
}
