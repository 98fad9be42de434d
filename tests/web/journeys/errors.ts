import { readFile } from 'node:fs/promises';
import { expect, it } from 'vitest';
import { goTo, openDemoPad, startPad } from '../hands.ts';
import { samplePair } from '../sample-photos.ts';
import type { Table } from '../table.ts';

/** What goes wrong is said beside the thing, in plain words, and the rest of the page stays. */
export function errors(at: () => Table): void {
  it('says beside a file what is wrong with it and what to do', async () => {
    const { page, context, faults } = await at().open('laptop');
    await startPad(page, 'Not photos');
    await page.getByLabel('Choose photos').setInputFiles({
      name: 'letter.jpg',
      mimeType: 'image/jpeg',
      buffer: Buffer.from('Dear reading room, thank you.'),
    });
    const beside = page.getByRole('list', { name: 'Not taken in' }).getByRole('alert');
    await beside.waitFor();
    // A detail and a mend, both sentences.
    await expect.poll(() => beside.locator('p').count()).toBeGreaterThanOrEqual(2);
    // It holds no place: the next photo lies where it would have lain.
    await expect.poll(() => page.locator('.tableful').count()).toBe(0);
    await page.getByLabel('Choose photos').setInputFiles({
      name: 'note.jpg',
      mimeType: 'image/jpeg',
      buffer: await readFile(samplePair[0]!),
    });
    await page.getByRole('button', { name: /^Fronts: \d+ sheets? found/ }).waitFor();
    await expect.poll(() => page.locator('.tableful').count()).toBe(1);
    await page.getByRole('button', { name: 'Take away letter.jpg' }).click();
    await beside.waitFor({ state: 'detached' });
    expect(faults).toEqual([]);
    await context.close();
  });

  it('plans no more cards than the pad has sheets for', async () => {
    const { page, context, faults } = await at().open('phone');
    await openDemoPad(page);
    await goTo(page, 'Cards');
    const plan = page.getByRole('button', { name: 'Choose the papers for me' });
    const many = page.getByLabel(/^How many/).last();
    await many.fill('60');
    await many.press('Enter');
    await page.getByText(/^These cards need at least \d+ sheets; your pad has \d+\.$/).waitFor();
    await expect.poll(() => plan.isDisabled()).toBe(true);
    await many.fill('1');
    await many.press('Enter');
    await page.getByText(/^about 1 sheet or more of \d+$/).waitFor();
    await expect.poll(() => plan.isEnabled()).toBe(true);
    expect(faults).toEqual([]);
    await context.close();
  });

  it('takes a refusal away once other cards are asked for, and says no other count of sheets beside it', async () => {
    const { page, context, faults } = await at().open('tablet');
    await openDemoPad(page);
    await goTo(page, 'Cards');
    const refused = 'These cards take 14 sheets, and 12 are there: 2 sheets are missing.';
    await page.route(/\/api\/plans(\?|$)/, (route) =>
      route.request().method() === 'POST'
        ? route.fulfill({
            status: 422,
            contentType: 'application/problem+json',
            body: JSON.stringify({
              type: 'about:blank',
              title: 'It does not fit',
              status: 422,
              detail: refused,
              mend: 'Make fewer cards.',
            }),
          })
        : route.continue(),
    );
    const bar = page.locator('.bar');
    const many = page.getByLabel(/^How many/).first();
    for (const [count, other] of [
      ['3', '2'],
      ['3', '4'],
    ]) {
      await many.fill(count!);
      await many.press('Enter');
      await bar.getByText(/^about \d+ sheets? or more/).waitFor();
      await page.getByRole('button', { name: 'Choose the papers for me' }).click();
      await bar.getByText(refused).waitFor();
      await expect.poll(() => bar.getByText(/^about \d+ sheets? or more/).count()).toBe(0);
      const [notice, line] = [bar.locator('.mishap'), bar.locator('.bar-line')];
      await expect
        .poll(async () => {
          const [above, below] = [(await notice.boundingBox())!, (await line.boundingBox())!];
          return below.y - (above.y + above.height);
        })
        .toBeGreaterThanOrEqual(8);
      await many.fill(other!);
      await many.press('Enter');
      await expect.poll(() => bar.getByText(refused).count()).toBe(0);
      await bar.getByText(/^about \d+ sheets? or more/).waitFor();
    }
    expect(faults).toEqual([]);
    await context.close();
  });

  it('asks again for a picture that did not come, so that no place stays blank', async () => {
    const { page, context, faults } = await at().open('laptop');
    let lost = 0;
    await page.route(/\/swatch\?/, (route) => {
      lost += 1;
      return lost <= 6 ? route.abort() : route.continue();
    });
    await openDemoPad(page);
    const width = (): Promise<number> =>
      page.evaluate<number>(`document.querySelector('.face img').naturalWidth`);
    await expect.poll(width).toBeGreaterThan(0);
    expect(lost).toBeGreaterThan(6);
    expect(faults).toEqual([]);
    await context.close();
  });

  it('keeps the ruler and offers another try when one list does not come', async () => {
    const { page, context, faults } = await at().open('laptop');
    await openDemoPad(page);
    await page.route('**/api/layouts', (route) =>
      route.fulfill({ status: 500, contentType: 'text/html', body: '<h1>no</h1>' }),
    );
    await page.getByRole('navigation').getByRole('link', { name: 'Cards' }).click();
    await page.getByRole('alert').waitFor();
    await expect.poll(() => page.getByRole('navigation').isVisible()).toBe(true);
    await page.unroute('**/api/layouts');
    await page.getByRole('button', { name: 'Try again' }).click();
    await page.locator('.layout').first().waitFor();
    expect(faults).toEqual([]);
    await context.close();
  });

  it('keeps the page when a screen cannot be drawn from a broken answer', async () => {
    const { page, context } = await at().open('laptop');
    await openDemoPad(page);
    await page.route('**/api/layouts', (route) => route.fulfill({ json: [{ id: 'broken' }] }));
    await page.getByRole('navigation').getByRole('link', { name: 'Cards' }).click();
    await page.getByText('This part of the page could not be drawn.').waitFor();
    await page.getByRole('navigation').getByRole('link', { name: 'Pad' }).click();
    await page.getByRole('heading', { name: 'Tidewrack' }).waitFor();
    await context.close();
  });
}
