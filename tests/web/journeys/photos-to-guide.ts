import { expect, it } from 'vitest';
import { chooseCards, goTo, picturesDrawn, planCards } from '../hands.ts';
import { samplePair } from '../sample-photos.ts';
import { devices, type Device, type Table } from '../table.ts';

/** The main job on each of her devices: a new pad, two photos, a plan, the guide. */
export function photosToGuide(at: () => Table): void {
  it.each(Object.keys(devices) as Device[])(
    'goes from two photos to the guide on a %s',
    async (device) => {
      const { page, context, faults } = await at().open(device);
      await page.goto('/');
      await page.getByRole('button', { name: 'Start a new pad' }).click();
      await page.getByLabel('Name of the pad').fill(`Reading room ${device}`);
      await page.getByRole('radio', { name: '6 × 6 in' }).check();
      await page.getByRole('button', { name: 'Start with photos' }).click();
      await page.getByRole('heading', { name: 'Photograph the papers' }).waitFor();

      await page.getByLabel('Choose photos').setInputFiles(samplePair);
      await page.getByRole('button', { name: /^Fronts: \d+ sheets? found/ }).waitFor();
      await page.getByRole('button', { name: /^Backs: \d+ sheets? found/ }).waitFor();
      await expect.poll(() => page.locator('.pair-missing').count()).toBe(0);
      const pairs = await page.locator('.pair-button').count();
      expect(pairs).toBeGreaterThanOrEqual(2);

      await page.getByRole('link', { name: 'See the pad' }).click();
      // The last of them stand far below on a phone: they are fetched as she comes near.
      await page.locator('.face img').last().scrollIntoViewIfNeeded();
      await picturesDrawn(page, '.face img', 2 * pairs);
      await expect
        .poll(() => page.locator('.face .bands').first().getAttribute('aria-label'))
        .toMatch(/\d\s%/);

      await chooseCards(page, 2);
      await planCards(page, 2);
      await expect
        .poll(() => page.locator('.planned-card .small').first().textContent())
        .not.toBe('');

      await page.getByRole('link', { name: 'To the cutting guide' }).click();
      await page.getByRole('article', { name: /^Step 1 of/ }).waitFor();
      await page.getByRole('button', { name: 'Done' }).click();
      await page.reload();
      await page.getByText(/^1 of \d+ steps done$/).waitFor();
      const href = await page
        .getByRole('link', { name: /^Print the guide \(Letter\)/ })
        .getAttribute('href');
      const guide = await context.request.get(href ?? '');
      expect(guide.headers()['content-type']).toContain('application/pdf');
      expect((await guide.body()).subarray(0, 5).toString()).toBe('%PDF-');

      await goTo(page, 'Plan');
      await page.locator('.planned-card').nth(1).waitFor();
      await opensElsewhere(at(), new URL(page.url()).pathname);
      expect(faults).toEqual([]);
      await context.close();
    },
  );
}

/** A browser that remembers nothing finds the plan and its guide at the addresses without its id. */
async function opensElsewhere(table: Table, planAddress: string): Promise<void> {
  const { page, context } = await table.open('tablet');
  const [, , pad, , plan] = planAddress.split('/');
  await page.goto(`/pads/${pad}/plan`);
  await page.locator('.planned-card').nth(1).waitFor();
  expect(new URL(page.url()).pathname).toBe(`/pads/${pad}/plan/${plan}`);
  await page.evaluate('localStorage.clear()');
  await page.goto(`/pads/${pad}/guide`);
  // The first step is ticked off already.
  await page.getByRole('article', { name: /^Step 2 of/ }).waitFor();
  expect(new URL(page.url()).pathname).toBe(`/pads/${pad}/guide/${plan}`);
  await context.close();
}
