/** Addresses of answers that came past the offline worker, because it was not at work yet. */
const early = new Set<string>();
let hear: ((address: string) => void) | null = null;

/** Notes that the service has answered a GET past the offline worker. */
export function noteGot(address: string): void {
  if (hear === null) early.add(address);
  else hear(address);
}

/** Tells each address noted, those from before first. */
export function onGot(act: (address: string) => void): void {
  hear = act;
  for (const address of early) act(address);
  early.clear();
}

/** Ids of what was deleted. */
const gone = new Set<string>();

/** Notes that what lies at an address was deleted. */
export function noteGone(address: string): void {
  gone.add(address.slice(address.lastIndexOf('/') + 1));
}

/** Whether an address names something that was deleted since, such as a pad whose plans are listed there. */
export function isGone(address: string): boolean {
  return address.split(/[/?=&]/).some((word) => gone.has(word));
}

/** Whether what is asked now goes past the worker; over plain http there is none to go past. */
export function goesPastWorker(): boolean {
  return 'serviceWorker' in navigator && navigator.serviceWorker.controller === null;
}
