import { expect, it } from 'vitest';
import {
  chooseCards,
  goTo,
  holdBack,
  openDemoPad,
  picturesDrawn,
  planCards,
  plannedDemo,
  startPad,
} from '../hands.ts';
import { samplePair } from '../sample-photos.ts';
import type { Table } from '../table.ts';

/** Reload, a lost connection, a second tab: what she did stays. */
export function nothingLost(at: () => Table): void {
  it('opens pad and plan again after a reload without the service', async () => {
    const { page, context } = await at().open('laptop', { serviceWorkers: 'allow' });
    await plannedDemo(page, 2);
    await page.evaluate('navigator.serviceWorker.ready');
    await page.reload();
    await picturesDrawn(page, '.planned-card .drawn-card', 2);
    await context.setOffline(true);
    await page.reload();
    await picturesDrawn(page, '.planned-card .drawn-card', 2);
    await goTo(page, 'Pad');
    await page.getByRole('heading', { name: 'Tidewrack' }).waitFor();
    await context.close();
  });

  it('opens a pad again without the service after the first visit of all', async () => {
    const { page, context, faults } = await at().open('laptop', { serviceWorkers: 'allow' });
    const { pads } = (await (await page.request.get('/api/pads')).json()) as {
      pads: { id: string; name: string }[];
    };
    const { id } = pads.find(({ name }) => name === 'Tidewrack')!;
    // Answers and pictures of a page that is opened for the first time are here before the offline worker.
    await page.goto(`/pads/${id}/pad`);
    await picturesDrawn(page, '.face img', 24);
    const kept = `(async () => {
      const pictures = [...document.querySelectorAll('.face img')].map(({ src }) => src);
      const wanted = ['/api/pads/${id}', ...pictures];
      return (await Promise.all(wanted.map((one) => caches.match(one)))).every(Boolean);
    })()`;
    await expect.poll(() => page.evaluate<boolean>(kept)).toBe(true);
    await context.setOffline(true);
    await page.reload();
    await page.getByRole('heading', { name: 'Tidewrack' }).waitFor();
    await picturesDrawn(page, '.face img', 24);
    expect(faults).toEqual([]);
    await context.close();
  });

  it('opens a plan that was made just now again without the service', async () => {
    const { page, context } = await at().open('laptop', { serviceWorkers: 'allow' });
    await plannedDemo(page, 2);
    await page.evaluate('navigator.serviceWorker.ready');
    await page.reload();
    await picturesDrawn(page, '.planned-card .drawn-card', 2);
    const first = page.url();
    await page.getByRole('slider', { name: /calm to busy/ }).press('ArrowRight');
    await page.waitForURL((url) => url.href !== first);
    await picturesDrawn(page, '.planned-card .drawn-card', 2);
    // Laid by once the browser has nothing better to do.
    const laidBy = `(async () => {
      const plan = '/api/plans/' + location.pathname.split('/').at(-1);
      const kept = await caches.match(plan);
      if (!kept) return false;
      const { cards } = await kept.json();
      const drawings = cards.map(({ picture }) => picture.replace(/png$/, 'svg?papers=beside'));
      return (await Promise.all(drawings.map((one) => caches.match(one)))).every(Boolean);
    })()`;
    await expect.poll(() => page.evaluate<boolean>(laidBy)).toBe(true);
    const second = page.url();
    await context.setOffline(true);
    await page.reload();
    await picturesDrawn(page, '.planned-card .drawn-card', 2);
    expect(page.url()).toBe(second);
    await goTo(page, 'Pad');
    await page.getByRole('heading', { name: 'Tidewrack' }).waitFor();
    await context.close();
  });

  it('asks again by itself for what was lost on its way', async () => {
    const { page, context, faults } = await at().open('laptop');
    await openDemoPad(page);
    let lost = 0;
    await page.route('**/api/layouts', (route) => {
      lost += 1;
      if (lost === 1) return route.fulfill({ status: 503, headers: { 'retry-after': '1' } });
      return lost <= 4 ? route.abort() : route.continue();
    });
    await goTo(page, 'Cards');
    await page.locator('.layout').first().waitFor();
    expect(lost).toBe(5);
    await expect.poll(() => page.getByRole('alert').count()).toBe(0);
    expect(faults).toEqual([]);
    await context.close();
  });

  it('fetches a screen again by itself that was lost on its way', async () => {
    const { page, context, faults } = await at().open('laptop');
    let lost = 0;
    await page.route(/\/assets\/supplies-screen-/, (route) => {
      lost += 1;
      return lost <= 2 ? route.abort() : route.continue();
    });
    await page.goto('/supplies');
    // The demo's supplies stay with its pad, so the list may be empty here.
    await page.getByRole('heading', { name: 'Cardstock and ink', level: 1 }).waitFor();
    expect(lost).toBe(3);
    expect(faults).toEqual([]);
    await context.close();
  });

  it('shows a screen whose file comes just after it was opened, on a device that is busy', async () => {
    const { page, context, faults } = await at().open('laptop');
    // As on a busy device: from the press on, whatever waits for a frame or a timer has its turn after the file.
    await page.addInitScript(`{
      const [timer, frame] = [setTimeout, requestAnimationFrame];
      let waiting = null;
      const inTurn = (act) => (waiting === null ? act() : waiting.push(act));
      window.setTimeout = (act, wait, ...rest) => timer(() => inTurn(() => act(...rest)), wait);
      window.requestAnimationFrame = (act) => frame((now) => inTurn(() => act(now)));
      window.holdTurns = () => (waiting = []);
      window.letTurns = () => {
        const held = waiting;
        waiting = null;
        held.forEach((act) => act());
      };
    }`);
    const file = /\/assets\/supplies-screen-/;
    const deliver = await holdBack(page, file);
    const asked = page.waitForRequest(file);
    await page.goto('/');
    const address = (await asked).url();
    const link = page.getByRole('link', { name: 'Supplies' });
    await link.waitFor();
    await page.evaluate('holdTurns()');
    await link.click();
    deliver();
    // It has come, and whoever waited for it has had it, before any frame is drawn.
    await page.evaluate(`import(${JSON.stringify(address)}).then(() => undefined)`);
    await page.evaluate('letTurns()');
    await page.getByRole('heading', { name: 'Cardstock and ink', level: 1 }).waitFor();
    expect(faults).toEqual([]);
    await context.close();
  });

  it('makes one plan of a wish whose answer was lost', async () => {
    const { page, context, faults } = await at().open('laptop');
    await openDemoPad(page);
    const pad = new URL(page.url()).pathname.split('/')[2];
    const made = async (): Promise<number> => {
      const answer = await page.request.get(`/api/plans?pad=${pad}`);
      return ((await answer.json()) as { plans: unknown[] }).plans.length;
    };
    const before = await made();
    let asked = 0;
    await page.route(/\/api\/plans\?/, async (route) => {
      if (route.request().method() !== 'POST') return route.continue();
      asked += 1;
      if (asked > 1) return route.continue();
      await route.fetch();
      return route.abort();
    });
    await chooseCards(page, 2);
    await planCards(page, 2);
    expect(asked).toBe(2);
    expect(await made()).toBe(before + 1);
    expect(faults).toEqual([]);
    await context.close();
  });

  it('sends a photo again by itself that was lost on its way', async () => {
    const { page, context, faults } = await at().open('phone');
    await startPad(page, 'Lost on its way');
    let lost = 0;
    await page.route('**/photos', async (route) => {
      lost += 1;
      // Once the question is lost, once the answer to it.
      if (lost === 2) await route.fetch();
      return lost <= 2 ? route.abort() : route.continue();
    });
    await page.getByLabel('Choose photos').setInputFiles(samplePair[0]!);
    await page.getByRole('button', { name: /^Fronts: \d+ sheets? found/ }).waitFor();
    await expect.poll(() => page.locator('.sending').count()).toBe(0);
    await expect.poll(() => page.locator('.tableful').count()).toBe(1);
    expect(lost).toBe(3);
    expect(faults).toEqual([]);
    await context.close();
  });

  it('takes a press that lasts while the papers under it are still coming', async () => {
    const { page, context } = await at().open('tablet');
    const letCome = await holdBack(page, /\/api\/pads\/[^/]+$/);
    await page.goto('/');
    const fan = await page
      .getByRole('link', { name: /Tidewrack/ })
      .locator('.pad-blank')
      .first()
      .boundingBox();
    await page.mouse.move(fan!.x + fan!.width / 2, fan!.y + fan!.height / 2);
    await page.mouse.down();
    letCome();
    await picturesDrawn(page, '.pad-stack img', 1);
    await page.mouse.up();
    await page.getByRole('heading', { name: 'Tidewrack' }).waitFor();
    await context.close();
  });

  it('keeps a drawing that is not kept yet on the screen, however often Escape is pressed', async () => {
    const { page, context, faults } = await at().open('laptop');
    await openDemoPad(page);
    await goTo(page, 'Cards');
    await page.getByRole('button', { name: 'Draw a card of my own' }).click();
    const editor = page.getByRole('dialog', { name: 'A card of your own' });
    await editor.getByLabel('Its name').fill('Not kept yet');
    await editor.getByLabel('Its name').press('Tab');
    for (let n = 0; n < 3; n += 1) {
      await page.keyboard.press('Escape');
      await editor.getByText('Your drawing is not kept yet.').waitFor();
    }
    await editor.getByRole('button', { name: 'Go on drawing' }).click();
    await expect.poll(() => editor.getByLabel('Its name').inputValue()).toBe('Not kept yet');
    expect(faults).toEqual([]);
    await context.close();
  });

  it('keeps what is being typed when an answer arrives meanwhile', async () => {
    const { page, context, faults } = await at().open('laptop');
    const letCome = await holdBack(page, /\/api\/layouts\/check$/);
    await openDemoPad(page);
    await goTo(page, 'Cards');
    await page.getByRole('button', { name: 'Draw a card of my own' }).click();
    const editor = page.getByRole('dialog', { name: 'A card of your own' });
    const asked = page.waitForRequest(/\/api\/layouts\/check$/);
    await editor.getByLabel('Its name').fill('Being typed');
    await asked;
    letCome();
    // What the check says is drawn in one go with the field.
    await editor.locator('.editor-told > *').first().waitFor();
    await expect.poll(() => editor.getByLabel('Its name').inputValue()).toBe('Being typed');
    await editor.getByLabel('Its name').press('Tab');
    await page.keyboard.press('Escape');
    await editor.getByText('Your drawing is not kept yet.').waitFor();
    expect(faults).toEqual([]);
    await context.close();
  });

  it('shows in a second tab at once what is chosen in the first', async () => {
    const { page, context } = await at().open('laptop');
    await openDemoPad(page);
    await goTo(page, 'Cards');
    const second = await context.newPage();
    await second.goto(page.url());
    await second.locator('.layout').first().waitFor();
    await chooseCards(page, 3);
    await second.getByText('3 cards', { exact: true }).waitFor();
    await second
      .locator('.layout')
      .first()
      .getByRole('button', { name: /^One more/ })
      .last()
      .click();
    await page.getByText('4 cards', { exact: true }).waitFor();
    await context.close();
  });

  it('sends photos after a reload that a lost connection held back', async () => {
    const { page, context } = await at().open('phone');
    await startPad(page, 'Held back');
    await page.route('**/photos', (route) => route.abort());
    await page.getByLabel('Choose photos').setInputFiles(samplePair[0]!);
    await page.getByText('The service does not answer.').waitFor();
    await page.unroute('**/photos');
    await page.reload();
    await page.getByRole('button', { name: /^Fronts: \d+ sheets? found/ }).waitFor();
    await expect.poll(() => page.locator('.sending').count()).toBe(0);
    await context.close();
  });

  it('saves a pad as one file, and brings it back after it was deleted', async () => {
    const { page, context, faults } = await at().open('tablet');
    const data = { name: 'Carried over', sheetSize: { width: '6 in', height: '6 in' } };
    await page.request.post('/api/pads', { data });
    await page.goto('/');
    const stack = page.getByRole('link', { name: /Carried over/ });
    const about = page.getByRole('button', { name: 'About the pad Carried over' });
    await about.click();
    const [saved] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('link', { name: 'Save as one file' }).click(),
    ]);
    expect(saved.suggestedFilename()).toBe('Carried-over.tar');
    const file = await saved.path();
    await page.getByRole('button', { name: 'Close' }).click();

    const bring = page.getByLabel('Bring a pad from a file');
    await bring.setInputFiles(file);
    await page
      .getByRole('alert')
      .getByText(/already here/)
      .waitFor();
    await page.getByRole('button', { name: 'Take this notice away' }).click();
    await about.click();
    await page.getByRole('button', { name: 'Delete this pad' }).click();
    await page.getByRole('button', { name: /^Yes, delete it/ }).click();
    await stack.waitFor({ state: 'detached' });
    await bring.setInputFiles(file);
    await stack.waitFor();
    await expect.poll(() => page.getByRole('alert').count()).toBe(0);
    expect(faults).toEqual([]);
    await context.close();
  });
}
