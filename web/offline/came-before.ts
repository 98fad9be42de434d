import { SHELF } from './shelf-name.ts';

/**
 * On a first visit much is here before the offline worker is at work, so that it keeps none of it. That is fetched once
 * more through the worker, in the order in which it came; most of it out of the browser's own cache.
 */
export function layByWhatCameBefore(): void {
  let turn = atWork();
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries() as PerformanceResourceTiming[]) {
      const address = passedBy(entry);
      if (address !== null) turn = turn.then(() => layByNow(address)).catch(() => undefined);
    }
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

/** The address of an answer of the service that did not come through the worker; null for all else, such as a photo that was sent. */
function passedBy({ name, workerStart, initiatorType }: PerformanceResourceTiming): string | null {
  const { origin, pathname, search } = new URL(name);
  if (workerStart > 0 || initiatorType === 'xmlhttprequest') return null;
  if (origin !== location.origin || !pathname.startsWith('/api/')) return null;
  return NEVER_KEPT.test(pathname) ? null : pathname + search;
}

async function layByNow(address: string): Promise<void> {
  const shelf = await caches.open(SHELF);
  if (await shelf.match(address)) return;
  await (await fetch(address, { priority: 'low' })).blob();
}
