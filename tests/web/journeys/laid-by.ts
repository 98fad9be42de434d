import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { goTo, openDemoPad, picturesDrawn, plannedDemo } from '../hands.ts';
import { samplePair } from '../sample-photos.ts';
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
    await noRoom(page, at().address);
    await page.goto('/');
    await page.getByRole('link', { name: /Tidewrack/ }).click();
    await page.getByRole('heading', { name: 'Tidewrack' }).waitFor();
    await picturesDrawn(page, '.sheet img', 12);
    expect(faults).toEqual([]);
    await context.close();
  });

  it('fills its shelf again after the browser has cleared it', async () => {
    const { page, context, faults } = await at().open('tablet', { serviceWorkers: 'allow' });
    await openDemoPad(page);
    await page.evaluate('navigator.serviceWorker.ready');
    await page.reload();
    await goTo(page, 'Photos');
    await page.getByRole('heading', { name: 'Photograph the papers' }).waitFor();
    await goTo(page, 'Pad');
    await page.getByRole('heading', { name: 'Tidewrack' }).waitFor();
    expect(await page.evaluate<boolean>(`caches.delete('plyhue-shelf')`)).toBe(true);
    await context.setOffline(true);
    // What has been open stays.
    await goTo(page, 'Photos');
    await page.getByRole('heading', { name: 'Photograph the papers' }).waitFor();
    await goTo(page, 'Pad');
    await page.getByRole('heading', { name: 'Tidewrack' }).waitFor();
    await context.setOffline(false);
    await page.reload();
    await page.getByRole('heading', { name: 'Tidewrack' }).waitFor();
    const shelved = `(async () => {
      const pad = '/api/pads/' + location.pathname.split('/')[2];
      const files = performance.getEntriesByType('resource')
        .map(({ name }) => name).filter((name) => /assets.*[.](js|css|woff2)$/.test(name));
      const wanted = ['/', pad, ...files];
      return (await Promise.all(wanted.map((one) => caches.match(one)))).every(Boolean);
    })()`;
    await expect.poll(() => page.evaluate<boolean>(shelved)).toBe(true);
    await context.setOffline(true);
    await page.reload();
    await page.getByRole('heading', { name: 'Tidewrack' }).waitFor();
    expect(faults.filter((fault) => !fault.includes('INTERNET_DISCONNECTED'))).toEqual([]);
    await context.close();
  });

  it('loses no tick where the service is away and the browser gives no room', async () => {
    const { page, context, faults } = await at().open('phone', { serviceWorkers: 'allow' });
    await plannedDemo(page, 1);
    await page.getByRole('link', { name: 'To the cutting guide' }).click();
    await page.getByRole('heading', { name: 'Number your sheets' }).waitFor();
    const plan = page.url().split('/').at(-1)!;
    await noRoom(page, at().address);
    await context.setOffline(true);
    await page.getByRole('button', { name: 'Done', exact: true }).click();
    await page.getByText(/^1 of \d+ steps done$/).waitFor();
    await context.setOffline(false);
    await expect
      .poll(async () => (await page.request.get(`/api/plans/${plan}/ticks`)).text())
      .toBe('{"ticks":["number"]}');
    await page.getByText(/^1 of \d+ steps done$/).waitFor();
    expect(faults.filter((fault) => !fault.includes('INTERNET_DISCONNECTED'))).toEqual([]);
    await context.close();
  });

  it('sends a photo later that came while the service was away and the browser gave no room', async () => {
    const { page, context, faults } = await at().open('phone', { serviceWorkers: 'allow' });
    const data = { name: 'No room', sheetSize: { width: '6 in', height: '6 in' } };
    const made = await page.request.post('/api/pads', { data });
    const { id } = (await made.json()) as { id: string };
    await page.goto(`/pads/${id}/photos`);
    await page.getByLabel('Choose photos').waitFor({ state: 'attached' });
    await page.evaluate('navigator.serviceWorker.ready');
    await noRoom(page, at().address);
    await context.setOffline(true);
    await page.getByLabel('Choose photos').setInputFiles(samplePair[0]!);
    await page.locator('.sending .mishap').getByText('The service does not answer.').waitFor();
    await context.setOffline(false);
    await page.getByRole('button', { name: /^Fronts: \d+ sheets? found/ }).waitFor();
    await expect.poll(() => page.locator('.sending').count()).toBe(0);
    const { photos } = (await (await page.request.get(`/api/pads/${id}`)).json()) as {
      photos: unknown[];
    };
    expect(photos).toHaveLength(1);
    expect(faults.filter((fault) => !fault.includes('INTERNET_DISCONNECTED'))).toEqual([]);
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

/** Leaves the page no room on this device for anything that it has not kept yet. */
async function noRoom(page: Page, origin: string): Promise<void> {
  const browser = await page.context().newCDPSession(page);
  await browser.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 1 });
}
