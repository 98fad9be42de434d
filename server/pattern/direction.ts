import type { Labels } from '../colour/label-pixels.ts';
import { WAVES, motifsOf } from './motifs.ts';
import type { Motif } from './motifs.ts';
import type { PatternTraits } from './traits.ts';

/**
 * Whether a print may be turned: it has an up, it looks the same upside down, or any turn will do.
 *
 * Each shape's outline is measured by how it faces. A triangle, a leaf or a boat faces otherwise when it is
 * turned by half, a stripe or a lens when turned by a quarter, a disc never. When the shapes of one
 * colour agree in that, the print has a direction; tossed shapes cancel each other out. Rows of zigzag face all ways alike,
 * yet run along one; so do fish: long shapes that lie alike make a print two-way as well.
 *
 * Takes       which colour each pixel shows, which colour is the ground, and how many repeats of the print the
 *             sheet holds (1 when it does not repeat): shapes of one repeat count once.
 * Gives       the direction. Which end is up cannot be read from outlines, only the line along which the
 *             print runs: the end that lay at the top (or on the left) of the photo is taken for it.
 * Good up to  prints of several shapes a colour; a print whose colours follow each other in one order
 *             (light to dark stripes) counts as two-way.
 */
export function directionOf(
  labels: Labels,
  ground: number,
  repeats: number,
): Pick<PatternTraits, 'direction' | 'up'> {
  const motifs = motifsOf(labels, ground);
  const all = outlineOf(motifs);
  const colours = [...new Set(motifs.map(({ label }) => label))].map((label) =>
    motifs.filter((motif) => motif.label === label),
  );
  for (const wave of [3, 5]) {
    const pointing = colours.filter((shapes) => pointsOneWay(shapes, wave, repeats));
    if (pointing.reduce((sum, shapes) => sum + outlineOf(shapes), 0) > MOST * all)
      return { direction: 'one-way', up: upOf(pointing.map((shapes) => common(shapes, wave))) };
  }
  const lined = [2, 6]
    .map((wave) => common(motifs, wave))
    .some(({ strength, agreement }) => strength > LINED && agreement > AGREED);
  return { direction: lined || lieAlike(motifs) ? 'two-way' : 'none', up: 0 };
}

/** A print points one way when the colours that do have this part of all outline. */
const MOST = 0.4;
/** Part of the outline that has to face otherwise after half a turn, and after a quarter. */
const POINTED = 0.06;
/**
 * Part of the outline that belongs to shapes which each face some way themselves: a band that the sheet's rim cuts shows
 * one of its two edges, and that alone is no facing of the bands.
 */
const FACING = 0.5;
const LINED = 0.15;
/** How long shapes are that lie alike, and how well they agree: the mean over the outline, as parts of 1. */
const LONG = 0.3;
const LIE_ALIKE = 0.55;
/** Shapes agree when together they keep this part of what each has for itself; ten tossed keep a third. */
const AGREED = 0.65;
/**
 * Two shapes or a few more may agree by chance, so they must agree more and stand upright. A single shape
 * that comes again and again points one way whatever it is.
 */
const FEW = 5;
const AGREED_WHEN_FEW = 0.9;

function pointsOneWay(shapes: readonly Motif[], wave: number, repeats: number): boolean {
  const { strength, agreement, across, down } = common(shapes, wave);
  if (strength < POINTED || agreement < AGREED) return false;
  const facing = shapes.filter((shape) => common([shape], wave).strength >= POINTED);
  if (outlineOf(facing) < FACING * outlineOf(shapes)) return false;
  const different = shapes.length / repeats;
  if (different >= FEW || different < 2) return true;
  const lean = Math.min(Math.abs(across), Math.abs(down)) / Math.hypot(across, down);
  return agreement > AGREED_WHEN_FEW && lean < 0.4;
}

/** Whether the shapes are long and lie along one line: by the second moments of their outlines. */
function lieAlike(motifs: readonly Motif[]): boolean {
  let [across, slanted, alone] = [0, 0, 0];
  for (const { outline, places } of motifs) {
    const [x, y, xx, yy, xy] = Array.from(places, (sum) => sum / outline) as [
      number,
      number,
      number,
      number,
      number,
    ];
    const [wide, high, askew] = [xx - x * x, yy - y * y, xy - x * y];
    const by = outline / Math.max(1e-9, wide + high);
    across += by * (wide - high);
    slanted += by * 2 * askew;
    alone += by * Math.hypot(wide - high, 2 * askew);
  }
  const size = Math.hypot(across, slanted);
  return size > LONG * Math.max(1, outlineOf(motifs)) && size > LIE_ALIKE * alone;
}

interface Common {
  /** The shared wave as a part of the outline, in [0, 1], and its two components. */
  readonly strength: number;
  readonly across: number;
  readonly down: number;
  /** 1 when all shapes face alike, about 1 / sqrt(n) for n tossed ones. */
  readonly agreement: number;
}

function common(shapes: readonly Motif[], wave: number): Common {
  const index = 2 * WAVES.findIndex((known) => known === wave);
  let [across, down, alone] = [0, 0, 0];
  for (const { waves } of shapes) {
    across += waves[index]!;
    down += waves[index + 1]!;
    alone += Math.hypot(waves[index]!, waves[index + 1]!);
  }
  const outline = Math.max(1, outlineOf(shapes));
  const size = Math.hypot(across, down);
  return {
    strength: size / outline,
    across: across / outline,
    down: down / outline,
    agreement: alone === 0 ? 0 : size / alone,
  };
}

/**
 * Shapes stand upright when their left and right sides are alike: their odd waves then have a part down the
 * sheet only. When it lies clearly across instead, the sheet lay on its side.
 */
function upOf(pointing: readonly Common[]): PatternTraits['up'] {
  const across = pointing.reduce((sum, wave) => sum + Math.abs(wave.across), 0);
  const down = pointing.reduce((sum, wave) => sum + Math.abs(wave.down), 0);
  return across > 1.5 * down ? 90 : 0;
}

function outlineOf(shapes: readonly Motif[]): number {
  return shapes.reduce((sum, { outline }) => sum + outline, 0);
}
