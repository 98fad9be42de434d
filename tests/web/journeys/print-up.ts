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
    await pressed.waitFor();
    const before = await pressed.getAttribute('aria-label');
    await group.getByRole('button', { name: 'Upright a quarter turn to the right' }).click();
    await expect
      .poll(() => pressed.getAttribute('aria-label'))
      .toBe('Upright a quarter turn to the right');
    await page.getByText(/has an up/).waitFor();
    await page.reload();
    await open();
    await expect
      .poll(() => pressed.getAttribute('aria-label'))
      .toBe('Upright a quarter turn to the right');
    // As it was, for what is tried after this on the same pad.
    await group.getByRole('button', { name: before ?? 'any way up', exact: true }).click();
    await expect.poll(() => pressed.getAttribute('aria-label')).toBe(before);
    expect(faults).toEqual([]);
    await context.close();
  });
}
