/*
 * Keeps the page, and the last answers it was given, at hand when the service cannot be reached.
 * Files of the page carry their content in their name and come from the shelf first;
 * everything else comes from the service first.
 */
const SHELF = 'plyhue-shelf';

self.addEventListener('install', (event) => {
  event.waitUntil(
    (async () => {
      const shelf = await caches.open(SHELF);
      const files = await (await fetch('/shelf.json')).json();
      await shelf.addAll(files);
      await self.skipWaiting();
    })(),
  );
});

self.addEventListener('activate', (event) => {
  event.waitUntil(self.clients.claim());
});

/** What is saved as a file, or goes on and on, is no answer to keep. */
const PASSED_BY = /\.(pdf|csv)$|\/(events|file)$/;

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const address = new URL(request.url);
  if (request.method !== 'GET' || address.origin !== self.location.origin) return;
  if (PASSED_BY.test(address.pathname)) return;
  const isPage = request.mode === 'navigate';
  if (address.pathname.startsWith('/assets/')) event.respondWith(shelfFirst(request));
  else if (!isPage) event.respondWith(serviceFirst(request, request));
  // An answer that is opened by itself, such as a picture in a tab of its own, is not the page.
  else if (!address.pathname.startsWith('/api/')) event.respondWith(serviceFirst(request, '/'));
});

async function shelfFirst(request) {
  const kept = await caches.match(request);
  return kept ?? keep(request, await fetch(request));
}

async function serviceFirst(request, key) {
  let answer;
  try {
    answer = await fetch(request);
  } catch (fault) {
    const kept = await caches.match(key);
    if (kept) return kept;
    throw fault;
  }
  return keep(key, answer);
}

async function keep(key, answer) {
  if (answer.ok) {
    try {
      const shelf = await caches.open(SHELF);
      await shelf.put(key, answer.clone());
    } catch {
      // A shelf that is full, or may not be used, only loses the safety net: the answer is here.
    }
  }
  return answer;
}
