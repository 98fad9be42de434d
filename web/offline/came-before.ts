import { isGone, onGot } from './got.ts';
import { SHELF } from './shelf-name.ts';

/**
 * On a first visit much is here before the offline worker is at work, so that it keeps none of it. That is fetched once
 * more through the worker, in the order in which it came; most of it out of the browser's own cache.
 */
export function layByWhatCameBefore(): void {
  let turn = atWork();
  const inTurn = (address: string): void => {
    if (isKept(address)) turn = turn.then(() => layByNow(address)).catch(() => undefined);
  };
  onGot(inTurn);
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries() as PerformanceResourceTiming[])
      if (isPicturePastWorker(entry)) inTurn(entry.name);
  }).observe({ type: 'resource', buffered: true });
}

async function atWork(): Promise<void> {
  const workers = navigator.serviceWorker;
  if (workers.controller !== null) return;
  await new Promise((resolve) => {
    workers.addEventListener('controllerchange', resolve, { once: true });
  });
}

/** What goes on and on, or is saved as a file, is no answer to keep: as in the worker. */
const NEVER_KEPT = /\.(pdf|csv)$|\/(events|file)$/;

/** An answer of the service, and one to keep. */
function isKept(address: string): boolean {
  const { origin, pathname } = new URL(address, location.href);
  return origin === location.origin && pathname.startsWith('/api/') && !NEVER_KEPT.test(pathname);
}

/**
 * Pictures the browser asks for by itself, always with GET, so its own notes of them do. Of what the page asks these notes do
 * not say how: a pad that was deleted looks there like one that was read.
 */
function isPicturePastWorker(entry: PerformanceResourceTiming): boolean {
  const { workerStart, initiatorType, responseStatus } = entry;
  return workerStart === 0 && PICTURES.includes(initiatorType) && !(responseStatus >= 400);
}

/** What asks for a picture, in the words of the browser's notes: HTML, a drawing, a style. */
const PICTURES = ['img', 'image', 'css'];

async function layByNow(address: string): Promise<void> {
  const shelf = await caches.open(SHELF);
  if (isGone(address) || (await shelf.match(address))) return;
  await (await fetch(address, { priority: 'low' })).blob();
}
