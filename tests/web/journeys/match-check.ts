import { expect, it } from 'vitest';
import { openDemoPad } from '../hands.ts';
import type { Table } from '../table.ts';

/** One ink against the papers, with a phone in the hand. */
export function matchCheck(at: () => Table): void {
  it('types an ink colour and says in words how it matches a paper', async () => {
    const { page, context, faults } = await at().open('phone');
    await openDemoPad(page);
    await page.getByRole('link', { name: 'Supplies' }).click();
    await page.getByRole('button', { name: 'Add cardstock or ink' }).click();
    await page.getByRole('radio', { name: 'ink' }).check();
    await page.getByRole('radio', { name: 'I type it' }).check();
    await page.getByLabel('The colour').fill('#ff00ff');
    await page.getByLabel('Name', { exact: true }).fill('Loud ink');
    await page.getByRole('button', { name: 'Add it' }).click();
    await page.getByRole('article', { name: 'Loud ink' }).waitFor();

    await page.getByRole('list', { name: 'Papers' }).getByRole('button').first().click();
    const line = page.locator('.match-line').filter({ hasText: 'Loud ink' });
    await line.waitFor();
    // Magenta at the edge of sRGB is far from every colour of a sea-worn pad.
    expect(await line.locator('.mark').textContent()).toContain('apart');
    const figures = line.getByText(/Difference \d+\.\d, give or take \d/);
    expect(await figures.isVisible()).toBe(false);
    await line.getByText('In figures').click();
    await figures.waitFor();
    expect(await page.locator('.match-board .caution').textContent()).toContain(
      'not a measurement',
    );

    await page.getByLabel('Name of Loud ink').fill('Louder ink');
    await page.getByLabel('Name of Loud ink').press('Enter');
    await page.getByRole('article', { name: 'Louder ink' }).waitFor();
    await page.reload();
    await page.getByRole('article', { name: 'Louder ink' }).waitFor();
    expect(faults).toEqual([]);
    await context.close();
  });
}
