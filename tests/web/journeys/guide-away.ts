import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { plannedDemo } from '../hands.ts';
import type { Table } from '../table.ts';

/** The guide on a tablet that walks out of reach: no offline worker, as over plain http on the home network. */
export function guideAway(at: () => Table): void {
  it('leafs through all steps of an opened guide without the service, and sends the ticks later', async () => {
    const { page, context, faults } = await at().open('tablet', { serviceWorkers: 'block' });
    await plannedDemo(page, 2);
    await page.getByRole('link', { name: 'To the cutting guide' }).click();
    await page.getByRole('heading', { name: 'Number your sheets' }).waitFor();
    const steps = page.locator('.all-steps button');
    const drawn = steps.filter({ hasNotText: /Number|Before|left$/ });
    const pictures = await drawn.count();
    expect(pictures).toBeGreaterThan(3);
    await expect.poll(() => drawingsAsked(page)).toBe(pictures);
    await page.waitForLoadState('networkidle');

    await context.setOffline(true);
    for (const step of await drawn.all()) {
      await step.click();
      await expect.poll(() => pictureShown(page)).toBe(true);
    }
    await steps.first().click();
    await page.getByRole('button', { name: 'Done', exact: true }).click();
    await page.getByText(/^1 of \d+ steps done$/).waitFor();

    await context.setOffline(false);
    const plan = page.url().split('/').at(-1)!;
    await expect
      .poll(() => context.request.get(`/api/plans/${plan}/ticks`).then((answer) => answer.text()))
      .toBe('{"ticks":["number"]}');
    expect(faults.filter((fault) => !fault.includes('INTERNET_DISCONNECTED'))).toEqual([]);
    await context.close();
  });
}

/** Drawings of sheets and cards that were asked for, each once. */
async function drawingsAsked(page: Page): Promise<number> {
  return await page.evaluate<number>(
    `new Set(performance.getEntriesByType('resource').map(({ name }) => new URL(name).pathname)
      .filter((path) => /\\/(slots|cardstock|cards)\\/[^/]+\\.svg$/.test(path))).size`,
  );
}

async function pictureShown(page: Page): Promise<boolean> {
  return await page.evaluate<boolean>(
    `(() => { const one = document.querySelector('.shown-on img'); return one?.complete === true && one.naturalWidth > 0; })()`,
  );
}
