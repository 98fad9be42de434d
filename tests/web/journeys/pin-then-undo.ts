import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { goTo, holdBack, plannedDemo } from '../hands.ts';
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

  it('moves no card of the plan when tags come to one, however narrow it is', async () => {
    const { page, context, faults } = await at().open('phone');
    await plannedDemo(page, 4);
    const third = page.locator('.planned-card').nth(2);
    const laidAt = await third.evaluate((card) => card.getBoundingClientRect().top + scrollY);
    // All that a card may be told: the weakest, changed by the last wish, and kept.
    const tags = await page
      .locator('.planned-card .tags')
      .first()
      .evaluate((all) => {
        const icon = '<svg class="icon" viewBox="0 0 24 24"></svg>';
        const marked = (words: string): string =>
          `<span class="tag">${icon} <span class="tag-words">${words}</span></span>`;
        all.innerHTML = `<span class="tag">weakest</span>${marked('changed')}${marked('kept')}`;
        const right = Math.max(
          ...[...all.children].map((tag) => tag.getBoundingClientRect().right),
        );
        return { right, card: all.closest('.planned-card')!.getBoundingClientRect().right };
      });
    expect(tags.right).toBeLessThanOrEqual(tags.card);
    expect(await third.evaluate((card) => card.getBoundingClientRect().top + scrollY)).toBe(laidAt);
    expect(faults).toEqual([]);
    await context.close();
  });

  it('plans two quick wishes one after the other, and takes each back by itself', async () => {
    const { page, context, faults } = await at().open('tablet');
    await plannedDemo(page, 3);
    const letGo = await holdPlans(page);
    const first = page.url();
    const sliders = [/calm to busy/, /soft to bold/].map((name) =>
      page.getByRole('slider', { name }),
    );
    const tastes = (): Promise<string[]> => Promise.all(sliders.map((one) => one.inputValue()));
    for (const slider of sliders) await slider.press('ArrowRight');
    await expect.poll(tastes).toEqual(['0.25', '0.25']);
    letGo();
    await expect.poll(() => page.locator('.planned').getAttribute('aria-busy')).toBe('false');
    expect(page.url()).not.toBe(first);
    await expect.poll(tastes).toEqual(['0.25', '0.25']);
    const undo = page.getByRole('button', { name: 'Undo' }).first();
    await undo.click();
    await expect.poll(tastes).toEqual(['0.25', '0']);
    await undo.click();
    await expect.poll(tastes).toEqual(['0', '0']);
    await page.waitForURL(first);
    expect(faults).toEqual([]);
    await context.close();
  });

  it('takes a wish back that is still being planned, and has it again by redo', async () => {
    const { page, context, faults } = await at().open('laptop');
    await plannedDemo(page, 3);
    const letGo = await holdPlans(page);
    const first = page.url();
    await page.locator('.planned-card').first().click();
    await page.locator('.layer-line > .round:enabled').first().click();
    await expect.poll(() => kept(page)).toBe(1);
    await page.getByRole('dialog').getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => kept(page)).toBe(0);
    letGo();
    const redo = page.getByRole('dialog').getByRole('button', { name: 'Redo' });
    // The plan is there by now, and is not put in the place of the one that she wanted.
    await expect.poll(() => redo.isEnabled()).toBe(true);
    expect(page.url()).toBe(first);
    await redo.click();
    await page.waitForURL((url) => url.href !== first);
    await expect.poll(() => kept(page)).toBe(1);
    expect(faults).toEqual([]);
    await context.close();
  });

  it('does not call her back from where she has gone while her wish is planned', async () => {
    const { page, context, faults } = await at().open('laptop');
    await plannedDemo(page, 2);
    const letGo = await holdPlans(page);
    const first = page.url();
    await page.getByRole('slider', { name: /calm to busy/ }).press('ArrowRight');
    await expect.poll(() => page.locator('.planned').getAttribute('aria-busy')).toBe('true');
    await goTo(page, 'Pad');
    await page.getByRole('heading', { name: 'Tidewrack' }).waitFor();
    letGo();
    const way = page.getByRole('navigation').getByRole('link', { name: 'Plan' });
    // The way to the plan leads to the new one.
    await expect
      .poll(async () => (await way.getAttribute('href')) !== new URL(first).pathname)
      .toBe(true);
    expect(new URL(page.url()).pathname).toMatch(/\/pad$/);
    await way.click();
    await expect
      .poll(() => page.getByRole('slider', { name: /calm to busy/ }).inputValue())
      .toBe('0.25');
    expect(faults).toEqual([]);
    await context.close();
  });
}

/** Holds what is asked of the service to be planned, until it is let go. */
const holdPlans = (page: Page): Promise<() => void> => holdBack(page, /\/api\/plans\?/, 'POST');

/** How many layers of the open card are kept as they are. */
function kept(page: Page): Promise<number> {
  return page.getByRole('dialog').locator('.layer-line > [aria-pressed=true]').count();
}

/** The name of the uppermost patterned paper of the open card. */
async function topPaper(page: Page): Promise<string> {
  const line = page
    .locator('.layer-stuff')
    .filter({ has: page.locator('img') })
    .first();
  return (await line.locator('strong + span').textContent()) ?? '';
}
