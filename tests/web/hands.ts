import type { Page } from 'playwright-core';
import assert from 'node:assert/strict';

/** What she does on the page, in her words; every journey is made of these. */

/** Opens the demo pad from the list of pads and stands at its papers. */
export async function openDemoPad(page: Page): Promise<void> {
  await page.goto('/');
  await page.getByRole('link', { name: /Tidewrack/ }).click();
  await page.getByRole('heading', { name: 'Tidewrack' }).waitFor();
}

/** Goes to a station by the ruler at the top, and is there: its link says so, and the screen has its file and a heading. */
export async function goTo(page: Page, station: string): Promise<void> {
  const link = page.getByRole('navigation').getByRole('link', { name: station });
  await link.click();
  await link.and(page.locator('[aria-current="page"]')).waitFor();
  await page.getByRole('main').getByRole('heading', { level: 1 }).first().waitFor();
}

/** Adds one card of each of the first layouts. */
export async function chooseCards(page: Page, count: number): Promise<void> {
  await goTo(page, 'Cards');
  const layouts = page.locator('.layout');
  await layouts.first().waitFor();
  for (let n = 0; n < count; n += 1) {
    await layouts
      .nth(n)
      .getByRole('button', { name: /^One more/ })
      .last()
      .click();
  }
  await page
    .locator('.bar')
    .getByRole('status')
    .filter({ hasText: new RegExp(`^${count} card`) })
    .waitFor();
}

/** Presses the one button and waits for the pictures of all cards. */
export async function planCards(page: Page, count: number): Promise<void> {
  await page.getByRole('button', { name: 'Choose the papers for me' }).click();
  await page
    .locator('.planned-card')
    .nth(count - 1)
    .waitFor();
  assert.equal(await page.locator('.planned-card').count(), count);
  await picturesDrawn(page, '.planned-card .drawn-card', count);
}

/**
 * Waits until so many pictures are loaded and have a size, and none of them waits for a newer one. A card is drawn in
 * the page itself, as soon as its papers are decoded.
 */
export async function picturesDrawn(page: Page, which: string, count: number): Promise<void> {
  const drawn = `(() => {
    const pictures = [...document.querySelectorAll(${JSON.stringify(which)})];
    const isDrawn = (one) =>
      one instanceof HTMLImageElement
        ? one.complete && one.naturalWidth > 0
        : one.querySelector('svg')?.getBoundingClientRect().width > 0;
    const whole = pictures.filter((one) => isDrawn(one) && !one.closest('.drawing'));
    return pictures.length === whole.length ? whole.length : -1;
  })()`;
  // Asked again and again from here: the page's own policy rightly forbids to evaluate text within it.
  const patience = Date.now() + 120_000;
  while ((await page.evaluate<number>(drawn)) < count) {
    if (Date.now() > patience) throw new Error(`Fewer than ${count} pictures were drawn: ${which}`);
    await new Promise((resolve) => setTimeout(resolve, 15));
  }
}

/** The demo pad with so many cards planned. */
export async function plannedDemo(page: Page, count: number): Promise<void> {
  await openDemoPad(page);
  await chooseCards(page, count);
  await planCards(page, count);
}

/** Ticks what stands before the first cut: the numbers of the sheets, and what to mind. */
export async function toFirstCut(page: Page): Promise<void> {
  for (const name of ['Number your sheets', 'Before the first cut']) {
    await page.getByRole('article').getByRole('heading', { name }).waitFor();
    await page.getByRole('button', { name: 'Done', exact: true }).click();
  }
}

/** Starts a pad and stands where its photos are sent. */
export async function startPad(page: Page, name: string): Promise<void> {
  await page.goto('/');
  await page.getByRole('button', { name: 'Start a new pad' }).click();
  await page.getByLabel('Name of the pad').fill(name);
  await page.getByRole('button', { name: 'Start with photos' }).click();
  await page.getByLabel('Choose photos').waitFor({ state: 'attached' });
}

/** Holds back what the page asks of an address, by one method or any, until it is let go by the function given. */
export async function holdBack(
  page: Page,
  address: RegExp,
  method: string | null = null,
): Promise<() => void> {
  let letGo = (): void => undefined;
  const held = new Promise<void>((resolve) => (letGo = resolve));
  await page.route(address, async (route) => {
    if (method === null || route.request().method() === method) await held;
    await route.continue();
  });
  return letGo;
}
