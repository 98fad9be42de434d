import type { Locator, Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { goTo, openDemoPad } from '../hands.ts';
import type { Seat, Table } from '../table.ts';

/** Putting the corners of a sheet right, by hand and by key. */
export function corners(at: () => Table): void {
  it('drags a corner with the mouse, walks it with the keys, and the service keeps it', async () => {
    const { page, context, faults, outline, before } = await atCorners(at());

    const saved = page.waitForResponse((one) => one.request().method() === 'PATCH');
    const handle = page.getByRole('button', { name: 'Corner top left' });
    const box = await handle.boundingBox();
    if (box === null) throw new Error('The corner has no place on the screen.');
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + 6, y + 5, { steps: 4 });
    await page.mouse.up();
    expect((await saved).ok()).toBe(true);
    await page
      .getByText(/^Found \d+ sheets/)
      .last()
      .waitFor();
    const dragged = await outline.getAttribute('points');
    expect(dragged).not.toBe(before);

    const savedAgain = page.waitForResponse((one) => one.request().method() === 'PATCH');
    await handle.focus();
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('Shift+ArrowDown');
    expect((await savedAgain).ok()).toBe(true);
    await page.reload();
    await openPhoto(page);
    const kept = await outline.getAttribute('points');
    expect(kept).not.toBe(dragged);
    expect(faults).toEqual([]);
    await context.close();
  });

  it('keeps a corner that is moved while an earlier one is being saved', async () => {
    const { page, context, faults, outline, before } = await atCorners(at());
    const sent: string[] = [];
    let letGo = (): void => undefined;
    const held = new Promise<void>((resolve) => (letGo = resolve));
    await page.route('**/api/sides/*', async (route) => {
      if (route.request().method() !== 'PATCH') return route.continue();
      sent.push(route.request().postData() ?? '');
      await held;
      return route.continue();
    });
    const [first, second] = ['top left', 'top right'].map((name) =>
      page.getByRole('button', { name: `Corner ${name}` }),
    );
    await first!.press('ArrowRight');
    await expect.poll(() => sent.length).toBe(1);
    const once = await outline.getAttribute('points');
    expect(once).not.toBe(before);
    await second!.press('ArrowLeft');
    const twice = await outline.getAttribute('points');
    expect(twice).not.toBe(once);
    const field = page.locator('.corner-field');
    const answer = page.waitForResponse((one) => one.request().method() === 'PATCH');
    letGo();
    await answer;
    await expect.poll(() => sent.length).toBe(2);
    // The second carries both, and nothing jumps back in between.
    await expect.poll(() => field.getAttribute('aria-busy')).toBe('false');
    await expect.poll(() => outline.getAttribute('points')).toBe(twice);
    expect(faults).toEqual([]);
    await context.close();
  });
}

/** The first photo of the demo pad with its corners; `before` is where they lie. */
async function atCorners(
  table: Table,
): Promise<Seat & { readonly outline: Locator; readonly before: string | null }> {
  const seat = await table.open('laptop');
  const { page } = seat;
  await openDemoPad(page);
  await goTo(page, 'Photos');
  await openPhoto(page);
  const outline = page.locator('.corner-field polygon.outline:not(.under):not(.white)').first();
  return { ...seat, outline, before: await outline.getAttribute('points') };
}

async function openPhoto(page: Page): Promise<void> {
  await page.locator('.laid').first().click();
  await page.getByRole('dialog').waitFor();
}
