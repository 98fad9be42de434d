import type { Pad, Photo } from '../../server/contract/pads.ts';
import { unreachable } from '../wire/ask.ts';
import { service } from '../wire/service.ts';
import { pads } from '../wire/shelves.ts';
import { sendPhoto, type Underway } from './send-photo.ts';
import type { Sending } from './sending.ts';
import { otherFace, shownFace } from './shown-face.ts';
import { sheetsOn, swapFaces } from './swap-faces.ts';
import type { Berth } from './tablefuls.ts';

/**
 * Sends a photo to its place on a table. The service pairs photos by the faces under which they came in; where
 * the one that lies there was swapped since, both are paired as they came and then swapped together.
 */
export function sendBeside(sending: Sending, progress: (share: number) => void): Underway {
  const { berth } = sending;
  let sent: Underway | null = null;
  let stopped = false;

  function send(side: Berth['side']): Underway['answer'] {
    if (stopped) return Promise.reject(unreachable());
    sent = sendPhoto({ ...sending, berth: { ...berth, side } }, progress);
    return sent.answer;
  }

  async function answer(): Underway['answer'] {
    const pad = pads.at(sending.pad).peek().value ?? (await service.pad(sending.pad));
    if (facing(pad, berth)?.side !== berth.side) return send(berth.side);
    await swapFaces(sheetsOn(pad, berth.arrangement));
    try {
      return await send(otherFace(berth.side));
    } finally {
      await swapFaces(sheetsOn(await service.pad(pad.id), berth.arrangement));
    }
  }

  return {
    answer: answer(),
    stop: () => {
      stopped = true;
      sent?.stop();
    },
  };
}

/** The photo that lies on the other face of that place. */
function facing(pad: Pad, { arrangement, side }: Berth): Photo | null {
  const there = pad.photos.filter((photo) => photo.arrangement === arrangement);
  return there.findLast((photo) => shownFace(pad, photo) !== side) ?? null;
}
