import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { plannedDemo } from '../hands.ts';
import type { Table } from '../table.ts';

/** Swapping a paper by tap, keeping it, and walking back and on through the plans. */
export function pinThenUndo(at: () => Table): void {
  it('swaps a paper, keeps it through another wish, and undoes and redoes it', async () => {
    const { page, context, faults } = await at().open('tablet');
    await plannedDemo(page, 3);
    const first = page.url();
    await page.locator('.planned-card').first().click();
    const before = await topPaper(page);
    await page
      .locator('.layer-stuff')
      .filter({ has: page.locator('img') })
      .first()
      .click();
    const other = page.locator('.alternatives .swatch-button').nth(1);
    const wanted = (await other.locator('strong').textContent()) ?? '';
    expect(wanted).not.toBe(before);
    await other.click();
    await page.waitForURL((url) => url.href !== first);
    await expect.poll(() => topPaper(page)).toBe(wanted);
    await expect
      .poll(() => page.getByRole('dialog').locator('[aria-pressed=true]').count())
      .toBe(1);

    await page.getByRole('button', { name: 'Close' }).click();
    const second = page.url();
    await expect.poll(() => page.locator('.planned-card').first().textContent()).toContain('kept');
    await page.getByRole('slider', { name: /calm to busy/ }).press('ArrowRight');
    await page.waitForURL((url) => url.href !== second);
    await page.locator('.planned-card').first().click();
    await expect.poll(() => topPaper(page)).toBe(wanted);

    await page.getByRole('dialog').getByRole('button', { name: 'Undo' }).click();
    await page.waitForURL(second);
    await page.keyboard.press('Control+z');
    await page.waitForURL(first);
    await expect.poll(() => topPaper(page)).toBe(before);
    await page.keyboard.press('Control+y');
    await page.waitForURL(second);
    await expect.poll(() => topPaper(page)).toBe(wanted);

    await page.reload();
    await page.locator('.planned-card').first().click();
    await expect.poll(() => topPaper(page)).toBe(wanted);
    expect(faults).toEqual([]);
    await context.close();
  });
}

/** The name of the uppermost patterned paper of the open card. */
async function topPaper(page: Page): Promise<string> {
  const line = page
    .locator('.layer-stuff')
    .filter({ has: page.locator('img') })
    .first();
  return (await line.locator('strong + span').textContent()) ?? '';
}
