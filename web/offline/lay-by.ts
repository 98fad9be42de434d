import { SHELF } from './shelf-name.ts';

/**
 * Lays by what came along with another answer, under the address where it would have been asked for, so that the
 * offline worker finds it there. Where no worker is at work nothing is laid by.
 */
export async function layBy(address: string, body: string, type: string): Promise<void> {
  if (!('serviceWorker' in navigator) || navigator.serviceWorker.controller === null) return;
  try {
    const shelf = await caches.open(SHELF);
    await shelf.put(address, new Response(body, { headers: { 'content-type': type } }));
  } catch {
    // A browser that refuses the space only loses the safety net.
    return;
  }
}
