import { mkdtemp, rm, utimes, writeFile } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import type { Page } from 'playwright-core';
import sharp from 'sharp';
import { expect, it } from 'vitest';
import type { Pad } from '../../../server/contract/pads.ts';
import { startPad } from '../hands.ts';
import { samplePair } from '../sample-photos.ts';
import type { Table } from '../table.ts';

const PHOTOS = 30;
/** Which of the files is no photo; it would have been the backs of table 6. */
const LETTER = 11;
/** Which photo she takes away again while it waits: the fronts of table 14. */
const AWAY = 26;

/** A whole pad at once: thirty photos, a file that is none among them, and a connection that goes in the midst of it. */
export function thirtyPhotos(at: () => Table): void {
  it('brings in thirty photos in their order, each once, though the connection goes meanwhile', async () => {
    const { page, context, faults } = await at().open('laptop');
    const { folder, files } = await thirtyFiles();
    await startPad(page, 'Thirty photos');
    await page.getByLabel('Choose photos').setInputFiles(files);
    // Each has its own place and progress at once, in the order in which they were taken.
    await page.getByText('Sorted by when they were taken').waitFor();
    await expect.poll(() => tables(page)).toEqual(numbers(15));
    const going = page.locator('.sending');
    await expect.poll(() => padOf(page).then(({ photos }) => photos.length)).toBeGreaterThan(3);

    await context.setOffline(true);
    // That the connection is away is told of those that were on their way, not of all thirty.
    await expect.poll(() => toldAndWaiting(page)).toBe(true);
    await page.getByRole('button', { name: `Take away ${nameOf(AWAY)}` }).click();
    await context.setOffline(false);

    await expect.poll(() => going.count(), { timeout: 300_000 }).toBe(0);
    const refused = page.getByRole('list', { name: 'Not taken in' }).getByRole('listitem');
    await expect.poll(() => refused.allTextContents()).toHaveLength(1);
    await refused.getByText(nameOf(LETTER)).waitFor();
    const { photos } = await padOf(page);
    const there = photos.map(({ arrangement, side, width }) => `${arrangement} ${side} ${width}`);
    expect(there.sort()).toEqual(expectedPlaces().sort());
    await expect.poll(() => tables(page)).toEqual(numbers(15));
    // Nothing waits on this device any more that would come a second time.
    await page.reload();
    await expect.poll(() => page.locator('.well .laid').count()).toBe(PHOTOS - 2);
    await expect.poll(() => going.count()).toBe(0);
    expect(faults).toEqual([]);
    await context.close();
    await rm(folder, { recursive: true });
  });

  it('takes a photo away that the service is reading already', async () => {
    const { page, context, faults } = await at().open('tablet');
    // The photo goes as it goes; that the answer to it is here is told only when it is let go.
    await page.addInitScript(`{
      const { send } = XMLHttpRequest.prototype;
      const held = new Promise((resolve) => (window.letGo = resolve));
      XMLHttpRequest.prototype.send = function (body) {
        const told = this.onload;
        this.onload = (event) => void held.then(() => told.call(this, event));
        send.call(this, body);
      };
    }`);
    await startPad(page, 'Taken away');
    await page.getByLabel('Choose photos').setInputFiles(samplePair[0]!);
    await page.locator('.sending.reading').waitFor();
    await expect.poll(() => padOf(page).then(({ photos }) => photos.length)).toBe(1);
    const gone = page.waitForResponse((one) => one.request().method() === 'DELETE');
    await page.getByRole('button', { name: /^Take away / }).click();
    await page.evaluate('letGo()');
    expect((await gone).status()).toBe(204);
    await expect.poll(() => padOf(page).then(({ photos }) => photos.length)).toBe(0);
    await expect.poll(() => page.locator('.tableful').count()).toBe(0);
    expect(faults).toEqual([]);
    await context.close();
  });
}

/** Small photos of one tableful, each of another width, by which it is known again; a minute lies between two. */
async function thirtyFiles(): Promise<{ folder: string; files: string[] }> {
  const folder = await mkdtemp(path.join(os.tmpdir(), 'plyhue-thirty-'));
  const files: string[] = [];
  for (let n = 0; n < PHOTOS; n += 1) {
    const file = path.join(folder, nameOf(n));
    const photo = sharp(samplePair[n % 2])
      .resize(widthOf(n))
      .jpeg({ quality: 85 });
    await writeFile(file, n === LETTER ? 'no photo' : await photo.toBuffer());
    const taken = 1_700_000_000 + 60 * n;
    await utimes(file, taken, taken);
    files.push(file);
  }
  return { folder, files };
}

function nameOf(n: number): string {
  // Sorted by name they would stand otherwise.
  return `photo ${n + 1}.jpg`;
}

function widthOf(n: number): number {
  return 900 + n;
}

function expectedPlaces(): string[] {
  return Array.from({ length: PHOTOS }, (_, n) => n)
    .filter((n) => n !== LETTER && n !== AWAY)
    .map((n) => `table-${Math.floor(n / 2) + 1} ${n % 2 === 0 ? 'front' : 'back'} ${widthOf(n)}`);
}

async function toldAndWaiting(page: Page): Promise<boolean> {
  const [told, waiting] = await page.evaluate<[number, number]>(
    `['.sending .mishap', '.sending.waiting'].map((what) => document.querySelectorAll(what).length)`,
  );
  return told >= 1 && told <= 2 && waiting > 10;
}

function tables(page: Page): Promise<string[]> {
  return page.locator('.tableful h2').allTextContents();
}

function numbers(count: number): string[] {
  return Array.from({ length: count }, (_, n) => `Table ${n + 1}`);
}

async function padOf(page: Page): Promise<Pad> {
  const pad = new URL(page.url()).pathname.split('/')[2]!;
  return (await (await page.request.get(`/api/pads/${pad}`)).json()) as Pad;
}
