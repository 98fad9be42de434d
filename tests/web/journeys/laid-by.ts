import { expect, it } from 'vitest';
import { goTo, picturesDrawn, plannedDemo } from '../hands.ts';
import type { Table } from '../table.ts';

/** What lies on this device for the time without the service, and a pad that is kept as a file. */
export function laidBy(at: () => Table): void {
  it('keeps no more for the time without the service than there is room for, and every tick', async () => {
    const { page, context, faults } = await at().open('laptop', { serviceWorkers: 'allow' });
    const shelved = (what: string): Promise<number> =>
      page.evaluate<number>(`(async () => {
        const kept = await (await caches.open('plyhue-shelf')).keys();
        return kept.filter(({ url }) => url.includes('${what}')).length;
      })()`);
    await plannedDemo(page, 2);
    await page.evaluate('navigator.serviceWorker.ready');
    await page.reload();
    await page.locator('.planned-card').nth(1).waitFor();
    const plan = page.url().split('/').at(-1)!;
    await goTo(page, 'Guide');
    await page.getByRole('button', { name: 'Done', exact: true }).click();
    await expect.poll(() => shelved(`/plans/${plan}/ticks`)).toBe(1);
    await expect.poll(() => shelved('/swatch?')).toBeGreaterThan(0);

    const data = { name: 'Beside it', sheetSize: { width: '6 in', height: '6 in' } };
    const made = await page.request.post('/api/pads', { data });
    const beside = ((await made.json()) as { id: string }).id;
    // A browser that gives the page less than the copies take.
    await page.addInitScript(
      'navigator.storage.estimate = () => Promise.resolve({ usage: 1e12, quota: 1000 })',
    );
    await page.goto(`/pads/${beside}/photos`);
    await page.getByLabel('Choose photos').waitFor({ state: 'attached' });
    await expect.poll(() => shelved('/swatch?')).toBe(0);
    await expect.poll(() => shelved(`/plans/${plan}/cards`)).toBe(0);
    expect(await shelved(`/plans/${plan}/ticks`)).toBe(1);
    await context.setOffline(true);
    await page.reload();
    await page.getByLabel('Choose photos').waitFor({ state: 'attached' });

    // No room at all: what the service answers is shown all the same.
    await context.setOffline(false);
    const browser = await context.newCDPSession(page);
    const none = { origin: at().address, quotaSize: 1 };
    await browser.send('Storage.overrideQuotaForOrigin', none);
    await page.goto('/');
    await page.getByRole('link', { name: /Tidewrack/ }).click();
    await page.getByRole('heading', { name: 'Tidewrack' }).waitFor();
    await picturesDrawn(page, '.sheet img', 12);
    expect(faults).toEqual([]);
    await context.close();
  });

  it('opens the page without the service after an answer was opened by itself', async () => {
    const { page, context } = await at().open('laptop', { serviceWorkers: 'allow' });
    await page.goto('/');
    await page.evaluate('navigator.serviceWorker.ready');
    await page.reload();
    await page.getByRole('link', { name: /Tidewrack/ }).waitFor();
    await page.goto('/api/colour-names');
    await context.setOffline(true);
    await page.goto('/');
    await page.getByRole('link', { name: /Tidewrack/ }).waitFor();
    await context.close();
  });

  it('says why a pad cannot be saved as a file', async () => {
    const { page, context, faults } = await at().open('tablet');
    await page.route('**/file', (route) =>
      route.fulfill({
        status: 413,
        contentType: 'application/problem+json',
        body: JSON.stringify({
          type: 'about:blank',
          title: 'Too large',
          status: 413,
          detail: 'Expected a pad with at most 5000 plans, to be kept in one file.',
          mend: 'Delete plans or photos that you no longer need.',
        }),
      }),
    );
    await page.goto('/');
    await page.getByRole('button', { name: 'About the pad Tidewrack' }).click();
    await page.getByRole('link', { name: 'Save as one file' }).click();
    const told = page.getByRole('alert');
    await told.getByText('at most 5000 plans').waitFor();
    await told.getByText('Delete plans or photos').waitFor();
    expect(faults).toEqual([]);
    await context.close();
  });
}
