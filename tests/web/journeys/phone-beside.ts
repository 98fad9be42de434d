import { once } from 'node:events';
import { mkdtemp, rm } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import { createInterface } from 'node:readline';
import { expect, it, onTestFinished } from 'vitest';
import { samplePair } from '../sample-photos.ts';
import { ended, freePort, startService, type Table } from '../table.ts';

/** On a network: a device comes in by a code that works once, a phone adds photos, the laptop shows them by itself. */
export function phoneBeside(at: () => Table): void {
  it('lets in a phone by a code, and shows on the laptop what the phone photographs', async () => {
    const { address, code } = await onNetwork();
    const laptop = await at().open('laptop', { baseURL: address });
    const { page } = laptop;

    // Without a key nothing is told.
    await page.goto('/');
    await page
      .getByRole('alert')
      .getByText(/without a key/)
      .waitFor();
    await page.goto(`/#code=${code}`);
    await page.getByRole('button', { name: 'Start a new pad' }).click();
    expect(new URL(page.url()).hash).toBe('');
    await page.getByLabel('Name of the pad').fill('From the phone');
    await page.getByRole('button', { name: 'Start with photos' }).click();
    await page.getByRole('heading', { name: 'Photograph the papers' }).waitFor();

    const asked = page.waitForResponse((answer) => answer.url().endsWith('/api/codes'));
    await page.getByRole('button', { name: 'Use my phone' }).click();
    const shown = (await (await asked).json()) as { code: string; addresses: string[] };
    const dialog = page.getByRole('dialog', { name: 'Use my phone' });
    // A machine without a network can show no address, and says so.
    if (shown.addresses.length === 0) await dialog.getByRole('alert').waitFor();
    else await dialog.getByRole('img', { name: /^Picture of the address/ }).waitFor();
    await page.keyboard.press('Escape');

    const phone = await at().open('phone', { baseURL: address });
    await phone.page.goto(`/#code=${shown.code}`);
    await phone.page.getByRole('heading', { name: 'Photograph the papers' }).waitFor();
    await expect
      .poll(() => phone.page.getByRole('navigation').getByRole('link').allTextContents())
      .toHaveLength(2);
    await phone.page.getByLabel('Take a photo').setInputFiles(samplePair[0]!);

    // The laptop was not touched since.
    await page.getByRole('button', { name: /^Fronts: \d+ sheets? found/ }).waitFor();
    await phone.page
      .getByRole('region')
      .getByText(/^Found \d+ sheets?\.$/)
      .waitFor();
    // What a phone may not do is not offered there.
    await expect.poll(() => phone.page.locator('.pair-button').count()).toBeGreaterThan(0);
    await expect.poll(() => phone.page.locator('.tableful button, .pairs button').count()).toBe(0);
    await phone.page.getByRole('link', { name: 'See the pad' }).click();
    await phone.page.locator('.face').first().click();
    await phone.page.locator('.companion').first().waitFor();
    await expect.poll(() => phone.page.getByRole('textbox').count()).toBe(0);
    await phone.page.keyboard.press('Escape');
    await expect.poll(() => phone.page.getByRole('link', { name: 'Choose cards' }).count()).toBe(0);
    const beyond = await phone.page.request.get('/api/supplies');
    expect(beyond.status()).toBe(403);

    const stranger = await at().open('phone', { baseURL: address });
    await stranger.page.goto(`/#code=${shown.code}`);
    await stranger.page
      .getByRole('alert')
      .getByText(/without a key/)
      .waitFor();

    await page.getByRole('button', { name: 'Use my phone' }).click();
    await dialog.getByRole('button', { name: 'Do not let in any more: Phone' }).click();
    await dialog
      .getByRole('button', { name: 'Do not let in any more: Phone' })
      .waitFor({ state: 'detached' });
    await phone.page.reload();
    await phone.page
      .getByRole('alert')
      .getByText(/without a key/)
      .waitFor();

    expect([...laptop.faults, ...phone.faults, ...stranger.faults]).toEqual([]);
    for (const { context } of [laptop, phone, stranger]) await context.close();
  });
}

/** A service that other devices can reach, on an empty folder; it prints a code for the first device. */
async function onNetwork(): Promise<{ address: string; code: string }> {
  const folder = await mkdtemp(path.join(os.tmpdir(), 'plyhue-network-'));
  const port = await freePort();
  const service = startService(port, folder, { HOST: '0.0.0.0', DEMO: 'off' });
  onTestFinished(async () => {
    await ended(service);
    await rm(folder, { recursive: true, force: true, maxRetries: 5 });
  });
  const gone = once(service, 'exit').then(() => {
    throw new Error('The service ended before it printed a code.');
  });
  const printed = (async () => {
    for await (const line of createInterface({ input: service.stdout! })) {
      const code = /#code=([\w-]+)/.exec(line)?.[1];
      if (code !== undefined) return code;
    }
    throw new Error('The service printed no code.');
  })();
  const code = await Promise.race([printed, gone]);
  gone.catch(() => undefined);
  return { address: `http://127.0.0.1:${port}`, code };
}
