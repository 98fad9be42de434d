import { effect } from '@preact/signals';
import { place, type Place } from '../table/way.ts';
import { leftovers, pads, padList, plansOf, ticks } from './shelves.ts';

/** News is looked up after so long: what she waits for herself comes first, and news in a row is one. */
const SOON_MS = 200;

/** Hears from the service when the pad on the table has changed, on whatever device, and looks again. */
export function hearNews(): void {
  let stream: EventSource | null = null;
  let heard: string | null = null;
  let soon = 0;

  function listen(pad: string | null): void {
    if (pad === heard) return;
    stream?.close();
    heard = pad;
    stream = pad === null ? null : new EventSource(`/api/pads/${pad}/events`);
    stream?.addEventListener('changed', (event) => {
      if (pad === null) return;
      clearTimeout(soon);
      soon = window.setTimeout(() => look(pad, revisionIn(event)), SOON_MS);
    });
  }

  // A hidden window lets go, because a browser opens few streams to one place; what it missed is looked up when it shows again.
  const now = (here: Place): void => {
    listen(document.visibilityState === 'hidden' || here.at === 'pads' ? null : here.pad);
  };
  effect(() => {
    now(place.value);
  });
  document.addEventListener('visibilitychange', () => {
    now(place.peek());
  });
}

/** Plans, ticks and left-overs change without the pad; the pad itself is asked for only when it is another. */
function look(pad: string, revision: number | null): void {
  plansOf.freshAll();
  ticks.freshAll();
  leftovers.freshAll();
  if (pads.at(pad).peek().value?.revision === revision) return;
  void pads.fresh(pad);
  padList.freshAll();
}

function revisionIn(event: Event): number | null {
  const { revision } = JSON.parse(String((event as MessageEvent).data)) as {
    revision: number | null;
  };
  return revision;
}
