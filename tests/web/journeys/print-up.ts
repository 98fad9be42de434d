import { expect, it } from 'vitest';
import { openDemoPad } from '../hands.ts';
import type { Table } from '../table.ts';

/** A print whose up was misread is turned by hand. */
export function printUp(at: () => Table): void {
  it('is turned by a touch of the paper as it stands, and stays so', async () => {
    const { page, context, faults } = await at().open('phone');
    await openDemoPad(page);
    const open = (): Promise<void> => page.locator('.face').first().click();
    await open();
    const group = page.getByRole('group', { name: 'Which of these stands upright?' });
    const pressed = group.locator('[aria-pressed="true"]');
    const turns = group.getByRole('button');
    await expect.poll(() => turns.count()).toBe(5);
    // The touched turn is marked at once, before the service has it.
    const saved = (): Promise<void> =>
      expect.poll(() => group.locator('button:disabled').count()).toBe(0);
    const order = (): Promise<(string | null)[]> =>
      page.evaluate<(string | null)[]>(
        `[...document.querySelectorAll('.up-turns button')].map(
          (one) => one.getAttribute('aria-label') ?? one.textContent,
        )`,
      );
    const placed = await order();
    // None is marked where a print fits upside down as well: two of them are right.
    const before = (await pressed.count()) > 0 ? await pressed.getAttribute('aria-label') : null;
    await group.getByRole('button', { name: 'Upright a quarter turn to the right' }).click();
    await expect
      .poll(() => pressed.getAttribute('aria-label'))
      .toBe('Upright a quarter turn to the right');
    await saved();
    await page.getByText(/has an up/).waitFor();
    expect(await order()).toEqual(placed);
    await page.reload();
    await open();
    await expect
      .poll(() => pressed.getAttribute('aria-label'))
      .toBe('Upright a quarter turn to the right');
    // As it was, for what is tried after this on the same pad.
    await group.getByRole('button', { name: before ?? 'any way up', exact: true }).click();
    await saved();
    // None is pressed where a print fits upside down as well, and 'any way up' has no other name than its words.
    if (before !== null) await expect.poll(() => pressed.getAttribute('aria-label')).toBe(before);
    expect(await order()).toEqual(placed);
    expect(faults).toEqual([]);
    await context.close();
  });

  it('marks no turn of a print that fits upside down as well', async () => {
    const { page, context, faults } = await at().open('tablet');
    await page.route(/\/api\/pads\/[^/?]+$/, async (route) => {
      const answer = await route.fetch();
      const pad = (await answer.json()) as { sheets: { front: { pattern: object } }[] };
      Object.assign(pad.sheets[0]!.front.pattern, { direction: 'two-way', up: 0, told: false });
      await route.fulfill({ response: answer, json: pad });
    });
    await openDemoPad(page);
    await page.locator('.face').first().click();
    const group = page.getByRole('group', { name: 'Which of these stands upright?' });
    await page.getByText(/fits upside down as well/).waitFor();
    await expect.poll(() => group.getByRole('button').count()).toBe(5);
    await expect.poll(() => group.locator('[aria-pressed="true"]').count()).toBe(0);
    expect(faults).toEqual([]);
    await context.close();
  });
}
