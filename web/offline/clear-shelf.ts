import { effect } from '@preact/signals';
import { whenIdle } from '../table/when-idle.ts';
import { place } from '../table/way.ts';
import { idIn, idsIn, padTold, type Owners } from './belonging.ts';
import { lookedAt, noteLooked } from './looked-at.ts';
import { makeRoom } from './make-room.ts';
import { SHELF } from './shelf-name.ts';
import { whatGoes, whatGoesFirst } from './what-goes.ts';

/** By then what a pad needs is on the shelf, so that it is not cleared in the midst of it. */
const SETTLED_MS = 5000;
/**
 * Keeps the offline worker's shelf from growing without end. Only copies of what the service has go from it: ticks,
 * photos that wait and all else that is not sent yet lie elsewhere on this device.
 */
export function clearShelfNowAndThen(): void {
  let timer = 0;
  effect(() => {
    const here = place.value;
    if (here.at !== 'pads' && here.pad !== null) noteLooked(here.pad);
    clearTimeout(timer);
    timer = window.setTimeout(
      () => whenIdle(() => void clear().catch(() => undefined)),
      SETTLED_MS,
    );
  });
}

async function clear(): Promise<void> {
  if (navigator.serviceWorker.controller === null || !(await isServiceThere())) return;
  const shelf = await caches.open(SHELF);
  const addresses = (await shelf.keys()).map(({ url }) => pathOf(url));
  const owners = await ownersOf(shelf, addresses);
  const looked = lookedAt();
  const gone = new Set(whatGoes({ addresses, owners, looked }));
  const files = await filesOfThisPage();
  for (const address of [...gone, ...filesOfOldPages(addresses, files)])
    await shelf.delete(address);
  const left = addresses.filter((address) => !gone.has(address));
  const { usage = 0, quota = Infinity } = await navigator.storage.estimate();
  const pads = whatGoesFirst({ addresses: left, owners, looked });
  await makeRoom(shelf, { addresses: left, pads, usage, quota });
  await fillAgain(shelf, files);
}

/** Without it nothing that goes could be fetched again. Only GET is answered off the shelf. */
async function isServiceThere(): Promise<boolean> {
  const answer = await fetch('/shelf.json', { method: 'HEAD', cache: 'no-store' }).catch(
    () => null,
  );
  return answer?.ok === true;
}

function pathOf(url: string): string {
  const { pathname, search } = new URL(url);
  return pathname + search;
}

/** Asks the pads themselves, the newest last, then supplies, and where that leaves a thing without an owner, the plans. */
async function ownersOf(shelf: Cache, addresses: readonly string[]): Promise<Owners> {
  const owners = new Map<string, string | null>();
  const wanted = new Set(addresses.map(idIn).filter((id) => id !== null));
  const ask = async (address: string, pad: (text: string) => string | null): Promise<void> => {
    const text = (await (await shelf.match(address))?.text()) ?? '';
    const owner = pad(text);
    for (const id of idsIn(text, wanted)) if (!owners.has(id)) owners.set(id, owner);
  };
  for (const address of addresses) {
    const pad = padTold(address);
    if (pad !== null) await ask(address, () => pad);
  }
  await ask('/api/supplies', () => null);
  for (const address of addresses) {
    if ([...wanted].every((id) => owners.has(id))) break;
    if (/^\/api\/plans\/[^/?]+$/.test(address)) await ask(address, padOfPlan);
  }
  return owners;
}

function padOfPlan(text: string): string | null {
  return (JSON.parse(text) as { pad: string }).pad;
}

/** What the page needs to open; nothing where the list came off the shelf and is older than this page. */
async function filesOfThisPage(): Promise<ReadonlySet<string>> {
  const answer = await fetch('/shelf.json').catch(() => null);
  const today = new Set(answer?.ok ? ((await answer.json()) as string[]) : []);
  return today.has(new URL(import.meta.url).pathname) ? today : new Set();
}

/** Files of the page as it was before: the service has none of them any more. */
function filesOfOldPages(addresses: readonly string[], today: ReadonlySet<string>): string[] {
  const files = addresses.filter((address) => /^\/assets\/.*\.(js|css|woff2)$/.test(address));
  return today.size === 0 ? [] : files.filter((file) => !today.has(file));
}

/** Lays by again what the page needs to open, where the browser has cleared the shelf since the worker filled it. */
async function fillAgain(shelf: Cache, files: ReadonlySet<string>): Promise<void> {
  const there = new Set((await shelf.keys()).map(({ url }) => pathOf(url)));
  for (const file of files) if (!there.has(file)) await shelf.add(file);
}
