import { expect, it } from 'vitest';
import { chooseCards, goTo, openDemoPad, picturesDrawn, plannedDemo } from '../hands.ts';
import { samplePair } from '../sample-photos.ts';
import type { Table } from '../table.ts';

/** Reload, a lost connection, a second tab: what she did stays. */
export function nothingLost(at: () => Table): void {
  it('opens pad and plan again after a reload without the service', async () => {
    const { page, context } = await at().open('laptop', { serviceWorkers: 'allow' });
    await plannedDemo(page, 2);
    await page.evaluate('navigator.serviceWorker.ready');
    await page.reload();
    await picturesDrawn(page, '.planned-card img', 2);
    await context.setOffline(true);
    await page.reload();
    await picturesDrawn(page, '.planned-card img', 2);
    await goTo(page, 'Pad');
    await page.getByRole('heading', { name: 'Tidewrack' }).waitFor();
    await context.close();
  });

  it('takes a press that lasts while the papers under it are still coming', async () => {
    const { page, context } = await at().open('tablet');
    let letCome = (): void => undefined;
    const held = new Promise<void>((resolve) => (letCome = resolve));
    await page.route(/\/api\/pads\/[^/]+$/, async (route) => {
      await held;
      await route.continue();
    });
    await page.goto('/');
    const fan = await page
      .getByRole('link', { name: /Tidewrack/ })
      .locator('.pad-blank')
      .first()
      .boundingBox();
    await page.mouse.move(fan!.x + fan!.width / 2, fan!.y + fan!.height / 2);
    await page.mouse.down();
    letCome();
    await picturesDrawn(page, '.pad-stack img', 1);
    await page.mouse.up();
    await page.getByRole('heading', { name: 'Tidewrack' }).waitFor();
    await context.close();
  });

  it('shows in a second tab at once what is chosen in the first', async () => {
    const { page, context } = await at().open('laptop');
    await openDemoPad(page);
    await goTo(page, 'Cards');
    const second = await context.newPage();
    await second.goto(page.url());
    await second.locator('.layout').first().waitFor();
    await chooseCards(page, 3);
    await second.getByText('3 cards', { exact: true }).waitFor();
    await second
      .locator('.layout')
      .first()
      .getByRole('button', { name: /^One more/ })
      .last()
      .click();
    await page.getByText('4 cards', { exact: true }).waitFor();
    await context.close();
  });

  it('sends photos after a reload that a lost connection held back', async () => {
    const { page, context } = await at().open('phone');
    await page.goto('/');
    await page.getByRole('button', { name: 'Start a new pad' }).click();
    await page.getByLabel('Name of the pad').fill('Held back');
    await page.getByRole('button', { name: 'Start with photos' }).click();
    await page.route('**/photos', (route) => route.abort());
    await page.getByLabel('Choose photos').setInputFiles(samplePair[0]!);
    await page.getByText('The service does not answer.').waitFor();
    await page.unroute('**/photos');
    await page.reload();
    await page
      .getByRole('button', { name: /^Fronts: \d+ sheets? found/ })
      .waitFor({ timeout: 90_000 });
    await expect.poll(() => page.locator('.sending').count()).toBe(0);
    await context.close();
  });

  it('saves a pad as one file, and brings it back after it was deleted', async () => {
    const { page, context, faults } = await at().open('tablet');
    const data = { name: 'Carried over', sheetSize: { width: '6 in', height: '6 in' } };
    await page.request.post('/api/pads', { data });
    await page.goto('/');
    const stack = page.getByRole('link', { name: /Carried over/ });
    const about = page.getByRole('button', { name: 'About the pad Carried over' });
    await about.click();
    const [saved] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('link', { name: 'Save as one file' }).click(),
    ]);
    expect(saved.suggestedFilename()).toBe('Carried-over.tar');
    const file = await saved.path();
    await page.getByRole('button', { name: 'Close' }).click();

    const bring = page.getByLabel('Bring a pad from a file');
    await bring.setInputFiles(file);
    await page
      .getByRole('alert')
      .getByText(/already here/)
      .waitFor();
    await page.getByRole('button', { name: 'Take this notice away' }).click();
    await about.click();
    await page.getByRole('button', { name: 'Delete this pad' }).click();
    await page.getByRole('button', { name: /^Yes, delete it/ }).click();
    await stack.waitFor({ state: 'detached' });
    await bring.setInputFiles(file);
    await stack.waitFor();
    await expect.poll(() => page.getByRole('alert').count()).toBe(0);
    expect(faults).toEqual([]);
    await context.close();
  });
}
