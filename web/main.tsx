import { render } from 'preact';
import './look/index.css';
import { useCodeInAddress } from './phone/code-in-address.ts';
import { onComingBack } from './table/coming-back.ts';
import { fetchLostPicturesAgain } from './table/pictures-again.ts';
import { fetchScreensAhead } from './table/screens.ts';
import { hearNews } from './wire/news.ts';
import { guides, padList, pads, plansOf, supplies, ticks } from './wire/shelves.ts';
import { App } from './table/app.tsx';

const table = document.getElementById('table');
fetchLostPicturesAgain();
// A device that comes with a code has its key before it asks for anything.
await useCodeInAddress();
if (table) render(<App />, table);
void withPhotoQueue(({ takeUp }) => takeUp());
hearNews();
fetchScreensAhead();
onComingBack(() => {
  void withPhotoQueue(({ retryLost }) => retryLost());
  for (const shelf of [padList, pads, plansOf, supplies, guides, ticks]) shelf.freshAll();
});

/** Photos that wait to be sent are looked for once the page stands; without the file of it they wait on. */
async function withPhotoQueue(
  act: (queue: typeof import('./photos/queue.ts')) => unknown,
): Promise<void> {
  await import('./photos/queue.ts').then(act, () => undefined);
}

if ('serviceWorker' in navigator && import.meta.env.PROD) {
  void import('./offline/came-before.ts').then(
    ({ layByWhatCameBefore }) => layByWhatCameBefore(),
    () => undefined,
  );
  void import('./offline/clear-shelf.ts').then(
    ({ clearShelfNowAndThen }) => clearShelfNowAndThen(),
    () => undefined,
  );
  addEventListener('load', () => {
    // Without it (plain http on the home network) the page works, only not when the service is away.
    navigator.serviceWorker.register('/offline-worker.js').catch(() => undefined);
  });
}
