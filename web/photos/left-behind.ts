import type { LaidBy } from './laid-by.ts';

/** Tells the photos of this page from those of another: names of photos laid by begin with it. */
const pageName = String(performance.timeOrigin);

let lastNumber = 0;

/** A new name under which a photo of this page is laid by; the number tells when it was chosen. */
export function newKey(): string {
  lastNumber += 1;
  return `${pageName}-${lastNumber}`;
}

/** As long as this page lives it holds its name, so that no other takes up what it still sends. */
function holdName(): void {
  void locks()?.request(pageName, () => new Promise(() => undefined));
}
holdName();

/** Of the photos laid by, those whose page is gone, in the order in which they were chosen. */
export async function leftBehind(all: readonly LaidBy[]): Promise<LaidBy[]> {
  const held = (await locks()?.query())?.held ?? [];
  const alive = new Set([pageName, ...held.map(({ name }) => name)]);
  return all
    .map((one) => ({ one, page: pageOf(one.key), id: numberOf(one.key) }))
    .filter(({ page }) => !alive.has(page))
    .sort((a, b) => Number(a.page) - Number(b.page) || a.id - b.id)
    .map(({ one }) => one);
}

/** Two pages that open at once take up what a third has left one after the other, so that each photo is taken up once. */
export async function oneAtATime(act: () => Promise<void>): Promise<void> {
  const held = locks();
  if (held === null) await act();
  else await held.request('take-up', act);
}

/** Null over plain http on the home network, where a browser has none: two pages may send one photo, which is one at the service. */
function locks(): LockManager | null {
  return 'locks' in navigator ? navigator.locks : null;
}

function pageOf(key: string): string {
  return key.slice(0, key.lastIndexOf('-'));
}

function numberOf(key: string): number {
  return Number(key.slice(key.lastIndexOf('-') + 1));
}
