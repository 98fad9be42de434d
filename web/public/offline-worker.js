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

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const address = new URL(request.url);
  if (request.method !== 'GET' || address.origin !== self.location.origin) return;
  if (address.pathname.endsWith('.pdf') || address.pathname.endsWith('/events')) return;
  if (address.pathname.startsWith('/assets/')) event.respondWith(shelfFirst(request));
  else if (request.mode === 'navigate') event.respondWith(serviceFirst(request, '/'));
  else event.respondWith(serviceFirst(request, request));
});

async function shelfFirst(request) {
  const kept = await caches.match(request);
  return kept ?? keep(request, await fetch(request));
}

async function serviceFirst(request, key) {
  try {
    return keep(key, await fetch(request));
  } catch (fault) {
    const kept = await caches.match(key);
    if (kept) return kept;
    throw fault;
  }
}

async function keep(key, answer) {
  if (answer.ok) {
    const shelf = await caches.open(SHELF);
    await shelf.put(key, answer.clone());
  }
  return answer;
}
