import type { CDPSession, Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { picturesDrawn, plannedDemo } from '../hands.ts';
import type { Table } from '../table.ts';

/** Two papers change over by pulling one onto the other, with the mouse and with a finger. */
export function pullPapers(at: () => Table): void {
  it('changes two papers over with the mouse, opens no card by it, and undoes it', async () => {
    const { page, context, faults } = await at().open('laptop');
    await plannedDemo(page, 4);
    const first = page.url();
    const before = await planOf(page);
    const { from, to } = await twoSpots(page);
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    await page.mouse.move(to.x, to.y, { steps: 5 });
    await page.getByText(/^Change over with /).waitFor();
    await page.mouse.up();
    await page.waitForURL((url) => url.href !== first);
    await expect.poll(() => page.getByText('kept', { exact: true }).count()).toBe(2);
    await expect.poll(() => page.getByRole('dialog').count()).toBe(0);
    await picturesDrawn(page, '.planned-card .drawn-card', 4);
    await expect.poll(() => keptSides(page)).toEqual(changedOver(from, to));
    await expect.poll(() => markedChanged(page)).toEqual(changedSince(before, await planOf(page)));
    const pulled = [from, to].map(({ key }) => Number(key.split('/')[0]));
    const too = (await markedChanged(page)).filter((card) => !pulled.includes(card));
    const { otherwise } = await planOf(page);
    const told = otherwise ? /would go a little better with other papers/ : /changed too/;
    const times = otherwise || too.length > 0 ? 2 : 0;
    await expect.poll(() => page.getByText(told).count()).toBe(times);
    await page.getByRole('button', { name: 'Undo' }).first().click();
    await page.waitForURL(first);

    // Escape lets go of it over the other paper; what she does next is all that is planned.
    await expect.poll(() => page.getByText('kept', { exact: true }).count()).toBe(0);
    await picturesDrawn(page, '.planned-card .drawn-card', 4);
    // What stands above the cards has come and gone meanwhile.
    const again = await twoSpots(page);
    await page.mouse.move(again.from.x, again.from.y);
    await page.mouse.down();
    await page.mouse.move(again.to.x, again.to.y, { steps: 5 });
    await page.getByText(/^Change over with /).waitFor();
    await page.keyboard.press('Escape');
    await page.getByText(/^Change over with /).waitFor({ state: 'detached' });
    await page.mouse.up();
    await page.getByRole('slider', { name: /calm to busy/ }).press('ArrowRight');
    await page.waitForURL((url) => url.href !== first);
    expect(await keptSides(page)).toEqual({});
    expect(faults).toEqual([]);
    await context.close();
  });

  it('changes two papers over with a finger that rests first', async () => {
    const { page, context, faults } = await at().open('tablet');
    await plannedDemo(page, 4);
    const first = page.url();
    const { from, to } = await twoSpots(page);
    const hand = await context.newCDPSession(page);
    await touch(hand, 'touchStart', from);
    await page.getByText('Pull it onto another paper').waitFor();
    await touch(hand, 'touchMove', to);
    await page.getByText(/^Change over with /).waitFor();
    await touch(hand, 'touchEnd');
    await page.waitForURL((url) => url.href !== first);
    await expect.poll(() => page.getByText('kept', { exact: true }).count()).toBe(2);
    await expect.poll(() => keptSides(page)).toEqual(changedOver(from, to));
    expect(faults).toEqual([]);
    await context.close();
  });
}

interface Spot {
  readonly x: number;
  readonly y: number;
  readonly key: string;
  readonly side: string;
}

/** Places near the upper edge of two cards where different papers are seen. */
async function twoSpots(page: Page): Promise<{ from: Spot; to: Spot }> {
  const plan = await planOf(page);
  const { layouts } = (await (await page.request.get('/api/layouts')).json()) as {
    layouts: { id: string; layers: { id: string; material: string }[] }[];
  };
  const upper = plan.cards.flatMap(({ number, layout, layers }) => {
    const drawn = layouts.find(({ id }) => id === layout)!.layers;
    // The lowest patterned layer reaches the upper edge in all of the first layouts.
    const layer = drawn.find(({ material }) => material === 'patterned')!.id;
    const side = layers.find((one) => one.layer === layer)?.side;
    return side === undefined ? [] : [{ number, key: `${number}/${layer}`, side }];
  });
  const one = upper[0]!;
  const other = upper.find(({ side }) => side !== one.side)!;
  const at = async ({ number, key, side }: typeof one): Promise<Spot> => {
    const place = page.locator('.planned-card .card-place').nth(number - 1);
    const box = (await place.boundingBox())!;
    // Past the shadow, the base and a mat, and above whatever lies on the paper.
    return { x: box.x + box.width / 2, y: box.y + box.height / 9, key, side };
  };
  return { from: await at(one), to: await at(other) };
}

function changedOver(from: Spot, to: Spot): Record<string, string> {
  return { [from.key]: to.side, [to.key]: from.side };
}

interface Planned {
  readonly cards: readonly {
    readonly number: number;
    readonly layout: string;
    readonly layers: readonly { readonly layer: string; readonly side?: string }[];
  }[];
  readonly otherwise?: object;
  readonly asked: { readonly pins?: readonly { card: number; layer: string; side?: string }[] };
}

async function planOf(page: Page): Promise<Planned> {
  const id = new URL(page.url()).pathname.split('/').at(-1);
  return (await (await page.request.get(`/api/plans/${id}`)).json()) as Planned;
}

/** Which side lies in each layer of which the plan on the screen keeps the paper. */
async function keptSides(page: Page): Promise<Record<string, string>> {
  const { cards, asked } = await planOf(page);
  return Object.fromEntries(
    (asked.pins ?? []).map(({ card, layer }) => {
      const made = cards.find(({ number }) => number === card)!;
      return [`${card}/${layer}`, made.layers.find((one) => one.layer === layer)!.side ?? ''];
    }),
  );
}

/** The cards that bear the mark of a change, by their numbers. */
async function markedChanged(page: Page): Promise<number[]> {
  return await page.evaluate<number[]>(
    `[...document.querySelectorAll('.planned-card:has(.tag.changed) [data-card]')].map(
      (one) => Number(one.dataset.card),
    )`,
  );
}

function changedSince(before: Planned, after: Planned): number[] {
  return after.cards
    .filter(({ layers }, n) => JSON.stringify(layers) !== JSON.stringify(before.cards[n]!.layers))
    .map(({ number }) => number);
}

async function touch(
  hand: CDPSession,
  type: 'touchStart' | 'touchMove' | 'touchEnd',
  at?: { x: number; y: number },
): Promise<void> {
  const touchPoints = at === undefined ? [] : [{ x: at.x, y: at.y }];
  await hand.send('Input.dispatchTouchEvent', { type, touchPoints });
}
