import type { Locator, Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { goTo, plannedDemo, toFirstCut } from '../hands.ts';
import type { Table } from '../table.ts';

/** The guide one cut at a time, for a class, by a table of her own, and what it leaves. */
export function cutAnotherWay(at: () => Table): void {
  it('shows one cut at a time and goes on where she stopped', async () => {
    const { page, context, faults } = await at().open('tablet');
    await plannedDemo(page, 2);
    await openGuide(page);
    await toFirstCut(page);
    await page.getByText(/^Cut 1 of \d+$/).waitFor();
    const first = await page.locator('.act-main').textContent();
    await expect.poll(() => page.locator('.shown-on .blade').count()).toBe(1);
    await page.getByRole('button', { name: 'Done', exact: true }).click();
    await page.getByText(/^Cut 2 of \d+$/).waitFor();
    await page.reload();
    await page.getByText(/^Cut 2 of \d+$/).waitFor();
    await page
      .locator('.act-line', { hasText: first ?? '' })
      .first()
      .waitFor();
    // A touch shows a cut and ticks nothing; its box ticks, and what is next is shown again.
    await page.locator('.act-show').first().click();
    await page.getByText(/^Cut 1 of \d+ \(done\)$/).waitFor();
    const last = page.locator('.act-line').last();
    await last.locator('.act-show').click();
    const shown = (await last.locator('span').last().textContent()) ?? '';
    await page.locator('.act-main', { hasText: shown }).waitFor();
    await expect.poll(() => last.locator('.act-tick').getAttribute('aria-pressed')).toBe('false');
    const box = page.locator('.act-tick').first();
    await box.click();
    await page.getByText(/^Cut 1 of \d+$/).waitFor();
    await box.click();
    await expect.poll(() => box.getAttribute('aria-pressed')).toBe('true');
    await page.getByText(/^Cut 2 of \d+$/).waitFor();

    await page.getByRole('button', { name: /^Build card 1/ }).click();
    await page.getByText(/^1 of \d+: layer$/).waitFor();
    await page.getByRole('img', { name: 'The flat base with its score lines' }).waitFor();
    await page.getByRole('button', { name: 'Done', exact: true }).click();
    await page.getByText(/^2 of \d+: layer$/).waitFor();
    await expect.poll(() => page.locator('.shown-on .at-hand').count()).toBe(1);
    expect(faults).toEqual([]);
    await context.close();
  });

  it('cuts for a class in stacks of her own, and prints it so', async () => {
    const { page, context, faults } = await at().open('laptop');
    await plannedDemo(page, 2);
    await openGuide(page);
    await page.getByText('For several people, or in higher stacks').click();
    const more = page.getByRole('button', { name: /^One more: People/ });
    await more.click();
    await more.click();
    await page.getByText(/^3 people, 2 cards each/).waitFor();
    await page.getByRole('button', { name: /^One fewer: Sheets under the blade/ }).click();
    await sheets(page).first().click();
    // Three sheets, two at once, make two stacks.
    await expect.poll(() => page.locator('.cut-number.square').count()).toBe(2);
    await page
      .locator('.cut-line', { has: page.locator('.square') })
      .first()
      .click();
    await page.reload();
    await sheets(page).first().click();
    const stacks = page.locator('.cut-line', { has: page.locator('.square') });
    await expect.poll(() => stacks.first().getAttribute('aria-pressed')).toBe('true');
    await stacks.nth(1).click();
    await page.getByText(/^1 of \d+ steps done$/).waitFor();
    const print = page.getByRole('link', { name: /^Print the guide/ });
    await expect.poll(() => print.getAttribute('href')).toContain('&stack=2&people=3');
    expect(faults).toEqual([]);
    await context.close();
  });

  it('stays where she is while the batch of so many people is worked out', async () => {
    const { page, context, faults } = await at().open('phone');
    await plannedDemo(page, 2);
    await openGuide(page);
    await page.getByRole('button', { name: /^Build card 1/ }).click();
    await page.getByText(/^1 of \d+: layer$/).waitFor();
    await page.getByText('For several people, or in higher stacks').click();
    // The cuts are here before what the class takes.
    let late: (() => void) | null = null;
    await page.route(/\/class-set/, async (route) => {
      await new Promise<void>((resolve) => (late = resolve));
      await route.continue();
    });
    const cuts = page.waitForResponse(/\/cuts\?.*people=2/);
    await page.getByRole('button', { name: /^One more: People/ }).click();
    await (await cuts).finished();
    await expect.poll(() => late !== null).toBe(true);
    await page.getByText('One moment …').waitFor();
    await page.getByText(/^1 of \d+: layer$/).waitFor();
    late!();
    await page.getByText(/^2 people, 2 cards each/).waitFor();
    await page.locator('.sheets-to-have').waitFor();
    await page.getByText(/^1 of \d+: layer$/).waitFor();
    expect(faults).toEqual([]);
    await context.close();
  });

  it('follows a cutting table of her own, or says why it cannot be cut', async () => {
    const { page, context, faults } = await at().open('phone');
    await plannedDemo(page, 2);
    await openGuide(page);
    const before = page.url();
    const cuts = sheets(page);
    await cuts.first().waitFor();
    const few = await cuts.count();
    await page.getByText('By a cutting table of your own').click();
    const homes = page.locator('.scheme select');
    await homes.first().selectOption({ label: 'another sheet' });
    await page.getByRole('button', { name: 'Work out these cuts' }).click();
    await page.waitForURL((url) => url.href !== before);
    await expect.poll(() => cuts.count()).toBe(few + 1);
    await page.reload();
    await expect.poll(() => cuts.count()).toBe(few + 1);

    // One of the sheets is to be another one than we chose.
    await page.getByText('By a cutting table of your own').click();
    const which = page.getByRole('combobox', { name: /^Which sheet: / }).first();
    await which.waitFor();
    const others = await which.locator('option').allTextContents();
    const there = (await cuts.allTextContents()).map((title) => title.trim());
    const wanted = others.slice(1).find((label) => !there.includes(label))!;
    await which.selectOption({ label: wanted });
    const second = page.url();
    await page.getByRole('button', { name: 'Work out these cuts' }).click();
    await page.waitForURL((url) => url.href !== second);
    await page.getByRole('button', { name: wanted, exact: true }).waitFor();

    await page.getByText('By a cutting table of your own').click();
    // Two papers of one card cannot come out of one sheet.
    const same = await homes.first().inputValue();
    await homes.nth(1).selectOption(same);
    await page.getByRole('button', { name: 'Work out these cuts' }).click();
    await page.locator('.opened .mishap').waitFor();
    await expect.poll(() => page.locator('.scheme [aria-invalid="true"]').count()).toBe(1);
    await page.getByRole('button', { name: 'Back to the fewest sheets' }).click();
    await expect.poll(() => cuts.count()).toBe(few);
    // With the table goes its word on which sheet it is.
    await page.getByText('By a cutting table of your own').click();
    await expect.poll(() => which.inputValue()).toBe('');
    expect(faults).toEqual([]);
    await context.close();
  });

  it('keeps what is left, and cuts the next batch out of it', async () => {
    const { page, context, faults } = await at().open('laptop');
    await plannedDemo(page, 2);
    await openGuide(page);
    await page.getByRole('button', { name: 'Keep what is left' }).click();
    await page.getByRole('button', { name: 'They are cut: keep these for the next batch' }).click();
    await page.getByText('They are kept with the pad, for the next batch.').first().waitFor();
    // Its tick came with the word that it is cut.
    await expect.poll(() => sheets(page).first().textContent()).toMatch(/ \(done\)$/);
    const sheet = ((await sheets(page).first().textContent()) ?? '').replace(' (done)', '');
    const pieces = await page.request.get(`/api/plans/${page.url().split('/').at(-1)}/cuts`);
    const { slots } = (await pieces.json()) as { slots: { sheet: string; pieces: unknown[] }[] };
    const copies = slots[0]!.pieces.length + 1;
    await page.request.patch(`/api/sheets/${slots[0]!.sheet}`, { data: { copies } });

    await goTo(page, 'Pad');
    const parts = page.locator('.left-parts li');
    await parts.first().waitFor();
    // As many whole sheets of it as it gives pieces: the next batch needs no new one.
    const kept = await parts.count();
    for (const [at] of slots[0]!.pieces.entries()) {
      await page.getByLabel('Of which sheet?').selectOption({ label: sheet });
      await page.getByLabel('Width').fill('6');
      await page.getByLabel('Height').fill('6');
      await page.getByRole('button', { name: 'Add a part' }).click();
      await expect.poll(() => parts.count()).toBe(kept + at + 1);
      // Only then are the fields empty for the next.
      await expect.poll(() => page.getByLabel('Width').inputValue()).toBe('');
    }
    await page.getByRole('link', { name: /Guide$/ }).click();
    await page.getByRole('button', { name: `${sheet}, from left-overs` }).click();
    await page.getByText('Open no new sheet').waitFor();

    await goTo(page, 'Pad');
    await parts.first().waitFor();
    const all = kept + slots[0]!.pieces.length;
    await expect.poll(() => parts.count()).toBe(all);
    await parts.first().getByRole('button').click();
    await expect.poll(() => parts.count()).toBe(all - 1);
    await asItWas(page, slots[0]!.sheet);
    expect(faults).toEqual([]);
    await context.close();
  });
}

/** Takes all parts off the pad again, for what is tried after this: a card out of left-overs opens no sheet. */
async function asItWas(page: Page, sheet: string): Promise<void> {
  const kept = `/api/pads/${new URL(page.url()).pathname.split('/')[2]}/leftovers`;
  const { leftovers } = (await (await page.request.get(kept)).json()) as {
    leftovers: { id: string }[];
  };
  for (const { id } of leftovers) await page.request.delete(`${kept}/${id}`);
  await page.request.patch(`/api/sheets/${sheet}`, { data: { copies: 1 } });
  const left = (await (await page.request.get(kept)).json()) as { leftovers: unknown[] };
  expect(left.leftovers).toEqual([]);
}

/** The sheets of the pad among all steps. */
function sheets(page: Page): Locator {
  return page.getByRole('button', { name: /^Sheet \d+/ });
}

async function openGuide(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'To the cutting guide' }).click();
  await page.getByRole('article', { name: /^Step 1 of/ }).waitFor();
}
