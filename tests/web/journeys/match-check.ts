import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import type { Plan } from '../../../server/contract/plans.ts';
import { goTo, openDemoPad, picturesDrawn, plannedDemo } from '../hands.ts';
import { cardstockPhoto } from '../sample-photos.ts';
import type { Table } from '../table.ts';

/** One ink against the papers, with a phone in the hand. */
export function matchCheck(at: () => Table): void {
  it('types an ink colour and says in words how it matches a paper', async () => {
    const { page, context, faults } = await at().open('phone');
    await openDemoPad(page);
    await page.getByRole('link', { name: 'Supplies' }).click();
    await page.getByRole('button', { name: 'Add cardstock or ink' }).click();
    await page.getByRole('radio', { name: 'ink' }).check();
    // A choice that is made is bold, and moves none beside it.
    const typing = page.getByRole('radio', { name: 'I type it' });
    const laidAt = await typing.boundingBox();
    await page.getByRole('radio', { name: 'on a photo that is here' }).check();
    await page.getByRole('button', { name: 'The photo: touch the colour' }).waitFor();
    expect(await typing.boundingBox()).toEqual(laidAt);
    await typing.check();
    await page.getByLabel('The colour').fill('#ff00ff');
    await page.getByLabel('Name', { exact: true }).fill('Loud ink');
    await page.getByRole('button', { name: 'Add it' }).click();
    await page.getByRole('article', { name: 'Loud ink' }).waitFor();

    await page.getByRole('list', { name: 'Papers' }).getByRole('button').first().click();
    // A spot on the paper chooses the colour under it; the verdict then speaks of that colour.
    const paper = page.locator('.tapped-swatch');
    await picturesDrawn(page, '.tapped-swatch img', 1);
    await paper.click({ position: { x: 60, y: 60 } });
    const picked = page.locator('.palette-pick[aria-pressed="true"]');
    await picked.waitFor();
    const spoken = page.locator('.check-spot .big-match');
    const colour = (await picked.textContent())!.trim();
    await expect.poll(() => spoken.textContent()).toContain(colour);
    // The verdict stays with the touched colour: another of hers is laid against that one.
    await page.getByRole('button', { name: 'Take the ring away' }).waitFor();
    await expect.poll(() => page.locator('.touched-place').count()).toBe(1);
    await expect.poll(() => spoken.textContent()).toContain('the nearest of yours');
    // What is said on a button is said of that colour too, and the large picture says the same.
    const buttons = page.locator('.yours-beside .supply-button');
    const first = await buttons.count();
    for (let at = 0; at < first; at++) {
      const verdict = (await buttons.nth(at).locator('.verdict-word').textContent())!.trim();
      await buttons.nth(at).click();
      await expect.poll(() => buttons.nth(at).getAttribute('aria-pressed')).toBe('true');
      await expect
        .poll(async () => (await spoken.locator('.big-verdict').textContent())!.trim())
        .toBe(verdict);
      await expect.poll(() => spoken.textContent()).toContain(`beside the paper’s ${colour}`);
    }
    // Another colour of the paper brings its own verdicts; touched again, the ring is off.
    const other = page.locator('.palette-pick[aria-pressed="false"]').first();
    const called = (await other.textContent())!.trim();
    await other.click();
    await expect.poll(() => picked.textContent()).toContain(called);
    await page.getByRole('heading', { name: `Yours beside its ${called}` }).waitFor();
    const laid = page.locator('.supply-button').filter({ hasText: 'Loud ink' });
    await laid.click();
    await expect.poll(() => laid.getAttribute('aria-pressed')).toBe('true');
    const big = page.getByRole('group', { name: 'Loud ink beside the paper' });
    // Magenta at the edge of sRGB is far from every colour of a sea-worn pad.
    await expect.poll(() => big.locator('.big-verdict').textContent()).toContain('apart');
    await expect.poll(() => big.textContent()).toMatch(/(stronger|redder|bluer)/);
    // The direction is said once.
    await expect
      .poll(async () => (await big.textContent())!.match(/(much|clearly) \w+/gi)?.length)
      .toBe(1);
    const figures = big.getByText(/Difference \d+\.\d, give or take \d/);
    await expect.poll(() => figures.isVisible()).toBe(false);
    await big.getByText('In figures').click();
    await figures.waitFor();
    await expect.poll(() => big.locator('.caution').textContent()).toContain('not a measurement');

    await page.getByLabel('Name of Loud ink').fill('Louder ink');
    await page.getByLabel('Name of Loud ink').press('Enter');
    await page.getByRole('article', { name: 'Louder ink' }).waitFor();
    await page.reload();
    await page.getByRole('article', { name: 'Louder ink' }).waitFor();
    expect(faults).toEqual([]);
    await context.close();
  });

  it('shows whether a greeting can be read in her inks, with a clear no where it cannot', async () => {
    const { page, context, faults } = await at().open('tablet');
    await openDemoPad(page);
    await page.getByRole('link', { name: 'Supplies' }).click();
    await bringList(page, 'kind,name,L,a,b,sheets\nink,Pale tide,93,0,3,\nink,Night,14,0,0,\n');
    await page.getByRole('article', { name: 'Night' }).waitFor();
    await page.getByRole('list', { name: 'Papers' }).getByRole('button').first().click();
    await page.getByRole('radio', { name: 'Greeting' }).check();
    const strips = page.getByRole('list', { name: 'What it is stamped on' });
    await strips.getByRole('button').first().waitFor();
    const strip = strips.getByRole('button', { name: /white/ }).first();
    await strip.click();
    const line = (ink: string): ReturnType<typeof page.locator> =>
      page.locator('.stamped-line').filter({ hasText: ink });
    await expect
      .poll(() => line('Night').locator('.verdict-word').textContent())
      .toContain('reads well');
    await expect
      .poll(() => line('Pale tide').locator('.verdict-word').textContent())
      .toContain('cannot be read');
    await expect
      .poll(() => page.locator('.greeting-board .caution').textContent())
      .toContain('estimate');
    expect(faults).toEqual([]);
    await context.close();
  });

  it('finds the squares in one photo, numbers them on it, and renames one in place', async () => {
    const { page, context, faults } = await at().open('phone');
    await page.goto('/supplies');
    await page.getByRole('button', { name: 'Add cardstock or ink' }).click();
    await page.getByRole('radio', { name: 'cardstock' }).check();
    await page.getByLabel('The photo').setInputFiles(cardstockPhoto);
    await page.getByLabel('Name', { exact: true }).fill('Drawer');
    await page.getByRole('button', { name: 'Add it' }).click();
    const found = page.getByRole('dialog', { name: 'Found in your photo' });
    await found.waitFor();
    await picturesDrawn(page, '.found-photo img', 1);
    // Eight squares lie in it beside the white card, and each has its number where it lies.
    await expect.poll(() => found.locator('.found-photo .found-number').count()).toBe(8);
    const [first, last] = [
      (await found.locator('.found-photo .found-number').first().boundingBox())!,
      (await found.locator('.found-photo .found-number').last().boundingBox())!,
    ];
    expect(last.y).toBeGreaterThan(first.y);
    await found.getByLabel('Name of number 2').fill('Wet sand');
    await found.getByLabel('Name of number 2').press('Enter');
    await found.getByRole('button', { name: 'Done' }).click();
    await page.getByRole('article', { name: 'Wet sand' }).waitFor();
    await page.reload();
    await page.getByRole('article', { name: 'Wet sand' }).waitFor();
    await expect.poll(() => page.getByRole('article', { name: /^Drawer / }).count()).toBe(7);
    expect(faults).toEqual([]);
    await context.close();
  });

  it('asks once whether two colours that can hardly be told apart are the same, and keeps both', async () => {
    const { page, context, faults } = await at().open('tablet');
    await page.goto('/supplies');
    await bringList(
      page,
      'kind,name,L,a,b,sheets\nink,Plum dusk,31,22,-9,\nink,Plum dawn,31,22,-9,\n',
    );
    const asked = page.getByRole('region', { name: 'Twice the same?' });
    const pair = asked.getByRole('listitem').filter({ hasText: /Plum/ });
    await pair.getByRole('button', { name: /^They are two: Plum/ }).click();
    await pair.waitFor({ state: 'detached' });
    await page.reload();
    await page.getByRole('article', { name: 'Plum dawn' }).waitFor();
    await page.getByRole('article', { name: 'Plum dusk' }).waitFor();
    await page.waitForLoadState('networkidle');
    await expect.poll(() => pair.count()).toBe(0);
    expect(faults).toEqual([]);
    await context.close();
  });

  it('takes the name of a colour, says that it is rough, and says what else can be typed', async () => {
    const { page, context, faults } = await at().open('tablet');
    await page.goto('/supplies');
    await page.getByRole('button', { name: 'Add cardstock or ink' }).click();
    await page.getByRole('radio', { name: 'I type it' }).check();
    const field = page.getByLabel('The colour');
    await field.fill('mossy nonsense');
    const said = page.locator('dialog .field').filter({ hasText: 'The colour' });
    await expect.poll(() => said.textContent()).toContain('No colour of that name');
    await field.fill('forest green');
    await expect.poll(() => said.textContent()).toContain('only roughly');
    await page.getByLabel('Name', { exact: true }).fill('Wood edge');
    await page.getByRole('button', { name: 'Add it' }).click();
    await page.getByRole('article', { name: 'Wood edge' }).waitFor();
    expect(faults).toEqual([]);
    await context.close();
  });

  it('offers to choose anew when a cardstock came after the plan', async () => {
    const { page, context, faults } = await at().open('laptop');
    await plannedDemo(page, 2);
    await expect.poll(() => page.locator('.choose-again').count()).toBe(0);
    await page.getByRole('link', { name: 'Supplies' }).click();
    await bringList(page, 'kind,name,L,a,b,sheets\ncardstock,New dune,80,2,15,9\n');
    await page.getByRole('article', { name: 'New dune' }).waitFor();
    await goTo(page, 'Plan');
    const notice = page.locator('.choose-again');
    await expect.poll(() => notice.textContent()).toContain('New dune');
    // A print is turned meanwhile: the plan says so, and the papers stay where they lie all the same.
    const { papers, sheetsUsed, pad } = await planShown(page);
    const { side, up, direction } = papers[0]!.sides[0]!;
    const turn = (to: number | string): Promise<unknown> =>
      page.request.patch(`/api/sides/${side}`, { data: { up: to } });
    await turn((up + 90) % 360);
    const since = page.locator('.papers-changed');
    await expect.poll(() => since.textContent()).toContain('Turned since this plan was made');
    const first = page.url();
    await notice.getByRole('button', { name: 'Choose cardstock and inks again' }).click();
    await page.waitForURL((url) => url.href !== first);
    await expect.poll(() => page.locator('.choose-again').count()).toBe(0);
    const chosen = await planShown(page);
    expect(chosen.sheetsUsed).toEqual(sheetsUsed);
    expect(chosen.papers).toEqual(papers);
    const before = page.url();
    await since.getByRole('button', { name: 'Plan again with the papers as they are' }).click();
    await page.waitForURL((url) => url.href !== before);
    await expect.poll(() => page.locator('.papers-changed').count()).toBe(0);
    const now = (await planShown(page)).papers[0]!.sides[0];
    expect(now).toMatchObject({ direction: 'one-way', up: (up + 90) % 360 });
    expect(pad).toBe((await planShown(page)).pad);
    await turn(direction === 'one-way' ? up : 'none');
    expect(faults).toEqual([]);
    await context.close();
  });

  it('adds the colour under a touch on a photo of the pad', async () => {
    const { page, context, faults } = await at().open('tablet');
    await openDemoPad(page);
    await page.getByRole('link', { name: 'Supplies' }).click();
    await page.getByRole('button', { name: 'Add cardstock or ink' }).click();
    await page.getByRole('radio', { name: 'on a photo that is here' }).check();
    const photo = page.getByRole('button', { name: 'The photo: touch the colour' });
    await picturesDrawn(page, '.touched-photo img', 1);
    await expect.poll(() => page.getByRole('button', { name: 'Add it' }).isDisabled()).toBe(true);
    const box = (await photo.boundingBox())!;
    await photo.click({ position: { x: 0.02 * box.width, y: 0.5 * box.height } });
    await page.locator('.touched-place').waitFor();
    await page.getByLabel('Name', { exact: true }).fill('Table top');
    await page.getByRole('button', { name: 'Add it' }).click();
    await page.getByRole('article', { name: 'Table top' }).waitFor();
    expect(faults).toEqual([]);
    await context.close();
  });

  it('counts the sheets left, and refuses a list with a wrong line by naming it', async () => {
    const { page, context, faults } = await at().open('laptop');
    await page.goto('/supplies');
    await bringList(page, 'kind,name,L,a,b,sheets\ncardstock,Dune,80,2,15,\n');
    await page.getByRole('article', { name: 'Dune' }).waitFor();
    const sheets = page.getByLabel('Sheets left of Dune');
    await sheets.fill('7');
    await sheets.press('Tab');
    await expect
      .poll(async () => (await (await page.request.get('/api/supplies.csv')).text()).split('\r\n'))
      .toContain('cardstock,Dune,80,2,15,7');
    await bringList(page, 'kind,name,L,a,b,sheets\ncardstock,Reef,80,2,15,\npaint,Oil,1,2,3,\n');
    await expect.poll(() => page.locator('.mishap').textContent()).toContain('line 3, kind');
    await expect.poll(() => page.getByRole('article', { name: 'Reef' }).count()).toBe(0);
    expect(faults).toEqual([]);
    await context.close();
  });
}

/** The plan that the page shows, as the service tells it. */
async function planShown(page: Page): Promise<Plan> {
  const id = new URL(page.url()).pathname.split('/').at(-1)!;
  return (await (await page.request.get(`/api/plans/${id}`)).json()) as Plan;
}

async function bringList(page: Page, csv: string): Promise<void> {
  await page
    .getByLabel('Bring a list (CSV)')
    .setInputFiles({ name: 'list.csv', mimeType: 'text/csv', buffer: Buffer.from(csv) });
}
