import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { chooseCards, goTo, openDemoPad, planCards } from '../hands.ts';

/** Every screen and state that is looked at, in an order in which one leads to the next. */
type Scene = readonly [name: string, come: (page: Page) => Promise<void>];

export function scenesInOrder(): readonly Scene[] {
  return [
    ['pads', (page) => opened(page.goto('/'), page, '.pad-stack')],
    ['about a pad', aboutPad],
    ['new pad', newPad],
    ['own sheet size', (page) => page.getByRole('radio', { name: 'another' }).check()],
    ['settings', settings],
    ['pad', openDemoPad],
    ['colour lit', (page) => page.locator('.story-strip').first().click()],
    ['one side', (page) => opened(page.locator('.face').first().click(), page, '.companion')],
    ['photos', photos],
    ['corners', (page) => opened(page.locator('.laid').first().click(), page, '.corner-handle')],
    ['scraps', scraps],
    ['back chooser', backChooser],
    ['phone', phone],
    ['refused photo', refusedPhoto],
    ['cards', cards],
    ['plan', (page) => planCards(page, 2)],
    ['next plans', (page) => unfolded(page, 'The next best plans', '.other-plan')],
    ['mends', (page) => unfolded(page, 'What would mend', '.opened')],
    ['sheet gone', sheetGone],
    ['sheet counts', (page) => unfolded(page, 'More sheets, or fewer', '.sheet-count')],
    ['one card', (page) => opened(page.locator('.planned-card').first().click(), page, 'dialog')],
    [
      'alternatives',
      (page) => opened(page.locator('.layer-stuff').first().click(), page, '.alternatives'),
    ],
    ['guide', guide],
    ['guide ticked', (page) => page.getByRole('button', { name: 'Done' }).click()],
    [
      'guide of cardstock and cards',
      (page) =>
        opened(page.getByRole('button', { name: /^Build card 1/ }).click(), page, '.piece-drawing'),
    ],
    ['guide for a class', forClass],
    [
      'own cutting table',
      (page) => opened(page.getByText('By a cutting table of your own').click(), page, '.scheme'),
    ],
    ['what is left', (page) => page.getByRole('button', { name: 'Keep what is left' }).click()],
    ['supplies', supplies],
    ['match board', matchBoard],
    [
      'match of a spot',
      (page) => opened(page.locator('.tapped-swatch').click(), page, '.yours-beside'),
    ],
    ['greeting board', (page) => asked(page, 'Greeting', '.stamped-line')],
    ['best board', (page) => asked(page, 'Best of yours', '.best-board')],
    ['new supply', newSupply],
    ['no plan', (page) => opened(page.goto('/pads/nobody/plan'), page, '.empty')],
    ['lost pad', (page) => opened(page.goto('/pads/nobody/pad'), page, '.mishap')],
  ];
}

async function opened(act: Promise<unknown>, page: Page, thing: string): Promise<void> {
  await act;
  await page.locator(thing).first().waitFor();
}

async function aboutPad(page: Page): Promise<void> {
  const about = page.getByRole('button', { name: 'About the pad Tidewrack' });
  await opened(about.click(), page, 'dialog');
}

async function newPad(page: Page): Promise<void> {
  await page.keyboard.press('Escape');
  await page.getByRole('dialog').waitFor({ state: 'detached' });
  await opened(page.getByRole('button', { name: 'Start a new pad' }).click(), page, 'dialog');
}

async function settings(page: Page): Promise<void> {
  await page.keyboard.press('Escape');
  await opened(page.getByRole('button', { name: 'Your table' }).click(), page, 'dialog');
}

async function photos(page: Page): Promise<void> {
  await page.keyboard.press('Escape');
  await opened(goTo(page, 'Photos'), page, '.tableful');
}

async function scraps(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Colour scraps' }).click();
  await page.locator('.scrap-field').click({ position: { x: 60, y: 60 } });
  await page.locator('.scrap-mark').waitFor();
}

async function backChooser(page: Page): Promise<void> {
  await page.keyboard.press('Escape');
  await opened(page.locator('.pair-button').first().click(), page, 'dialog');
}

async function phone(page: Page): Promise<void> {
  await page.keyboard.press('Escape');
  const button = page.getByRole('button', { name: 'Use my phone' });
  await opened(button.click(), page, 'dialog .mishap');
}

async function refusedPhoto(page: Page): Promise<void> {
  await page.keyboard.press('Escape');
  // A file of the disk: one made within the page by the test runner may never arrive in a fresh browser.
  const folder = await mkdtemp(path.join(os.tmpdir(), 'plyhue-letter-'));
  const letter = path.join(folder, 'letter.jpg');
  await writeFile(letter, 'not a photo');
  await page.getByLabel('Choose photos').setInputFiles(letter);
  // The process that reads photos may have to be started first.
  await page.locator('.refused-photos .mishap').waitFor();
  await rm(folder, { recursive: true });
}

async function cards(page: Page): Promise<void> {
  await page.getByRole('button', { name: /^Take away/ }).click();
  await chooseCards(page, 2);
}

async function unfolded(page: Page, title: string, thing: string): Promise<void> {
  const found = page.locator('.opening').filter({ hasText: title });
  await found.locator('summary').first().click();
  await found.locator(thing).first().waitFor();
}

async function sheetGone(page: Page): Promise<void> {
  await unfolded(page, 'If a sheet is gone', '.swatch-button');
  const gone = page.locator('.opening').filter({ hasText: 'If a sheet is gone' });
  await opened(gone.locator('.swatch-button').first().click(), page, '.opened .other-plan');
}

async function guide(page: Page): Promise<void> {
  await page.keyboard.press('Escape');
  await opened(page.getByRole('link', { name: 'To the cutting guide' }).click(), page, '.now');
}

async function forClass(page: Page): Promise<void> {
  await page.getByText('For several people, or in higher stacks').click();
  const more = page.getByRole('button', { name: /^One more: People/ });
  await opened(more.click(), page, '.sheets-to-have');
  await opened(
    page
      .getByRole('button', { name: /^Sheet \d+/ })
      .first()
      .click(),
    page,
    '.square',
  );
}

async function supplies(page: Page): Promise<void> {
  await opened(page.getByRole('link', { name: 'Supplies' }).click(), page, '.supply');
}

async function matchBoard(page: Page): Promise<void> {
  const papers = page.getByRole('list', { name: 'Papers' });
  await opened(papers.getByRole('button').first().click(), page, '.match-board');
}

async function asked(page: Page, question: string, thing: string): Promise<void> {
  await opened(page.getByRole('radio', { name: question }).check(), page, thing);
}

async function newSupply(page: Page): Promise<void> {
  await opened(page.getByRole('button', { name: 'Add cardstock or ink' }).click(), page, 'dialog');
  await page.getByRole('radio', { name: 'I type it' }).check();
}
