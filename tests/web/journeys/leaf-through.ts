import { expect, it } from 'vitest';
import { goTo, openDemoPad } from '../hands.ts';
import type { Table } from '../table.ts';

/** Leafing through the layouts by how many papers one card takes. */
export function leafThrough(at: () => Table): void {
  it('shows the layouts of so many papers, keeps what is chosen, and shows all again', async () => {
    const { page, context, faults } = await at().open('phone');
    await openDemoPad(page);
    await goTo(page, 'Cards');
    const layouts = page.locator('.layout');
    const papers = page.getByRole('group', { name: 'Papers on one card' });
    await layouts.first().waitFor();
    const all = await layouts.count();
    await papers.getByRole('radio', { name: '4', exact: true }).check();
    await expect.poll(() => layouts.count()).toBeLessThan(all);
    const said = await layouts.locator('.layout-words .small').allTextContents();
    expect([...new Set(said)]).toEqual(['4 papers']);

    const name = await layouts.first().getAttribute('aria-label');
    await layouts
      .first()
      .getByRole('button', { name: `One more: ${name}` })
      .last()
      .click();
    await papers.getByRole('radio', { name: '2', exact: true }).check();
    await expect
      .poll(() => page.getByRole('article', { name: name!, exact: true }).count())
      .toBe(0);
    const status = page.locator('.bar').getByRole('status');
    await expect.poll(() => status.textContent()).toMatch(/^1 card/);
    await papers.getByRole('radio', { name: 'any' }).check();
    await expect.poll(() => layouts.count()).toBe(all);
    await expect.poll(() => page.getByLabel(`How many: ${name}`).inputValue()).toBe('1');
    expect(faults).toEqual([]);
    await context.close();
  });
}
