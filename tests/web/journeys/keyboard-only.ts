import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import type { Table } from '../table.ts';

/** The main journey without a mouse or a finger. */
export function keyboardOnly(at: () => Table): void {
  it('goes from the pad to a ticked step of the guide by keyboard alone', async () => {
    const { page, context, faults } = await at().open('laptop');
    await page.goto('/');
    await page.getByRole('link', { name: /Tidewrack/ }).waitFor();
    await walkTo(page, /Tidewrack/);
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'Tidewrack' }).waitFor();
    await walkTo(page, /^Choose cards/);
    await page.keyboard.press('Enter');
    await page.locator('.layout').first().waitFor();
    await walkTo(page, /^One more/);
    await page.keyboard.press('Enter');
    await page.keyboard.press('Enter');
    await walkTo(page, /^Choose the papers for me/);
    await page.keyboard.press('Enter');
    await page.locator('.planned-card').nth(1).waitFor();

    await walkTo(page, /^Card 1/);
    await page.keyboard.press('Enter');
    await page.getByRole('dialog').waitFor();
    await page.keyboard.press('Escape');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await expect.poll(() => focused(page)).toMatch(/^Card 1/);

    await walkTo(page, /^To the cutting guide/);
    await page.keyboard.press('Enter');
    await page.getByRole('article', { name: /^Step 1 of/ }).waitFor();
    await walkTo(page, /^Done/);
    await page.keyboard.press('Space');
    await page.getByText(/^1 of \d+ steps done$/).waitFor();
    expect(faults).toEqual([]);
    await context.close();
  });
}

/** Presses Tab until the thing of that name has the focus, and sees that the focus shows. */
async function walkTo(page: Page, name: RegExp): Promise<void> {
  for (let steps = 0; steps < 400; steps += 1) {
    await page.keyboard.press('Tab');
    if (name.test(await focused(page))) {
      expect(await page.evaluate('getComputedStyle(document.activeElement).outlineStyle')).toBe(
        'solid',
      );
      return;
    }
  }
  throw new Error(`The Tab key never came to ${String(name)}.`);
}

async function focused(page: Page): Promise<string> {
  const name = await page.evaluate(
    `document.activeElement.getAttribute('aria-label') ?? document.activeElement.innerText ?? ''`,
  );
  return String(name).trim();
}
