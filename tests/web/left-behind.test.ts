import { afterEach, beforeEach, expect, it, vi } from 'vitest';

interface LeftBehind {
  readonly newKey: () => string;
  readonly leftBehind: (all: readonly { key: string }[]) => Promise<{ key: string }[]>;
}

/** Names that other pages of this browser hold; null for a browser without locks, as over plain http. */
let held: string[] | null;

beforeEach(() => {
  held = [];
  vi.resetModules();
});
afterEach(() => vi.unstubAllGlobals());

/** The page's own, new for each test. Its address is no literal, as the types of a browser are not here. */
async function leftBehind(): Promise<LeftBehind> {
  const locks = {
    request: () => new Promise(() => undefined),
    query: () => Promise.resolve({ held: held?.map((name) => ({ name })) }),
  };
  vi.stubGlobal('navigator', held === null ? {} : { locks });
  const address = new URL('../../web/photos/left-behind.ts', import.meta.url).pathname;
  return (await import(address)) as LeftBehind;
}

const keys = (...all: readonly string[]): { key: string }[] => all.map((key) => ({ key }));

it('takes photos up in the order in which they were chosen, not in that of their names', async () => {
  const { leftBehind: left } = await leftBehind();
  const all = keys('2000.5-1', '1000.25-10', '1000.25-9', '1000.25-1', '999.5-30');
  expect((await left(all)).map(({ key }) => key)).toEqual([
    '999.5-30',
    '1000.25-1',
    '1000.25-9',
    '1000.25-10',
    '2000.5-1',
  ]);
});

it('leaves its own photos, and those of a page that is still open', async () => {
  held = ['2000.5'];
  const { leftBehind: left, newKey } = await leftBehind();
  expect(await left(keys(newKey(), newKey(), '2000.5-1', '1000-2'))).toEqual(keys('1000-2'));
});

it('takes up all but its own where a browser cannot tell which pages are open', async () => {
  held = null;
  const { leftBehind: left, newKey } = await leftBehind();
  expect(await left(keys(newKey(), '2000.5-1'))).toEqual(keys('2000.5-1'));
});
