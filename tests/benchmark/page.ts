import { readFileSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { gzipSync } from 'node:zlib';
import type { CDPSession, Page } from 'playwright-core';
import { findBrowser, NO_BROWSER } from '../web/find-browser.ts';
import { openDemoPad, picturesDrawn, planCards } from '../web/hands.ts';
import { buildPage, layTable, project, type Table } from '../web/table.ts';
import { compiled } from './compiled.ts';
import type { Figure, Topic } from './figure.ts';

/** The page: what is sent first, how soon it can be used, how fast it plans again; on the demo pad. */
export const page: Topic = async () => {
  if (findBrowser() === null) {
    buildPage();
    return [firstScript(), ...skipped()];
  }
  const table = await layTable(await compiled('server/main.ts'));
  try {
    return [firstScript(), await usable(table), ...(await planning(table))];
  } finally {
    await table.close();
  }
};

const USABLE = 'page usable after its HTML, processor slowed 4 times';
const PINNED = 'pin to new pictures on the screen, 15 cards';
const SWAPPED = 'another paper to new pictures on the screen, 15 cards';
const LONGEST = 'longest task while scrolling and pinning 15 cards';

function skipped(): Figure[] {
  return [USABLE, PINNED, SWAPPED, LONGEST].map((name) => ({
    name,
    value: Number.NaN,
    unit: 'ms',
    bar: null,
    note: `skipped: ${NO_BROWSER}`,
  }));
}

/** All script that the first HTML names, as gzip sends it. */
function firstScript(): Figure {
  const web = path.join(project, 'dist', 'web');
  const html = readFileSync(path.join(web, 'index.html'), 'utf8');
  const scripts = [...html.matchAll(/(?:src|href)="(\/assets\/[^"]+\.js)"/g)].map(([, at]) => at!);
  const gzipped = (files: readonly string[]): number =>
    files.reduce((sum, at) => sum + gzipSync(readFileSync(path.join(web, at))).length, 0);
  const bytes = gzipped(scripts);
  const all = readdirSync(path.join(web, 'assets')).filter((name) => name.endsWith('.js'));
  const whole = gzipped(all.map((name) => path.join('assets', name)));
  return {
    name: 'script sent at first load, gzip',
    value: bytes / 1000,
    unit: 'kB',
    bar: { at: 'most', value: 60 },
    note: `${scripts.length} files; ${(whole / 1000).toFixed(1)} kB with all other screens, which come once the first stands`,
  };
}

/** From the last byte of the HTML to the pads on the screen; the median of five visits with an empty cache. */
async function usable(table: Table): Promise<Figure> {
  const times: number[] = [];
  for (let visit = 0; visit < 5; visit += 1) {
    const { page: screen, context } = await table.open('laptop');
    // Noted within the page, so that the slowed hands of the test do not count.
    await screen.addInitScript(`
      new MutationObserver(() => {
        if (!window.usableAt && document.querySelector('.pad-stack')) window.usableAt = performance.now();
      }).observe(document, { childList: true, subtree: true });
    `);
    await slowDown(await context.newCDPSession(screen), 4);
    await screen.goto('/');
    await screen.locator('.pad-stack').first().waitFor();
    times.push(
      await screen.evaluate<number>(
        `window.usableAt - performance.getEntriesByType('navigation')[0].responseEnd`,
      ),
    );
    await context.close();
  }
  return {
    name: USABLE,
    value: median(times),
    unit: 'ms',
    bar: { at: 'most', value: 1000 },
    note: 'median of 5 visits, empty cache, pads drawn',
  };
}

async function planning(table: Table): Promise<Figure[]> {
  const { page: screen, context } = await table.open('laptop');
  await screen.addInitScript(`
    window.longest = 0;
    new PerformanceObserver((list) => {
      for (const { duration } of list.getEntries()) window.longest = Math.max(window.longest, duration);
    }).observe({ type: 'longtask' });
  `);
  await openDemoPad(screen);
  await twoOfEach(screen);
  await fifteenCards(screen);
  await screen.evaluate('window.longest = 0');
  const pins: number[] = [];
  for (let card = 1; card <= 5; card += 1) pins.push(await pinOne(screen, card));
  const swaps: number[] = [];
  for (let card = 6; card <= 10; card += 1) swaps.push(await swapOne(screen, card));
  for (let turn = 0; turn < 20; turn += 1) await screen.mouse.wheel(0, turn % 2 ? -500 : 500);
  const longest = await screen.evaluate<number>('window.longest');
  await context.close();
  return [
    {
      name: PINNED,
      value: median(pins),
      unit: 'ms',
      bar: { at: 'most', value: 200 },
      note: `median of ${pins.length} pins, planned by the service, pictures drawn and a frame with them made`,
    },
    {
      name: SWAPPED,
      value: median(swaps),
      unit: 'ms',
      bar: { at: 'most', value: 200 },
      note: `median of ${swaps.length} swaps by a tap, other cards follow, pictures drawn and a frame with them made`,
    },
    {
      name: LONGEST,
      value: longest,
      unit: 'ms',
      bar: { at: 'most', value: 100 },
      note: '0 is: none over 50 ms',
    },
  ];
}

/** Fifteen cards with large panels take more than the twelve sheets; many pads hold each design twice. */
async function twoOfEach(screen: Page): Promise<void> {
  const { request } = screen.context();
  const id = screen.url().split('/').at(-2) ?? '';
  const pad = (await (await request.get(`/api/pads/${id}`)).json()) as { sheets: { id: string }[] };
  for (const sheet of pad.sheets) {
    await request.patch(`/api/sheets/${sheet.id}`, { data: { copies: 2 } });
  }
}

async function fifteenCards(screen: Page): Promise<void> {
  await screen.getByRole('link', { name: /^Choose cards/ }).click();
  const counts = screen.locator('.count');
  await counts.first().waitFor();
  for (let n = 0; n < 5; n += 1) {
    await counts.nth(n).fill('3');
    await counts.nth(n).press('Tab');
  }
  await planCards(screen, 15);
}

/** Lays the second best of the other papers on a card; gives the time until all pictures of the new plan are drawn. */
async function swapOne(screen: Page, card: number): Promise<number> {
  await screen
    .locator('.planned-card')
    .nth(card - 1)
    .click();
  const papers = screen.locator('.layer-line').filter({ has: screen.locator('img') });
  const others = screen.locator('.alternatives > .swatch-row').getByRole('button');
  // What earlier swaps hold may leave a layer nothing else; the next one is asked then.
  for (let layer = 0; layer < (await papers.count()); layer += 1) {
    await papers.nth(layer).locator('.layer-stuff').click();
    await screen
      .locator('.alternatives')
      .locator('.swatch-row, p:not(.waiting)')
      .first()
      .waitFor({ state: 'attached' });
    const there = await others.count();
    if (there > 0)
      return await untilDrawn(screen, () => others.nth(Math.min(1, there - 1)).click());
    await papers.nth(layer).locator('.layer-stuff').click();
  }
  throw new Error(`No paper of card ${card} can be swapped for another.`);
}

/** Keeps the uppermost paper of a card where it is; gives the time until all pictures of the new plan are drawn. */
async function pinOne(screen: Page, card: number): Promise<number> {
  await screen
    .locator('.planned-card')
    .nth(card - 1)
    .click();
  const paper = screen
    .locator('.layer-line')
    .filter({ has: screen.locator('img') })
    .first();
  return await untilDrawn(screen, () => paper.locator('> .round').click());
}

async function untilDrawn(screen: Page, wish: () => Promise<void>): Promise<number> {
  const before = screen.url();
  const start = performance.now();
  await wish();
  await screen.waitForURL((url) => url.href !== before, { timeout: 60_000, waitUntil: 'commit' });
  await picturesDrawn(screen, '.planned-card .drawn-card', 15);
  // The first frame is made with the new pictures, the second only once that one is handed to the screen.
  await screen.evaluate(
    'new Promise((shown) => requestAnimationFrame(() => requestAnimationFrame(shown)))',
  );
  const time = performance.now() - start;
  await screen.keyboard.press('Escape');
  return time;
}

async function slowDown(session: CDPSession, rate: number): Promise<void> {
  await session.send('Emulation.setCPUThrottlingRate', { rate });
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;
}
