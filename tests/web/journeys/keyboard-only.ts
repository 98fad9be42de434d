import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { goTo, openDemoPad } from '../hands.ts';
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

  it('matches a cardstock by keyboard alone, and Escape takes the ring away', async () => {
    const { page, context, faults } = await at().open('laptop');
    await page.goto('/supplies');
    await page.getByRole('list', { name: 'Papers' }).getByRole('button').first().waitFor();
    await walkTo(page, /^Sheet 1, front$/);
    await page.keyboard.press('Enter');
    const row = page.getByRole('list', { name: /^The colours of this paper/ });
    const second = row.locator('.palette-pick').nth(1);
    await second.waitFor();
    const colour = (await second.textContent())!.trim();
    await walkTo(page, new RegExp(`^${colour}$`));
    await page.keyboard.press('Space');
    await page.getByRole('heading', { name: `Yours beside its ${colour}` }).waitFor();
    // The focus stays where it was, though all that stands beside it has changed.
    expect(await focused(page)).toBe(colour);
    await walkTo(page, /\n(?:matches|close|apart|cannot tell)$/);
    await page.keyboard.press('Enter');
    await expect.poll(() => page.locator('.big-match').textContent()).toContain(`’s ${colour}`);
    await page.keyboard.press('Escape');
    await page.getByRole('heading', { name: /^Yours beside/ }).waitFor({ state: 'detached' });
    await expect.poll(() => row.locator('.palette-pick[aria-pressed="true"]').count()).toBe(0);
    expect(faults).toEqual([]);
    await context.close();
  });

  it('stamps a card of her own by keyboard alone, and Escape asks before it is lost', async () => {
    const { page, context, faults } = await at().open('laptop');
    await openDemoPad(page);
    await goTo(page, 'Cards');
    await page.locator('.layout').first().waitFor();
    await walkTo(page, /^Make it mine/);
    await page.keyboard.press('Enter');
    const editor = page.getByRole('dialog', { name: 'A card of your own' });
    await editor
      .getByText(/^Meets /)
      .first()
      .waitFor();
    await walkTo(page, /^Stamp$/);
    await page.keyboard.press('Enter');
    await editor.getByRole('group', { name: 'Stamp 1' }).waitFor();
    expect(await focused(page)).toBe('Stamp');
    await page.keyboard.press('Escape');
    await editor.getByText('Your drawing is not kept yet.').waitFor();
    await page.keyboard.press('Escape');
    await editor.waitFor();
    await walkTo(page, /^Leave without keeping it/);
    await page.keyboard.press('Enter');
    await editor.waitFor({ state: 'detached' });
    await expect.poll(() => focused(page)).toMatch(/^Make it mine/);
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
    `(({ activeElement: it }) =>
      it.getAttribute('aria-label') ?? (it.innerText || it.querySelector('img')?.alt || ''))(document)`,
  );
  return String(name).trim();
}
