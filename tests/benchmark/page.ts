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
    ${NOTES_PRESSES}
  `);
  await openDemoPad(screen);
  await twoOfEach(screen);
  await fifteenCards(screen);
  await screen.evaluate('window.longest = 0');
  const pins: Shown[] = [];
  for (let card = 1; card <= 5; card += 1) pins.push(await pinOne(screen, card));
  const swaps: Shown[] = [];
  for (let card = 6; card <= 10; card += 1) swaps.push(await swapOne(screen, card));
  for (let turn = 0; turn < 20; turn += 1) await screen.mouse.wheel(0, turn % 2 ? -500 : 500);
  const longest = await screen.evaluate<number>('window.longest');
  await context.close();
  return [
    ...shownIn(PINNED, pins, 'pins, planned by the service'),
    ...shownIn(SWAPPED, swaps, 'swaps by a tap, other cards follow'),
    {
      name: LONGEST,
      value: longest,
      unit: 'ms',
      bar: { at: 'most', value: 100 },
      note: '0 is: none over 50 ms',
    },
  ];
}

function shownIn(name: string, times: readonly Shown[], of: string): Figure[] {
  const seen = times.map((one) => one.seen);
  const range = `${Math.min(...seen).toFixed(0)} to ${Math.max(...seen).toFixed(0)}`;
  return [
    {
      name,
      value: median(seen),
      unit: 'ms',
      bar: { at: 'most', value: 200 },
      note: `median of ${times.length} ${of}; by the page's own clock from the press until a frame with all pictures is made; ${range}`,
    },
    {
      name: `${name}, with the hands of the test`,
      value: median(times.map((one) => one.withHands)),
      unit: 'ms',
      bar: { at: 'most', value: 200 },
      note: 'the same by the clock of the test, with the time in which it looks for the button, moves the mouse there and asks again and again',
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
async function swapOne(screen: Page, card: number): Promise<Shown> {
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
async function pinOne(screen: Page, card: number): Promise<Shown> {
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

/** Milliseconds from a wish to a frame with the new pictures. */
interface Shown {
  /** From her press to that frame, by the page's own clock. */
  readonly seen: number;
  /** With the hands of the test beside, which look for the button, move the mouse there and ask again and again. */
  readonly withHands: number;
}

/**
 * Notes of the last press how long it took until the page stood at another plan, all cards of it were drawn and a
 * frame with them was made: the first frame after that has the new pictures, the second begins once it is handed to
 * the screen.
 */
const NOTES_PRESSES = `
  window.presses = 0;
  addEventListener('click', ({ timeStamp }) => {
    window.seenAfter = null;
    const mine = ++window.presses;
    const before = location.href;
    const stood = () => {
      if (mine !== window.presses) return;
      const cards = [...document.querySelectorAll('.planned-card .drawn-card')];
      const drawn = (one) =>
        !one.closest('.drawing') && one.querySelector('svg')?.getBoundingClientRect().width > 0;
      if (location.href === before || cards.length < 15 || !cards.every(drawn))
        return requestAnimationFrame(stood);
      requestAnimationFrame(() => requestAnimationFrame(() => {
        window.seenAfter = performance.now() - timeStamp;
      }));
    };
    requestAnimationFrame(stood);
  }, { capture: true });
`;

async function untilDrawn(screen: Page, wish: () => Promise<void>): Promise<Shown> {
  const before = screen.url();
  const start = performance.now();
  await wish();
  await screen.waitForURL((url) => url.href !== before, { timeout: 60_000, waitUntil: 'commit' });
  await picturesDrawn(screen, '.planned-card .drawn-card', 15);
  await screen.evaluate(
    'new Promise((shown) => requestAnimationFrame(() => requestAnimationFrame(shown)))',
  );
  const withHands = performance.now() - start;
  let seen: number | null = null;
  while (seen === null) seen = await screen.evaluate<number | null>('window.seenAfter');
  await screen.keyboard.press('Escape');
  return { seen, withHands };
}

async function slowDown(session: CDPSession, rate: number): Promise<void> {
  await session.send('Emulation.setCPUThrottlingRate', { rate });
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;
}
