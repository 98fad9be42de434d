import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import { expect, it } from 'vitest';
import type { Pad } from '../../../server/contract/pads.ts';
import type { Supplies } from '../../../server/contract/supplies.ts';
import { makePad } from '../../../sample-swatches/pad/make-pad.ts';
import { renderPhoto } from '../../../sample-swatches/render-photo.ts';
import { makeScene, squaresScene } from '../../../sample-swatches/scene/make-scene.ts';
import type { Table } from '../table.ts';

const LOOK = { pixels: 1200, surface: 'grey desk', chips: true } as const;
const STOCK = [
  { name: 'coral', lab: { l: 62, a: 40, b: 35 } },
  { name: 'deep teal', lab: { l: 35, a: -15, b: -20 } },
  { name: 'sand', lab: { l: 82, a: 2, b: 22 } },
];

/** The scraps of a pad lie beside the cardstock too. */
export function supplyScraps(at: () => Table): void {
  it('found in a photo, cardstock is tied to the photos of a pad by the scraps that are touched beside it', async () => {
    const { page, context, faults } = await at().open('tablet');
    const pad = await padWithScraps(at().address);
    const photo = await renderPhoto(squaresScene(403, 'normal', STOCK, LOOK));
    const folder = await mkdtemp(path.join(os.tmpdir(), 'plyhue-stock-'));
    const file = path.join(folder, 'stock.jpg');
    await writeFile(file, photo.jpeg);
    await page.goto(`/pads/${pad}/supplies`);
    await page.getByRole('button', { name: 'Add cardstock or ink' }).click();
    await page.getByLabel('The photo', { exact: true }).setInputFiles(file);
    await page.getByRole('button', { name: 'Add it' }).click();
    await page.getByText('3 colours were found').waitFor();
    await page.getByRole('button', { name: 'Colour scraps lie here too' }).click();

    const field = page.locator('.scrap-field');
    await field.waitFor();
    const { width, height, chips } = photo.truth;
    for (const [index, { corners }] of chips.entries()) {
      const box = await field.boundingBox();
      if (box === null) throw new Error('The photo has no place on the screen.');
      const [x, y] = [(corners[0].x + corners[2].x) / 2, (corners[0].y + corners[2].y) / 2];
      const position = { x: (x / width) * box.width, y: (y / height) * box.height };
      await field.click({ position });
      await page.getByRole('button', { name: `Scrap ${index + 1}:` }).waitFor();
    }
    await page.getByRole('button', { name: 'Read the photo by these scraps' }).click();
    await page.getByText('This photo is tied to the photos of a pad by its scraps.').waitFor();
    const answer = await fetch(`${at().address}/api/supplies`);
    const { photos, supplies } = (await answer.json()) as Supplies;
    const tied = photos!.filter(({ tiedTo }) => tiedTo === pad);
    expect(tied).toHaveLength(1);
    expect(tied[0]!.chips.scraps.length).toBeGreaterThanOrEqual(chips.length);
    const found = supplies.filter((one) => one.photo === tied[0]!.id);
    expect(found).toHaveLength(3);

    await page.getByRole('button', { name: 'Take the tie off' }).click();
    await page.getByText('This photo is not tied to the photos of a pad yet.').waitFor();
    const untied = (await (await fetch(`${at().address}/api/supplies`)).json()) as Supplies;
    expect(untied.photos!.find(({ id }) => id === tied[0]!.id)).toMatchObject({ tiedTo: null });
    expect(untied.supplies.filter((one) => one.photo === tied[0]!.id)).toHaveLength(3);

    for (const { id } of found)
      await fetch(`${at().address}/api/supplies/${id}`, { method: 'DELETE' });
    expect(faults).toEqual([]);
    await context.close();
    await rm(folder, { recursive: true });
  });
}

/** A pad whose first photo says how the scraps look. */
async function padWithScraps(address: string): Promise<string> {
  const sides = makePad(3)
    .sheets.slice(0, 1)
    .map(({ front }) => front);
  const photo = await renderPhoto(makeScene(3, 'normal', sides, LOOK));
  const made = await fetch(`${address}/api/pads`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ name: 'With scraps', sheetSize: { width: '6 in', height: '6 in' } }),
  });
  const { id } = (await made.json()) as Pad;
  const form = new FormData();
  form.append('side', 'front');
  form.append('arrangement', 'one');
  form.append('chips', JSON.stringify(photo.truth.chips.map(({ corners }) => corners.map(pairOf))));
  form.append('photo', new Blob([new Uint8Array(photo.jpeg)]), 'fronts.jpg');
  const sent = await fetch(`${address}/api/pads/${id}/photos`, { method: 'POST', body: form });
  expect(sent.status).toBe(201);
  return id;
}

function pairOf({ x, y }: { readonly x: number; readonly y: number }): readonly [number, number] {
  return [x, y];
}
