import type { Labels } from '../colour/label-pixels.ts';
import { PARTS, SECTORS, countOutlines } from './outline-counts.ts';
import type { OutlineCount } from './outline-counts.ts';
import type { PatternTraits } from './traits.ts';

/**
 * Whether a print may be turned: it has an up, it looks the same upside down, or any turn will do.
 *
 * The outline of each colour is counted by the direction in which it faces. Dots, stripes and tossed
 * flowers face as much one way as the other; shapes that all point one way do not. How much the parts of
 * the sheet differ among themselves says what counts as a difference.
 *
 * Takes       which colour each pixel shows, and how many colours there are.
 * Gives       the direction. Which end is up cannot be read from outlines, only the line along which the
 *             print runs: the end that lay at the top (or on the left) of the photo is taken for it.
 * Good up to  prints with some dozens of shapes; a single picture that fills the sheet counts as one-way
 *             only when its outline is lopsided.
 */
export function directionOf(
  labels: Labels,
  colours: number,
): Pick<PatternTraits, 'direction' | 'up'> {
  const counts = countOutlines(labels, colours);
  const whole = total(counts);
  const enough = ENOUGH * lengthOf(whole);
  const pointing = counts.filter(
    (count) => lengthOf(count) > enough && surelyUnlike(count, SECTORS / 2, ODD),
  );
  if (pointing.length > 0) return { direction: 'one-way', up: upOf(total(pointing)) };
  const lined = surelyUnlike(whole, SECTORS / 4, TWOFOLD);
  return { direction: lined ? 'two-way' : 'none', up: 0 };
}

/** A colour with less than this part of all outline says nothing about the print. */
const ENOUGH = 0.1;
/** Standard errors by which a print must differ from its turned self ... */
const SURE = 4;
/** ... and part of the outline that must face otherwise: less is no use to her, however sure. */
const LEAST = 0.05;
/** Waves around the circle that change sign in half a turn, and in a quarter turn. */
const ODD = [3, 5, 7];
const TWOFOLD = [2, 6];

/** Whether outlines differ from themselves turned by `shift` sectors, in any of the given waves. */
function surelyUnlike(count: OutlineCount, shift: number, waves: readonly number[]): boolean {
  const outline = lengthOf(count) / count.length;
  if (outline === 0) return false;
  return waves.some((wave) => {
    const found = count.map((part) => waveOf(part, shift, wave));
    const [re, im] = [mean(found.map(([r]) => r)), mean(found.map(([, i]) => i))];
    const spread = mean(found.map(([r, i]) => (r - re) ** 2 + (i - im) ** 2));
    const size = Math.hypot(re, im);
    return size > LEAST * outline && size > SURE * Math.sqrt(spread / count.length);
  });
}

function waveOf(part: Float64Array, shift: number, wave: number): [number, number] {
  let [re, im] = [0, 0];
  for (let sector = 0; sector < SECTORS; sector++) {
    const odd = (part[sector]! - part[(sector + shift) % SECTORS]!) / 2;
    const angle = (2 * Math.PI * wave * (sector + 0.5)) / SECTORS;
    re += odd * Math.cos(angle);
    im += odd * Math.sin(angle);
  }
  return [re, im];
}

/** Motifs stand upright when their left and right sides are alike; else the sheet lay on its side. */
function upOf(count: OutlineCount): PatternTraits['up'] {
  const all = new Float64Array(SECTORS);
  for (const part of count) part.forEach((value, sector) => (all[sector]! += value));
  let [leftRight, upDown] = [0, 0];
  for (let sector = 0; sector < SECTORS; sector++) {
    const mirroredX = (SECTORS + SECTORS / 2 - 1 - sector) % SECTORS;
    const mirroredY = SECTORS - 1 - sector;
    leftRight += Math.abs(all[sector]! - all[mirroredX]!);
    upDown += Math.abs(all[sector]! - all[mirroredY]!);
  }
  return leftRight <= upDown ? 0 : 90;
}

function total(counts: readonly OutlineCount[]): OutlineCount {
  return Array.from({ length: PARTS * PARTS }, (_, part) => {
    const sum = new Float64Array(SECTORS);
    for (const count of counts) count[part]!.forEach((value, sector) => (sum[sector]! += value));
    return sum;
  });
}

function lengthOf(count: OutlineCount): number {
  return count.reduce((sum, part) => sum + part.reduce((all, value) => all + value, 0), 0);
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
