import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { picturesDrawn, plannedDemo } from '../hands.ts';
import type { Table } from '../table.ts';

/** What else the plan could be: another plan, a mend, a sheet gone, more sheets or fewer, another taste. */
export function whatElse(at: () => Table): void {
  it('has the next best plan by one touch, and undoes it', async () => {
    const { page, context, faults } = await at().open('laptop');
    await plannedDemo(page, 4);
    const first = page.url();
    const before = await papers(page);
    const next = await unfold(page, 'The next best plans');
    await next.locator('.other-plan').first().waitFor();
    const offered = await next.locator('.other-plan').first().locator('.other-cards li').count();
    await picturesDrawn(page, '.other-plan:first-child .drawn-card', offered);
    expect(offered).toBeGreaterThan(0);
    // Names within a drawing are made its own; the fill of the drawing is none of them.
    const shown = page.locator('.planned-card svg').first();
    await expect.poll(() => shown.innerHTML()).toMatch(/fill="#[0-9a-f]{6}"/);
    expect(await shown.innerHTML()).not.toMatch(/fill="#drawn-/);
    await next.getByRole('button', { name: 'Have it so: plan 1 of these' }).click();
    await page.waitForURL((url) => url.href !== first);
    await picturesDrawn(page, '.planned-card .drawn-card', 4);
    await expect
      .poll(async () => (await papers(page)).filter((card, n) => card !== before[n]))
      .toHaveLength(offered);
    await page.getByRole('button', { name: 'Undo' }).first().click();
    await page.waitForURL(first);
    await expect.poll(() => papers(page)).toEqual(before);
    expect(faults).toEqual([]);
    await context.close();
  });

  it('leaves out a sheet, shows it as left out, and uses it again', async () => {
    const { page, context, faults } = await at().open('tablet');
    await plannedDemo(page, 3);
    const first = page.url();
    const gone = await unfold(page, 'If a sheet is gone');
    const sheet = gone.locator('.swatch-button').first();
    const label = (await sheet.textContent()) ?? '';
    await sheet.click();
    await gone.getByRole('button', { name: `Leave out ${label}`, exact: true }).click();
    await page.waitForURL((url) => url.href !== first);
    const again = page.getByRole('button', { name: `Use ${label} again`, exact: true });
    await again.waitFor();
    await expect.poll(() => gone.locator('.swatch-button').allTextContents()).not.toContain(label);
    await again.click();
    await again.waitFor({ state: 'detached' });
    expect(faults).toEqual([]);
    await context.close();
  });

  it('offers to let go of a sheet that she keeps and would rather leave out', async () => {
    const { page, context, faults } = await at().open('laptop');
    await plannedDemo(page, 3);
    const first = page.url();
    await page.locator('.planned-card').first().click();
    const paper = page.locator('.layer-line').filter({ has: page.locator('img') });
    const label = await paper.first().locator('strong + span').textContent();
    await paper.first().locator('> .round').click();
    await page.waitForURL((url) => url.href !== first);
    await page.keyboard.press('Escape');
    const second = page.url();
    const gone = await unfold(page, 'If a sheet is gone');
    const sheet = label!.replace(/, (front|back)$/, '');
    await gone.getByRole('button', { name: sheet, exact: true }).click();
    await gone.getByText(`You keep ${sheet} on card 1.`).waitFor();
    await gone.getByRole('button', { name: /^Keep it there no longer/ }).click();
    await page.waitForURL((url) => url.href !== second);
    await page.getByRole('button', { name: `Use ${sheet} again`, exact: true }).waitFor();
    await expect.poll(() => page.getByText('kept', { exact: true }).count()).toBe(0);
    expect(faults).toEqual([]);
    await context.close();
  });

  it('says how good the plan is with more sheets or fewer, and plans with so many', async () => {
    const { page, context, faults } = await at().open('phone');
    await plannedDemo(page, 4);
    const first = page.url();
    const amount = await unfold(page, 'More sheets, or fewer');
    const count = amount.locator('.sheet-count').last();
    await count.waitFor();
    await expect.poll(() => amount.getByText('this plan').count()).toBe(1);
    await expect.poll(() => count.textContent()).toMatch(/^up to \d+ sheets? (this plan)?100\s%$/);
    await count.click();
    await page.waitForURL((url) => url.href !== first);
    await page.getByRole('button', { name: 'Back to as few sheets as can be cut' }).waitFor();
    expect(faults).toEqual([]);
    await context.close();
  });

  it('weighs the papers anew by her taste, and keeps it', async () => {
    const { page, context, faults } = await at().open('laptop');
    await plannedDemo(page, 4);
    for (const taste of [/closely matched to lively/, /calm to busy/, /soft to bold/]) {
      const slider = page.getByRole('slider', { name: taste });
      const lots: string[][] = [];
      for (const key of ['Home', 'End']) {
        const here = page.url();
        await slider.press(key);
        await page.waitForURL((url) => url.href !== here);
        await picturesDrawn(page, '.planned-card .drawn-card', 4);
        if (lots.length > 0) await expect.poll(() => papers(page)).not.toEqual(lots[0]);
        lots.push(await papers(page));
      }
      await expect.poll(() => slider.inputValue()).toBe('1');
    }
    expect(faults).toEqual([]);
    await context.close();
  });
}

async function unfold(page: Page, title: string): Promise<ReturnType<Page['locator']>> {
  const found = page.locator('.opening').filter({ hasText: title });
  await found.locator('summary').first().click();
  return found;
}

/** Which papers lie on each card, as its picture is addressed and its sentence says. */
async function papers(page: Page): Promise<string[]> {
  return await page.evaluate<string[]>(
    `[...document.querySelectorAll('.planned-card')].map(
      (card) =>
        card.querySelector('.drawn-card').innerHTML.replaceAll(/drawn-\\d+-/g, '') + card.textContent,
    )`,
  );
}
