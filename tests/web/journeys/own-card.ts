import { readFile } from 'node:fs/promises';
import type { Locator, Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { goTo, openDemoPad, planCards } from '../hands.ts';
import { accessFaults, smallTargets } from './every-scene.ts';
import type { Table } from '../table.ts';

/** A layout made hers: pulled, sized, told what is wrong, kept, and cut from like ours. */
export function ownCard(at: () => Table): void {
  it('makes one of our layouts hers with the keyboard and the mouse, and plans a card of it', async () => {
    const { page, context, faults } = await at().open('laptop');
    await openDemoPad(page);
    await goTo(page, 'Cards');
    await page.getByRole('button', { name: 'Draw a card of my own' }).click();
    const editor = page.getByRole('dialog', { name: 'A card of your own' });
    await editor.getByRole('button', { name: 'Panel' }).click();
    const width = editor.getByLabel('Width');
    await expect.poll(() => width.inputValue()).toBe('2 in');
    await width.fill('3 1/2');
    await width.press('Enter');
    await width.press('Tab');
    await expect.poll(() => width.inputValue()).toBe('3 1/2 in');

    const chosen = editor.locator('.layer-choice[aria-pressed="true"]');
    await chosen.focus();
    const left = editor.getByLabel('From the left');
    const before = await left.inputValue();
    await page.keyboard.press('ArrowLeft');
    await expect.poll(() => left.inputValue()).not.toBe(before);
    await page.keyboard.press('Control+z');
    await expect.poll(() => left.inputValue()).toBe(before);

    const panel = editor.locator('.drawn-layer.movable > path').first();
    const box = (await panel.boundingBox())!;
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x - 10, y - 900, { steps: 4 });
    await page.mouse.up();
    await expect.poll(() => editor.getByLabel('From the top').inputValue()).toBe('0 in');

    await left.fill('2');
    await left.press('Tab');
    await editor.getByText(/leaves it at the right/).waitFor();
    await expect
      .poll(() => editor.getByRole('button', { name: 'Keep it' }).isDisabled())
      .toBe(true);
    await editor.getByRole('button', { name: 'Undo' }).click();
    await editor.getByText(/^Meets Base along/).waitFor();
    await expect.poll(() => editor.getByText(/leaves it at the right/).count()).toBe(0);

    await stamped(editor);

    await editor.getByRole('button', { name: 'Close' }).click();
    await editor.getByText('Your drawing is not kept yet.').waitFor();
    await editor.getByRole('button', { name: 'Go on drawing' }).click();

    await editor.getByLabel('Its name').fill('Reading room');
    await editor.getByLabel('Its name').press('Tab');
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      editor.getByRole('button', { name: 'Save as a file' }).click(),
    ]);
    const saved = JSON.parse(await readFile(await download.path(), 'utf8')) as {
      layers: { box: { width: string } }[];
      elements: { kind: string; box: { width: string } }[];
    };
    expect(saved.layers[1]!.box.width).toBe('3 1/2 in');
    expect(saved.elements.map(({ kind, box: { width: side } }) => [kind, side])).toEqual([
      ['stamp', '1 1/2 in'],
    ]);
    await editor.getByRole('button', { name: 'Circle' }).click();
    await editor.getByLabel('Open a file').setInputFiles({
      name: 'mine.json',
      mimeType: 'application/json',
      buffer: Buffer.from(JSON.stringify(saved)),
    });
    await expect.poll(() => editor.locator('.layer-choice').count()).toBe(2);
    await expect.poll(() => editor.locator('.drawn-element').count()).toBe(1);

    await editor.getByRole('button', { name: 'Keep it' }).click();
    const hers = page.getByRole('article', { name: 'Reading room', exact: true });
    await hers.getByText('kept').waitFor();
    const first = page.locator('.layout').first();
    await expect.poll(() => first.getAttribute('aria-label')).toBe('Reading room');
    // She drew it to make it: one of it is in the batch already.
    await expect.poll(() => hers.getByLabel('How many: Reading room').inputValue()).toBe('1');
    await planCards(page, 1);

    await goTo(page, 'Cards');
    await page.getByRole('button', { name: 'Change Reading room', exact: true }).click();
    await page.getByRole('group', { name: 'Stamp 1' }).waitFor();
    await page.getByRole('button', { name: 'Keep as a copy' }).click();
    const copy = page.getByRole('article', { name: 'Reading room, a copy' });
    await copy.waitFor();
    for (const name of ['Reading room, a copy', 'Reading room']) {
      await page.getByRole('button', { name: `Change ${name}`, exact: true }).click();
      await page.getByRole('button', { name: 'Delete this layout' }).click();
      await page.getByRole('button', { name: 'Yes, delete it' }).click();
      await page.getByRole('article', { name, exact: true }).waitFor({ state: 'detached' });
    }
    expect(faults).toEqual([]);
    await context.close();
  });

  it('tells when a stamp leaves the words of a greeting little room, until it is pulled aside', async () => {
    const { page, context, faults } = await at().open('phone');
    await openDemoPad(page);
    await goTo(page, 'Cards');
    await page.getByRole('button', { name: 'Draw a card of my own' }).click();
    const editor = page.getByRole('dialog', { name: 'A card of your own' });
    await editor.getByRole('button', { name: 'Greeting' }).first().click();
    await editor.getByRole('button', { name: 'Stamp' }).click();
    // The card itself has room; she wants it on the greeting.
    const stamp = editor.getByRole('group', { name: 'Stamp 1' });
    const where = stamp.getByLabel('On which layer');
    await expect.poll(() => where.inputValue()).toBe('base');
    for (const [label, length] of [
      ['Width', '1 1/4'],
      ['Height', '1/2'],
      ['From the left', '1 1/2'],
      ['From the top', '2 1/2'],
    ] as const) {
      await stamp.getByLabel(label).fill(length);
      await stamp.getByLabel(label).press('Tab');
    }
    await where.selectOption({ label: 'Greeting' });
    const told = editor.getByText('Stamp 1 leaves the words of Greeting little room');
    await told.waitFor();
    // With a panel beside it, another goes there by itself.
    await stamp.getByRole('button', { name: 'Take away' }).click();
    await told.waitFor({ state: 'detached' });
    await editor.getByRole('button', { name: 'Panel' }).first().click();
    await editor.getByLabel('From the top').fill('0');
    await editor.getByLabel('From the top').press('Tab');
    await editor.locator('.layer-choice').filter({ hasText: 'Greeting' }).click();
    await editor.getByRole('button', { name: 'Stamp' }).click();
    await expect.poll(() => where.inputValue()).toMatch(/^panel/);
    await expect.poll(() => told.count()).toBe(0);
    expect(faults).toEqual([]);
    await context.close();
  });

  it.each([
    ['laptop', 'light'],
    ['tablet', 'dark'],
    ['phone', 'light'],
  ] as const)(
    'shows the editor without a fault of access on a %s in the %s',
    async (device, colorScheme) => {
      const { page, context, faults } = await at().open(device, { colorScheme });
      await openDemoPad(page);
      await goTo(page, 'Cards');
      await page
        .getByRole('button', { name: /^Make it mine/ })
        .nth(1)
        .click();
      const editor = page.getByRole('dialog', { name: 'A card of your own' });
      await editor
        .getByText(/^Meets /)
        .first()
        .waitFor();
      expect(await accessFaults(page)).toEqual([]);
      expect(await smallTargets(page)).toEqual([]);
      const wide = await page.evaluate<number>(
        `document.querySelector('dialog').scrollWidth - document.querySelector('dialog').clientWidth`,
      );
      expect(wide).toBeLessThanOrEqual(0);
      if (device !== 'laptop') await pulledByFinger(page);
      expect(faults).toEqual([]);
      await context.close();
    },
  );
}

/** A stamp on the panel: too large for it at first, told so, then it fits. */
async function stamped(editor: Locator): Promise<void> {
  await editor.getByRole('button', { name: 'Stamp' }).click();
  const stamp = editor.getByRole('group', { name: 'Stamp 1' });
  await stamp.getByLabel('Width').fill('3 3/4');
  await stamp.getByLabel('Width').press('Tab');
  await editor.getByText(/but it does not fit there/).waitFor();
  // Told with the name that she sees, in view although the field that is wrong stands far above the end of the form.
  const told = editor.locator('.editor-told .mishap');
  await expect.poll(() => told.textContent()).toContain('Stamp 1 lies on Panel');
  await stamp.getByLabel('Width').scrollIntoViewIfNeeded();
  const { height } = editor.page().viewportSize()!;
  await expect
    .poll(async () => {
      const box = (await told.boundingBox())!;
      return box.y >= 0 && box.y + box.height <= height + 1;
    })
    .toBe(true);
  // It lies over nothing that she works on.
  await stamp.getByLabel('Width').evaluate((field) => field.scrollIntoView({ block: 'nearest' }));
  await expect
    .poll(async () => {
      const field = (await stamp.getByLabel('Width').boundingBox())!;
      return field.y + field.height <= (await told.boundingBox())!.y;
    })
    .toBe(true);
  await expect.poll(() => editor.getByRole('button', { name: 'Keep it' }).isDisabled()).toBe(true);
  await editor.getByText('It can be kept once what is told in red is mended.').waitFor();
  await stamp.getByLabel('Width').fill('1 1/2');
  await stamp.getByLabel('Width').press('Tab');
  await expect.poll(() => editor.getByText(/does not fit there/).count()).toBe(0);
  await expect.poll(() => editor.locator('.drawn-element.stamp .sprig').count()).toBe(1);
}

/** A finger pulls the greeting down the card; the page behind stays where it is. */
async function pulledByFinger(page: Page): Promise<void> {
  const top = page.getByLabel('From the top');
  const before = await top.inputValue();
  const box = (await page.locator('.drawn-layer.role-greeting').boundingBox())!;
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  const hand = await page.context().newCDPSession(page);
  for (const [type, down] of [
    ['touchStart', 0],
    ['touchMove', 12],
    ['touchMove', 24],
    ['touchEnd', null],
  ] as const) {
    const touchPoints = down === null ? [] : [{ x, y: y + down }];
    await hand.send('Input.dispatchTouchEvent', { type, touchPoints });
  }
  await expect.poll(() => top.inputValue()).not.toBe(before);
}
