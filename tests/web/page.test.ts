import { afterAll, beforeAll, describe } from 'vitest';
import { findBrowser, NO_BROWSER } from './find-browser.ts';
import { chooseAnew } from './journeys/choose-anew.ts';
import { corners } from './journeys/corners.ts';
import { cutAnotherWay } from './journeys/cut-another-way.ts';
import { errors } from './journeys/errors.ts';
import { everyScene } from './journeys/every-scene.ts';
import { guideAway } from './journeys/guide-away.ts';
import { keyboardOnly } from './journeys/keyboard-only.ts';
import { laidBy } from './journeys/laid-by.ts';
import { leafThrough } from './journeys/leaf-through.ts';
import { matchCheck } from './journeys/match-check.ts';
import { nothingLost } from './journeys/nothing-lost.ts';
import { ownCard } from './journeys/own-card.ts';
import { phoneBeside } from './journeys/phone-beside.ts';
import { photosToGuide } from './journeys/photos-to-guide.ts';
import { pinThenUndo } from './journeys/pin-then-undo.ts';
import { printUp } from './journeys/print-up.ts';
import { pullPapers } from './journeys/pull-papers.ts';
import { scraps } from './journeys/scraps.ts';
import { supplyScraps } from './journeys/supply-scraps.ts';
import { takenAway } from './journeys/taken-away.ts';
import { swappedFaces } from './journeys/swapped-faces.ts';
import { thirtyPhotos } from './journeys/thirty-photos.ts';
import { touchASheet } from './journeys/touch-a-sheet.ts';
import { whatElse } from './journeys/what-else.ts';
import { twoDevices } from './journeys/two-devices.ts';
import { layTable, type Table } from './table.ts';

const browser = findBrowser();
const title = browser === null ? `the page (skipped: ${NO_BROWSER})` : 'the page';

describe.skipIf(browser === null)(title, () => {
  let table: Table;
  beforeAll(async () => {
    table = await layTable();
  });
  afterAll(async () => {
    await table.close();
  });
  const at = (): Table => table;

  describe('from photos to the guide', () => photosToGuide(at));
  describe('pin and undo', () => pinThenUndo(at));
  describe('papers pulled from card to card', () => pullPapers(at));
  describe('all papers chosen anew', () => chooseAnew(at));
  describe('what else a plan could be', () => whatElse(at));
  describe('swapped faces', () => swappedFaces(at));
  describe('the up of a print', () => printUp(at));
  describe('corners', () => corners(at));
  describe('a sheet is touched', () => touchASheet(at));
  describe('scraps', () => scraps(at));
  describe('scraps beside supplies', () => supplyScraps(at));
  describe('leafing through layouts', () => leafThrough(at));
  describe('a card of her own', () => ownCard(at));
  describe('cut another way', () => cutAnotherWay(at));
  describe('the guide out of reach', () => guideAway(at));
  describe('match check', () => matchCheck(at));
  describe('thirty photos', () => thirtyPhotos(at));
  describe('nothing is lost', () => nothingLost(at));
  describe('laid by on this device', () => laidBy(at));
  describe('taken away on its way', () => takenAway(at));
  describe('two devices', () => twoDevices(at));
  describe('phone beside laptop', () => phoneBeside(at));
  describe('errors', () => errors(at));
  describe('keyboard', () => keyboardOnly(at));
  describe('every screen and state', () => everyScene(at));
});
