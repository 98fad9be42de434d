import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { startPad } from '../hands.ts';
import { samplePair } from '../sample-photos.ts';
import type { Table } from '../table.ts';

/** Photos that went to the wrong face are put right by one touch. */
export function swappedFaces(at: () => Table): void {
  it('swaps fronts and backs of a table, and the service keeps it', async () => {
    const { page, context, faults } = await at().open('laptop');
    await startPad(page, 'Swapped');
    // Their names say nothing and the later one is the front: they land the wrong way round.
    await page
      .getByLabel('Choose photos')
      .setInputFiles([photo('1.jpg', samplePair[1]!), photo('2.jpg', samplePair[0]!)]);
    await laid(page, 'Fronts');
    await laid(page, 'Backs');
    await page.locator('.sending').first().waitFor({ state: 'detached' });
    await page.getByText(/^Sorted /).waitFor();
    const before = await faces(page);
    const wellsBefore = await wellPictures(page);
    await expect.poll(() => page.locator('.pair-missing').count()).toBe(0);
    await page.getByRole('button', { name: 'Swap fronts and backs' }).click();
    await expect.poll(() => faces(page)).toEqual(before.map(([front, back]) => [back, front]));
    const wells = [...wellsBefore].reverse();
    await expect.poll(() => wellPictures(page)).toEqual(wells);
    await page.reload();
    await laid(page, 'Backs');
    await expect.poll(() => faces(page)).toEqual(before.map(([front, back]) => [back, front]));
    await expect.poll(() => wellPictures(page)).toEqual(wells);
    expect(faults).toEqual([]);
    await context.close();
  });

  it('turns a single photo to the other face, and pairs the next with it', async () => {
    const { page, context, faults } = await at().open('laptop');
    await startPad(page, 'Turned');
    await page.getByLabel('Choose photos').setInputFiles([photo('1.jpg', samplePair[1]!)]);
    await laid(page, 'Fronts');
    await page.locator('.laid').first().click();
    await page.getByRole('button', { name: 'This is the other face' }).click();
    await laid(page, 'Backs');
    const [backOnly] = await faces(page);
    expect(backOnly![0]).toBeNull();

    await page.getByLabel('Choose photos').setInputFiles([photo('2.jpg', samplePair[0]!)]);
    await laid(page, 'Fronts');
    await page.locator('.sending').first().waitFor({ state: 'detached' });
    const paired = await faces(page);
    expect(paired.flat()).not.toContain(null);
    expect(paired[0]![1]).toBe(backOnly![1]);
    await expect.poll(() => page.getByRole('region', { name: /^Table \d/ }).count()).toBe(1);
    expect(faults).toEqual([]);
    await context.close();
  });
}

/** A photo under a name that tells nothing. */
function photo(name: string, file: string): { name: string; mimeType: string; buffer: Buffer } {
  return { name, mimeType: 'image/jpeg', buffer: readFileSync(file) };
}

async function laid(page: Page, face: 'Fronts' | 'Backs'): Promise<void> {
  await page.getByRole('button', { name: new RegExp(`^${face}: \\d+ sheets? found`) }).waitFor();
}

/** The swatches of each sheet as the service holds them: front, back. */
async function faces(page: Page): Promise<(string | null)[][]> {
  const pad = new URL(page.url()).pathname.split('/')[2]!;
  const answer = await page.request.get(`/api/pads/${pad}`);
  const { sheets } = (await answer.json()) as {
    sheets: Record<'front' | 'back', { id: string } | null>[];
  };
  return sheets.map(({ front, back }) => [front?.id ?? null, back?.id ?? null]);
}

async function wellPictures(page: Page): Promise<(string | null)[]> {
  const pictures = await page.locator('.well .laid img').all();
  return Promise.all(pictures.map((picture) => picture.getAttribute('src')));
}
