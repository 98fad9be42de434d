import type { PatternTraits } from './traits.ts';
import type { Outlines } from './outlines.ts';

/**
 * Whether a print may be turned: it has an up, it looks the same upside down, or any turn will do.
 *
 * Outlines are counted by the direction from dark to light. Dots, stripes and tossed flowers have as much
 * outline one way as the other; shapes that all point one way do not. What counts as a difference
 * is judged by how much the parts of the sheet differ among themselves.
 *
 * Takes       the outlines of a print.
 * Gives       the direction. Which way is up cannot be read from outlines alone, only the line along which
 *             it runs: the end that lay at the top (or on the left) of the photo is taken for it.
 * Good up to  prints with some dozens of shapes; a single picture that fills the sheet counts as one-way
 *             only when its outline is lopsided.
 */
export function directionOf(outlines: Outlines): Pick<PatternTraits, 'direction' | 'up'> {
  const parts = partHistograms(outlines);
  if (unlike(parts, SECTORS / 2) > SURE) return { direction: 'one-way', up: upOf(parts) };
  return { direction: unlike(parts, SECTORS / 4) > SURE ? 'two-way' : 'none', up: 0 };
}

const SECTORS = 24;
const PARTS = 6;
/** Standard errors by which a print must differ from its turned self. */
const SURE = 4;

/** The outline of each part of the sheet, counted by direction; each list adds up to the part's outline. */
function partHistograms({ width, height, strength, towardsLight }: Outlines): Float64Array[] {
  const parts = Array.from({ length: PARTS * PARTS }, () => new Float64Array(SECTORS));
  for (let y = 0, at = 0; y < height; y++) {
    const row = Math.floor((y * PARTS) / height) * PARTS;
    for (let x = 0; x < width; x++, at++) {
      const weight = strength[at]!;
      if (weight < 0.05) continue;
      const sector = Math.floor((towardsLight[at]! / (2 * Math.PI)) * SECTORS) % SECTORS;
      parts[row + Math.floor((x * PARTS) / width)]![sector]! += weight;
    }
  }
  return parts;
}

/**
 * How surely the outlines differ from those turned by `shift` sectors, in standard errors.
 *
 * The harmonics of the turned-away part are added up over the parts of the sheet; their scatter among the
 * parts is the yardstick.
 */
function unlike(parts: readonly Float64Array[], shift: number): number {
  let most = 0;
  for (const harmonic of [1, 2, 3, 5, 6, 7]) {
    const waves = parts.map((part) => wave(part, shift, harmonic));
    const [re, im] = [mean(waves.map(([r]) => r)), mean(waves.map(([, i]) => i))];
    const spread = mean(waves.map(([r, i]) => (r - re) ** 2 + (i - im) ** 2));
    const outline = mean(parts.map((part) => part.reduce((sum, value) => sum + value, 0)));
    const size = Math.hypot(re, im);
    if (size < LEAST * outline || outline === 0) continue;
    most = Math.max(most, size / Math.sqrt(spread / parts.length + 1e-9));
  }
  return most;
}

/** A lopsidedness smaller than this part of the outline is no use to her, however sure. */
const LEAST = 0.04;

function wave(part: Float64Array, shift: number, harmonic: number): [number, number] {
  let [re, im] = [0, 0];
  for (let sector = 0; sector < SECTORS; sector++) {
    const odd = part[sector]! - part[(sector + shift) % SECTORS]!;
    const angle = (2 * Math.PI * harmonic * (sector + 0.5)) / SECTORS;
    re += (odd / 2) * Math.cos(angle);
    im += (odd / 2) * Math.sin(angle);
  }
  return [re, im];
}

/** Motifs stand upright when their left and right sides are alike; else the sheet lay on its side. */
function upOf(parts: readonly Float64Array[]): PatternTraits['up'] {
  const all = new Float64Array(SECTORS);
  for (const part of parts) part.forEach((value, sector) => (all[sector]! += value));
  let [leftRight, upDown] = [0, 0];
  for (let sector = 0; sector < SECTORS; sector++) {
    const mirroredX = (SECTORS / 2 - 1 - sector + SECTORS) % SECTORS;
    const mirroredY = SECTORS - 1 - sector;
    leftRight += Math.abs(all[sector]! - all[mirroredX]!);
    upDown += Math.abs(all[sector]! - all[mirroredY]!);
  }
  return leftRight <= upDown ? 0 : 90;
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
