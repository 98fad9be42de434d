import { expect, it } from 'vitest';
import { goTo, openDemoPad, plannedDemo, toFirstCut } from '../hands.ts';
import type { Table } from '../table.ts';

/** What is done on one device is seen on the other by itself; undo is the same on both. */
export function twoDevices(at: () => Table): void {
  it('shows ticks and newer plans on another device without a reload', async () => {
    const laptop = await at().open('laptop');
    const tablet = await at().open('tablet');
    const { page } = laptop;
    await plannedDemo(page, 2);
    const first = page.url();
    await tablet.page.goto(first);
    const redo = tablet.page.getByRole('button', { name: 'Redo' }).first();
    await redo.waitFor();
    await expect.poll(() => redo.isDisabled()).toBe(true);
    await page.getByRole('slider', { name: /calm to busy/ }).press('ArrowRight');
    await page.waitForURL((url) => url.href !== first);
    await expect.poll(() => redo.isEnabled()).toBe(true);
    await redo.click();
    await tablet.page.waitForURL(page.url());
    const slider = tablet.page.getByRole('slider', { name: /calm to busy/ });
    await expect.poll(() => slider.inputValue()).toBe('0.25');

    const guide = page.url().replace('/plan/', '/guide/');
    await page.goto(guide);
    await tablet.page.goto(guide);
    await toFirstCut(page);
    const [mine, hers] = [page, tablet.page].map((each) => each.locator('.act-tick').first());
    await hers!.waitFor();
    await mine!.click();
    await expect.poll(() => hers!.getAttribute('aria-pressed')).toBe('true');
    const cuts = await page.locator('.act-tick').all();
    for (const cut of cuts.slice(1)) await cut.click();
    await tablet.page.getByText(/^3 of \d+ steps done$/).waitFor();
    expect([...laptop.faults, ...tablet.faults]).toEqual([]);
    await laptop.context.close();
    await tablet.context.close();
  });

  it('keeps ticks that could not be sent, and sends them once the service answers again', async () => {
    const { page, context } = await at().open('phone');
    await plannedDemo(page, 1);
    await page.getByRole('link', { name: 'To the cutting guide' }).click();
    await toFirstCut(page);
    const tickInVain = async (): Promise<void> => {
      const lost = page.waitForEvent('requestfailed', (one) => one.url().endsWith('/ticks'));
      await page.locator('.act-tick[aria-pressed="false"]').first().click();
      await lost;
    };
    const known = async (): Promise<number> => {
      const plan = new URL(page.url()).pathname.split('/').at(-1);
      const answer = await page.request.get(`/api/plans/${plan}/ticks`);
      return ((await answer.json()) as { ticks: string[] }).ticks.length;
    };
    // The last act of a step ticks the step as well: one touch may be two ticks.
    await expect.poll(known).toBe(2);
    // What could not be sent outlives the page.
    await page.route('**/ticks', (route) =>
      route.request().method() === 'POST' ? route.abort() : route.continue(),
    );
    await tickInVain();
    expect(await known()).toBe(2);
    await page.reload();
    await page.locator('.act-tick').first().waitFor();
    await page.unroute('**/ticks');
    await expect.poll(known).toBeGreaterThan(2);
    await expect
      .poll(() => page.evaluate("localStorage.getItem('plyhue:ticks-unsent')"))
      .toBe('{}');
    // And the time without a network.
    const before = await known();
    await context.setOffline(true);
    await tickInVain();
    await context.setOffline(false);
    await expect.poll(known).toBeGreaterThan(before);
    await context.close();
  });

  it('says how a phone can come in when this computer is alone', async () => {
    const { page, context, faults } = await at().open('laptop');
    await openDemoPad(page);
    await goTo(page, 'Photos');
    await page.getByRole('button', { name: 'Use my phone' }).click();
    await page
      .getByRole('dialog')
      .getByRole('alert')
      .getByText(/HOST=0\.0\.0\.0/)
      .waitFor();
    expect(faults).toEqual([]);
    await context.close();
  });
}
