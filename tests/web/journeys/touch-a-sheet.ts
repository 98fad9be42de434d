import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { goTo, openDemoPad, picturesDrawn } from '../hands.ts';
import type { Table } from '../table.ts';

/** Whose corners are put right is said by a touch on the photo itself. */
export function touchASheet(at: () => Table): void {
  it('takes the corners of the sheet that is touched, and those of the white card', async () => {
    const { page, context, faults } = await at().open('tablet');
    await openDemoPad(page);
    await goTo(page, 'Photos');
    await page.locator('.laid').first().click();
    await page.getByRole('dialog').waitFor();
    await picturesDrawn(page, '.corner-field img', 1);
    const outlines = page.locator('.corner-field polygon.outline:not(.under):not(.white)');
    for (const place of [4, 1]) {
      await touchMiddle(page, (await outlines.nth(place).getAttribute('points'))!);
      const choice = page.getByRole('list', { name: 'Sheets on this photo' });
      await expect
        .poll(() => choice.getByRole('button').nth(place).getAttribute('aria-pressed'))
        .toBe('true');
    }
    const white = page.locator('.corner-field polygon.outline.white').first();
    await touchMiddle(page, (await white.getAttribute('points'))!);
    await page.getByRole('dialog', { name: 'White card' }).waitFor();
    expect(faults).toEqual([]);
    await context.close();
  });

  it('shows every paper of the pad once among the families, and opens the one that is touched', async () => {
    const { page, context, faults } = await at().open('phone');
    await openDemoPad(page);
    const families = page.getByRole('region', { name: /^Families/ });
    const papers = families.getByRole('button');
    // Twelve sheets with two sides each.
    await expect.poll(() => papers.count()).toBe(24);
    const names = await papers.evaluateAll((all) =>
      all.map((one) => one.querySelector('img')!.alt),
    );
    expect(new Set(names).size).toBe(24);
    await papers.nth(5).click();
    await page.getByRole('dialog', { name: names[5]! }).waitFor();
    expect(faults).toEqual([]);
    await context.close();
  });

  it('calls a sheet otherwise by a touch on its name', async () => {
    const { page, context, faults } = await at().open('tablet');
    await openDemoPad(page);
    const first = page.locator('.sheet').first();
    const name = (await first.locator('.sheet-name strong').textContent())!;
    const renamed = async (from: string, to: string): Promise<void> => {
      await page.getByRole('button', { name: `${from}: change its name or count` }).click();
      const field = page.getByRole('dialog', { name: from }).getByLabel('Its name');
      await field.fill(to);
      await field.press('Tab');
      await page.getByRole('dialog', { name: to }).waitFor();
      await page.getByRole('button', { name: 'Close', exact: true }).click();
      await expect.poll(() => first.locator('.sheet-name strong').textContent()).toBe(to);
    };
    await renamed(name, 'Waves by the door');
    await renamed('Waves by the door', name);
    expect(faults).toEqual([]);
    await context.close();
  });
}

/** Touches the photo in the middle of four corners, which are in pixels of the photo. */
async function touchMiddle(page: Page, points: string): Promise<void> {
  const corners = points.split(' ').map((corner) => corner.split(',').map(Number));
  const mean = (axis: 0 | 1): number => corners.reduce((sum, one) => sum + one[axis]! / 4, 0);
  const field = page.locator('.corner-handles');
  const box = (await field.boundingBox())!;
  const view = (await page.locator('.corner-field svg').first().getAttribute('viewBox'))!;
  const [, , width, height] = view.split(' ').map(Number) as [number, number, number, number];
  await field.click({
    position: { x: (mean(0) / width) * box.width, y: (mean(1) / height) * box.height },
  });
}
