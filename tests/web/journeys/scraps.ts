import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import type { Pad } from '../../../server/contract/pads.ts';
import { makePad } from '../../../sample-swatches/pad/make-pad.ts';
import { renderPhoto } from '../../../sample-swatches/render-photo.ts';
import { makeScene } from '../../../sample-swatches/scene/make-scene.ts';
import type { Table } from '../table.ts';

/** Touching the scraps that lie in every picture, by hand and by key. */
export function scraps(at: () => Table): void {
  it('touched once each, some by the keys, the scraps tie the photo', async () => {
    const { page, context, faults } = await at().open('laptop');
    const photo = await pictureWithScraps();
    const folder = await mkdtemp(path.join(os.tmpdir(), 'plyhue-scraps-'));
    const file = path.join(folder, 'fronts.jpg');
    await writeFile(file, photo.jpeg);
    const pad = await newPad(at().address);
    await page.goto(`/pads/${pad}/photos`);
    await page.getByLabel('Choose photos').setInputFiles(file);
    await page.locator('.laid').first().click();
    await page.getByRole('button', { name: 'Colour scraps' }).click();

    const field = page.locator('.scrap-field');
    const box = await field.boundingBox();
    if (box === null) throw new Error('The photo has no place on the screen.');
    const { width, height } = photo.truth;
    for (const [index, { x, y }] of photo.middles.entries()) {
      if (index === 1) await walkTo(page, [x / width, y / height]);
      else
        await field.click({
          position: { x: (x / width) * box.width, y: (y / height) * box.height },
        });
      await page.getByRole('button', { name: `Scrap ${index + 1}:` }).waitFor();
    }
    // A mark is taken away by touching it, and set again.
    await page.getByRole('button', { name: 'Scrap 6:' }).click();
    await page.getByText('5 scraps touched.').waitFor();
    const answer = page.waitForResponse((one) => one.request().method() === 'PATCH');
    await page.getByRole('button', { name: 'Read the photo by these scraps' }).click();
    expect((await answer).ok()).toBe(true);
    await page.getByText('This photo says how the scraps look').waitFor();
    const kept = await padAt(at().address, pad);
    expect(kept.photos[0]!.chips.tie).toBe('first');
    expect(kept.photos[0]!.chips.scraps).toHaveLength(5);

    expect(faults).toEqual([]);
    await context.close();
    await rm(folder, { recursive: true });
  });
}

/** The cross starts in the middle; a step is a hundredth of the longer side, with Shift a fifth of it. */
async function walkTo(page: Page, [x, y]: readonly [number, number]): Promise<void> {
  await page.locator('.scrap-field').focus();
  const ratio = 0.75;
  const steps = [Math.round((x - 0.5) * 100), Math.round((y - 0.5) * 100 * ratio)] as const;
  for (let n = 0; n < Math.abs(steps[0]); n++)
    await page.keyboard.press(steps[0] > 0 ? 'ArrowRight' : 'ArrowLeft');
  for (let n = 0; n < Math.abs(steps[1]); n++)
    await page.keyboard.press(steps[1] > 0 ? 'ArrowDown' : 'ArrowUp');
  await page.keyboard.press('Enter');
}

type Rendered = Awaited<ReturnType<typeof renderPhoto>>;

async function pictureWithScraps(): Promise<
  Rendered & { readonly middles: readonly { readonly x: number; readonly y: number }[] }
> {
  const sides = makePad(3)
    .sheets.slice(0, 2)
    .map(({ front }) => front);
  const scene = makeScene(3, 'normal', sides, { pixels: 1500, surface: 'grey desk', chips: true });
  const photo = await renderPhoto(scene);
  const middles = photo.truth.chips.map(({ corners: [p, , r] }) => ({
    x: (p.x + r.x) / 2,
    y: (p.y + r.y) / 2,
  }));
  return { ...photo, middles };
}

async function newPad(address: string): Promise<string> {
  const answer = await fetch(`${address}/api/pads`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ name: 'Scraps', sheetSize: { width: '6 in', height: '6 in' } }),
  });
  return ((await answer.json()) as Pad).id;
}

async function padAt(address: string, pad: string): Promise<Pad> {
  return (await (await fetch(`${address}/api/pads/${pad}`)).json()) as Pad;
}
