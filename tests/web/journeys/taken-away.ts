import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import type { Pad } from '../../../server/contract/pads.ts';
import { goTo, startPad } from '../hands.ts';
import { samplePair } from '../sample-photos.ts';
import type { Table } from '../table.ts';

/** What she takes away before it is in stays away; what is gone is not asked for again. */
export function takenAway(at: () => Table): void {
  it.each([
    ['told', ''],
    ['not told', 'this.upload.onprogress = null;'],
  ])('takes a photo away whose answer was lost, its progress %s', async (_, told) => {
    const { page, context, faults } = await at().open('tablet');
    // The first photo goes as it goes and only its answer is lost; later ones do not get out.
    await page.addInitScript(`{
      const { send } = XMLHttpRequest.prototype;
      let tries = 0;
      window.losing = true;
      XMLHttpRequest.prototype.send = function (body) {
        tries += 1;
        if (window.losing && tries > 1) return void setTimeout(() => this.onerror());
        if (window.losing) this.onload = () => this.onerror();
        ${told}
        send.call(this, body);
      };
    }`);
    await startPad(page, 'Answer lost');
    await page.getByLabel('Choose photos').setInputFiles(samplePair[0]!);
    await page.locator('.sending.refused').waitFor();
    await expect.poll(() => photosOf(page)).toBe(1);
    await page.getByRole('button', { name: /^Take away / }).click();
    await page.locator('.sending').waitFor({ state: 'detached' });
    expect(await photosOf(page)).toBe(1);
    await page.evaluate('window.losing = false');
    await expect.poll(() => photosOf(page)).toBe(0);
    await expect.poll(() => keptOn(page)).toBe(0);
    expect(faults).toEqual([]);
    await context.close();
  });

  it('takes a photo away at the service though the page was closed before the answer', async () => {
    const { page, context, faults } = await at().open('tablet');
    await page.addInitScript(`{
      const { send } = XMLHttpRequest.prototype;
      const holds = sessionStorage.getItem('held') === null;
      sessionStorage.setItem('held', 'once');
      XMLHttpRequest.prototype.send = function (body) {
        if (holds) this.onload = null;
        send.call(this, body);
      };
    }`);
    await startPad(page, 'Closed before');
    await page.getByLabel('Choose photos').setInputFiles(samplePair[0]!);
    await page.locator('.sending.reading').waitFor();
    await expect.poll(() => photosOf(page)).toBe(1);
    await page.getByRole('button', { name: /^Take away / }).click();
    await page.locator('.sending').waitFor({ state: 'detached' });
    await expect.poll(() => keptOn(page, true)).toBe(1);
    await page.reload();
    await expect.poll(() => photosOf(page)).toBe(0);
    await expect.poll(() => keptOn(page)).toBe(0);
    await expect.poll(() => page.locator('.tableful').count()).toBe(0);
    // And its place is free: the same photo there again is a new one.
    await page.getByLabel('Choose photos').setInputFiles(samplePair[0]!);
    await expect.poll(() => photosOf(page)).toBe(1);
    await expect.poll(() => page.locator('.sending').count()).toBe(0);
    expect(await photosOf(page)).toBe(1);
    expect(faults).toEqual([]);
    await context.close();
  });

  it('lets no photo come back that is taken away as soon as a reload shows it', async () => {
    const { page, context, faults } = await at().open('phone');
    await startPad(page, 'Taken up');
    await page.route('**/api/pads/*/photos', (route) => route.abort());
    const buffer = await readFile(samplePair[0]!);
    const files = [1, 2, 3, 4, 5, 6].map((n) => {
      const name = `photo-${n}.jpg`;
      return { name, mimeType: 'image/jpeg', buffer: Buffer.concat([buffer, Buffer.from(name)]) };
    });
    await page.getByLabel('Choose photos').setInputFiles(files);
    await expect.poll(() => keptOn(page)).toBe(6);
    await page.addInitScript(`{
      const look = new MutationObserver(() => {
        const away = document.querySelector('[aria-label="Take away photo-6.jpg"]');
        if (away === null) return;
        window.pressed = true;
        look.disconnect();
        away.click();
      });
      if (sessionStorage.getItem('reloaded') === null)
        look.observe(document, { childList: true, subtree: true });
      sessionStorage.setItem('reloaded', 'once');
    }`);
    await page.reload();
    await expect.poll(() => page.evaluate('window.pressed')).toBe(true);
    await expect.poll(() => keptOn(page)).toBe(5);
    await page.reload();
    await expect.poll(() => page.locator('.sending').count()).toBe(5);
    await page.getByRole('button', { name: 'Take away photo-5.jpg' }).waitFor();
    await expect.poll(() => keptOn(page)).toBe(5);
    await expect
      .poll(() => page.getByRole('button', { name: 'Take away photo-6.jpg' }).count())
      .toBe(0);
    expect(faults).toEqual([]);
    await context.close();
  });

  it('asks again for nothing that it only wrote to before the offline worker was at work', async () => {
    const { page, context, faults } = await at().open('laptop', { serviceWorkers: 'allow' });
    const data = { name: 'To be deleted', sheetSize: { width: '6 in', height: '6 in' } };
    const made = await page.request.post('/api/pads', { data });
    const { id } = (await made.json()) as { id: string };
    await page.addInitScript(`{
      const { register } = ServiceWorkerContainer.prototype;
      const held = new Promise((resolve) => (window.letWork = resolve));
      ServiceWorkerContainer.prototype.register = function (...how) {
        return held.then(() => register.apply(this, how));
      };
    }`);
    await page.goto('/');
    await page.getByRole('button', { name: 'About the pad To be deleted' }).click();
    await page.getByRole('button', { name: 'Delete this pad' }).click();
    await page.getByRole('button', { name: /^Yes, delete it/ }).click();
    await page.getByRole('link', { name: /To be deleted/ }).waitFor({ state: 'detached' });
    await page.getByRole('link', { name: /Tidewrack/ }).click();
    await page.getByRole('heading', { name: 'Tidewrack' }).waitFor();
    const checked = page.waitForResponse(/\/api\/layouts\/check$/);
    await goTo(page, 'Cards');
    await page.getByRole('button', { name: 'Draw a card of my own' }).click();
    await checked;

    const again: string[] = [];
    const failed: string[] = [];
    context.on('request', (one) => again.push(`${one.method()} ${new URL(one.url()).pathname}`));
    context.on('response', (one) => {
      if (one.status() >= 400) failed.push(`${one.status()} ${one.url()}`);
    });
    await page.evaluate('window.letWork()');
    const kept = (address: string): Promise<boolean> =>
      page.evaluate<boolean>(`caches.match('${address}').then(Boolean)`);
    // The last that was asked for before is there, so that all before it was asked again.
    await expect.poll(() => kept('/api/layouts')).toBe(true);
    expect(again).toContain('GET /api/layouts');
    expect(again).not.toContain('GET /api/layouts/check');
    expect(again).not.toContain(`GET /api/pads/${id}`);
    expect(failed).toEqual([]);
    expect(faults).toEqual([]);
    await context.close();
  });
}

async function photosOf(page: Page): Promise<number> {
  const pad = new URL(page.url()).pathname.split('/')[2]!;
  const answer = await page.request.get(`/api/pads/${pad}`);
  return ((await answer.json()) as Pad).photos.length;
}

/** How many photos this device keeps; of the unwanted alone where it is asked of them. */
function keptOn(page: Page, unwanted = false): Promise<number> {
  return page.evaluate<number>(`new Promise((resolve, reject) => {
    const request = indexedDB.open('plyhue', 1);
    request.onerror = () => reject(request.error);
    request.onsuccess = () => {
      const all = request.result.transaction('photos').objectStore('photos').getAll();
      all.onsuccess = () => {
        request.result.close();
        resolve(all.result.filter((one) => !${unwanted} || one.unwanted).length);
      };
    };
  })`);
}
