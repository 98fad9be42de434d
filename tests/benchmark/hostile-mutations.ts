import { setTimeout as pause } from 'node:timers/promises';
import { openMutations } from '../images/mutations.ts';
import type { Figure } from './figure.ts';
import { answersInWords } from './hostile-answers.ts';
import { sendPhoto, startPad, startService } from './running-service.ts';
import type { Sent } from './running-service.ts';

/** As many as the service reads at once, so that an answer's time is not that of a queue. */
const AT_ONCE = 2;
/** A pad does not grow beyond what so many pictures bring. */
const A_PAD = 200;
const SHEETS_EVERY = 20;

/** Damaged copies of real pictures, sent to the service as it is shipped. */
export async function mutationFigures(folder: string, count: number): Promise<Figure[]> {
  const service = await startService(folder);
  try {
    const mutations = await openMutations(SHEETS_EVERY);
    const sent: Sent[] = [];
    let next = 0;
    let pad = '';
    const sender = async (): Promise<void> => {
      while (next < count) {
        const number = next++;
        if (number % A_PAD === 0) pad = await startPad(service.address);
        const bytes = mutations.at(number);
        sent.push(
          await untilTaken(() => sendPhoto(service.address, pad, bytes, `mutation ${number}`)),
        );
      }
    };
    pad = await startPad(service.address);
    await Promise.all(Array.from({ length: AT_ONCE }, sender));
    return await answersInWords({
      what: 'damaged pictures',
      note: `${count} of ${mutations.formats.join(', ')}`,
      sent,
      service,
    });
  } finally {
    await service.stop();
  }
}

/** Damaged pictures are often told at once, so more are sent than the service takes in a minute: it says when to come back. */
async function untilTaken(send: () => Promise<Sent>): Promise<Sent> {
  let sent = await send();
  while (sent.status === 429) {
    await pause(1000 * Number(sent.retryAfter ?? 1));
    sent = await send();
  }
  return sent;
}
