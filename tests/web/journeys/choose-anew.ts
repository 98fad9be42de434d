import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { picturesDrawn, plannedDemo } from '../hands.ts';
import type { Table } from '../table.ts';

/** Another paper that leaves other cards as they lie; one touch has all chosen anew, and undo has them back. */
export function chooseAnew(at: () => Table): void {
  it('leaves other cards as they lie for another paper, and chooses all anew by one touch', async () => {
    const { page, context, faults } = await at().open('laptop');
    await plannedDemo(page, 5);
    const first = page.url();
    const wished = await wishThatLeavesOthers(page);
    expect(wished, 'some wish that costs little').not.toBeNull();
    const { card, line, place } = wished!;
    await page
      .locator('.planned-card')
      .nth(card - 1)
      .click();
    await page.locator('.layer-stuff').nth(line).click();
    await page.locator('.alternatives > .swatch-row').getByRole('button').nth(place).click();
    await page.waitForURL((url) => url.href !== first);
    await page.getByRole('button', { name: 'Close' }).click();
    const kept = page.url();
    const { value, otherwise } = await planOf(page);
    await page
      .locator('.changed-too')
      .getByText(/would go a little better with other papers/)
      .waitFor();
    await page.getByRole('button', { name: 'Choose all anew' }).click();
    await page.waitForURL((url) => url.href !== kept);
    await picturesDrawn(page, '.planned-card .drawn-card', 5);
    const anew = await planOf(page);
    expect(anew.otherwise).toBeUndefined();
    expect(anew.value).toBeCloseTo(value + otherwise!.gain, 9);
    expect(anew.asked.pins).toHaveLength(1);
    await expect.poll(() => marked(page)).toEqual(otherwise!.cards);
    await expect.poll(() => page.getByRole('button', { name: 'Choose all anew' }).count()).toBe(0);
    await page.getByRole('button', { name: 'Undo' }).first().click();
    await page.waitForURL(kept);
    expect(faults).toEqual([]);
    await context.close();
  });
}

interface Planned {
  readonly id: string;
  readonly pad: string;
  readonly value: number;
  readonly asked: { readonly cards: readonly object[]; readonly pins?: readonly object[] };
  readonly cards: readonly {
    readonly id: string;
    readonly number: number;
    readonly layers: readonly { readonly layer: string; readonly side?: string }[];
  }[];
  readonly otherwise?: { readonly gain: number; readonly cards: readonly number[] };
}

interface Wish {
  readonly card: number;
  /** Which line of the open card, and which of the papers offered there. */
  readonly line: number;
  readonly place: number;
}

async function planOf(page: Page): Promise<Planned> {
  const id = new URL(page.url()).pathname.split('/').at(-1);
  return (await (await page.request.get(`/api/plans/${id}`)).json()) as Planned;
}

/** Asked of a twin of the plan, so that no step of hers is made by looking; the first such wish, or null. */
async function wishThatLeavesOthers(page: Page): Promise<Wish | null> {
  const { pad, asked } = await planOf(page);
  const post = async (data: object): Promise<Planned> =>
    (await (await page.request.post('/api/plans', { data })).json()) as Planned;
  const wishes = { pad, cards: asked.cards };
  const twin = await post(wishes);
  for (const { id, number, layers } of twin.cards)
    for (const [line, { layer }] of [...layers].reverse().entries()) {
      if (layers.find((one) => one.layer === layer)!.side === undefined) continue;
      const offered = `/api/plans/${twin.id}/cards/${id}/layers/${layer}/choices`;
      const { choices } = (await (await page.request.get(offered)).json()) as {
        choices: { side?: string; allowed: boolean; now: boolean }[];
      };
      const papers = choices.filter(({ allowed, now }) => allowed && !now);
      for (const [place, { side }] of papers.entries()) {
        const pins = [{ card: number, layer, side }];
        const made = await post({ ...wishes, pins, from: twin.id, keepOthers: true });
        if (made.otherwise !== undefined) return { card: number, line, place };
      }
    }
  return null;
}

/** The cards that bear the mark of a change, by their numbers. */
async function marked(page: Page): Promise<number[]> {
  return await page.evaluate<number[]>(
    `[...document.querySelectorAll('.planned-card:has(.tag.changed) [data-card]')].map(
      (one) => Number(one.dataset.card),
    )`,
  );
}
