import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { goTo, picturesDrawn, planCards, plannedDemo, toFirstCut } from '../hands.ts';
import type { Table } from '../table.ts';

/** Cards chosen anew after cutting began: asked before, nothing lost, and the way back by undo and by 'Earlier plans'. */
export function earlierPlans(at: () => Table): void {
  it('asks before a plan is left that she has begun to cut, and has it back with its ticks', async () => {
    const { page, context, faults } = await at().open('tablet');
    await plannedDemo(page, 2);
    const first = page.url();
    await page.getByRole('link', { name: 'To the cutting guide' }).click();
    await toFirstCut(page);
    await page.locator('.act-tick').first().click();
    await page.locator('.act-tick[aria-pressed=true]').first().waitFor();
    const ticks = `/api/plans/${new URL(first).pathname.split('/').at(-1)}/ticks`;
    await expect.poll(() => ticksAt(page, ticks)).toBe(3);

    await goTo(page, 'Cards');
    const layout = page.locator('.layout').first();
    await layout
      .getByRole('button', { name: /^One more/ })
      .last()
      .click();
    await page.getByRole('button', { name: 'Choose the papers for me' }).click();
    const asked = page.getByRole('dialog', { name: 'You have begun to cut this plan' });
    await asked.getByText(/^Its guide has 3 ticks\./).waitFor();
    await asked.getByRole('button', { name: 'Stay with this plan' }).click();
    await expect.poll(() => page.getByRole('dialog').count()).toBe(0);
    expect(new URL(page.url()).pathname).toMatch(/\/cards$/);
    await page.getByRole('button', { name: 'Choose the papers for me' }).click();
    await asked.getByRole('button', { name: 'Make the new plan' }).click();
    await page.locator('.planned-card').nth(2).waitFor();
    const second = page.url();
    expect(second).not.toBe(first);

    await undoTo(page, first, second);
    await page.getByRole('button', { name: 'Earlier plans' }).click();
    const plans = page.getByRole('dialog').locator('.earlier-plan');
    const mine = plans.filter({ hasText: '3 ticks in its guide' }).first();
    await expect.poll(() => mine.textContent()).toContain('on the table now');
    await picturesDrawn(page, '.earlier-plan .drawn-card', 5);
    await plans.filter({ hasText: '3 cards' }).first().click();
    await page.waitForURL(second);
    await page.getByRole('button', { name: 'Earlier plans' }).click();
    await mine.click();
    await page.waitForURL(first);
    await goTo(page, 'Guide');
    await page.getByText(/^2 of \d+ steps done$/).waitFor();
    await page.locator('.act-tick[aria-pressed=true]').first().waitFor();
    expect(faults).toEqual([]);
    await context.close();
  });

  it('asks where another wish would leave ticks behind, and not where a paper is only kept', async () => {
    const { page, context, faults } = await at().open('laptop');
    await plannedDemo(page, 2);
    const first = page.url();
    await page.getByRole('link', { name: 'To the cutting guide' }).click();
    await toFirstCut(page);
    await page.getByText(/^2 of \d+ steps done$/).waitFor();
    await goTo(page, 'Plan');
    await page.locator('.planned-card').first().click();
    await page.locator('.layer-line > .round:enabled').first().click();
    await page.waitForURL((url) => url.href !== first);
    await page.getByRole('button', { name: 'Close' }).click();
    const kept = page.url();

    const slider = page.getByRole('slider', { name: /calm to busy/ });
    await slider.press('ArrowRight');
    const asked = page.getByRole('dialog', { name: 'You have begun to cut this plan' });
    // Keeping a paper has changed nothing that is cut, so its ticks came along.
    await asked.getByText(/^Its guide has 2 ticks\./).waitFor();
    await asked.getByRole('button', { name: 'Stay with this plan' }).click();
    await expect.poll(() => slider.inputValue()).toBe('0');
    expect(page.url()).toBe(kept);
    await slider.press('ArrowRight');
    await asked.getByRole('button', { name: 'Make the new plan' }).click();
    await page.waitForURL((url) => url.href !== kept);
    const other = page.url();
    await expect.poll(() => page.locator('.planned').getAttribute('aria-busy')).toBe('false');
    // Nothing of this one is cut, so nothing is asked.
    await page.getByRole('slider', { name: /soft to bold/ }).press('ArrowRight');
    await page.waitForURL((url) => url.href !== other);
    expect(faults).toEqual([]);
    await context.close();
  });

  it('reaches back across choices of cards by undo, and on by redo, on another device too', async () => {
    const { page, context } = await at().open('laptop');
    await plannedDemo(page, 1);
    const first = page.url();
    await goTo(page, 'Cards');
    await planCards(page, 1);
    const second = page.url();
    await page.getByRole('slider', { name: /calm to busy/ }).press('ArrowRight');
    await page.waitForURL((url) => url.href !== second);
    const third = page.url();
    const tablet = await at().open('tablet');
    await tablet.page.goto(third);
    for (const each of [page, tablet.page]) {
      await undoTo(each, second, third, false);
      await undoTo(each, first, second);
      const redo = each.getByRole('button', { name: 'Redo' }).first();
      await redo.click();
      await each.waitForURL(second);
      await redo.click();
      await each.waitForURL(third);
    }
    expect(tablet.faults).toEqual([]);
    await tablet.context.close();
    await context.close();
  });
}

async function ticksAt(page: Page, address: string): Promise<number> {
  const { ticks } = (await (await page.request.get(address)).json()) as { ticks: string[] };
  return ticks.length;
}

/** Undoes from `now` to `before`; unless `stay` is false goes on again and back once more. */
async function undoTo(page: Page, before: string, now: string, stay = true): Promise<void> {
  const undo = page.getByRole('button', { name: 'Undo' }).first();
  const redo = page.getByRole('button', { name: 'Redo' }).first();
  if (page.url() === now) {
    await undo.click();
    await page.waitForURL(before);
  }
  if (!stay) return;
  await redo.click();
  await page.waitForURL(now);
  await undo.click();
  await page.waitForURL(before);
}
