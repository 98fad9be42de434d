import { linearOfByte } from '../colour/curves.ts';
import { polygonArea } from '../geometry/polygon.ts';
import type { Quad } from '../geometry/points.ts';
import { whiteOf } from './correction.ts';
import type { White } from './correction.ts';
import type { Candidate } from './find-sheets.ts';
import { middleOf } from './find-sheets.ts';
import { lightAt } from './light.ts';
import type { LightField } from './light.ts';
import type { Picture } from './picture.ts';
import type { Light3 } from './tie-by-chips.ts';
import { BESIDE_CREAM, isWhite, patchOf } from './white-card.ts';
import type { Patch } from './white-card.ts';

/** The white that the photo's colours are read against. */
export interface Reference {
  readonly kind: 'found' | 'tapped' | 'none';
  /** In pixels of the preview. */
  readonly corners: Quad<'photo'> | null;
  readonly white: White;
  /** Standard error that it brings into every colour, in CIELAB units. */
  readonly error: number;
  /** The part of the hues of white papers that is open beside it, in [0, 1]. */
  readonly hueOpen: number;
  /** Part of the white that is at the camera's limit. */
  readonly burnt: number;
}

/**
 * The brightest light, channel by channel, that a good part of the photo reaches once the field is out. What is far
 * dimmer in one channel than in another is coloured and tells of no white: a coral square outshines a white
 * card in red.
 */
export function brightestOf(preview: Picture, field: LightField): [number, number, number] {
  const logs = logLight(preview, field);
  const all = brightestAmong(logs, null);
  return brightestAmong(logs, all);
}

/** Binary logarithms of light over the field, three for each of a sample of pixels. */
function logLight({ width, height, rgb }: Picture, field: LightField): Float32Array {
  const logs: number[] = [];
  for (let y = 4; y < height; y += 8)
    for (let x = 4; x < width; x += 8) {
      const here = lightAt(field, x, y);
      const at = 3 * (y * width + x);
      for (let k = 0; k < 3; k++)
        logs.push(Math.log2(Math.max(1e-5, linearOfByte[rgb[at + k]!]! / here[k]!)));
    }
  return Float32Array.from(logs);
}

/** Of all pixels, or of those that come near to the brightest of all in every channel, if there are enough. */
function brightestAmong(
  logs: Float32Array,
  near: readonly [number, number, number] | null,
): [number, number, number] {
  const bins = [0, 1, 2].map(() => new Uint32Array(BINS));
  const least = (near ?? [0, 0, 0]).map((light) => Math.log2(light * PALE));
  let counted = 0;
  for (let at = 0; at < logs.length; at += 3) {
    if (near !== null && least.some((bound, k) => logs[at + k]! < bound)) continue;
    for (let k = 0; k < 3; k++)
      bins[k]![Math.max(0, Math.min(BINS - 1, Math.round(64 * (logs[at + k]! + 12))))]!++;
    counted++;
  }
  const enough = (BRIGHT_PART * logs.length) / 3;
  if (near !== null && counted < 2 * enough) return [...near];
  return bins.map((bin) => {
    let above = 0;
    for (let at = BINS - 1; at >= 0; at--) {
      above += bin[at]!;
      if (above > enough) return 2 ** (at / 64 - 12);
    }
    return 1;
  }) as [number, number, number];
}

/** Part of the photo that has to be as bright. */
const BRIGHT_PART = 0.005;
/** Part of the brightest that something pale reaches in every channel. A judgement. */
const PALE = 0.55;
const BINS = 64 * 24;

/**
 * Finds the white card among the things on the table, or takes the one she tapped.
 *
 * Without one, the lightest large plain colour of the photo is taken for paper; that may be wrong by a
 * good deal, and the error says so.
 */
export function referenceOf(
  preview: Picture,
  field: LightField,
  others: readonly Candidate[],
  tapped: Quad<'photo'> | null,
  known: { readonly corners: Quad<'photo'>; readonly patch: Patch } | undefined,
  developed: boolean,
): Reference {
  if (tapped !== null) {
    const patch = patchOf(preview, tapped);
    if (patch !== null) return reference('tapped', tapped, patch, field, developed);
  }
  if (known !== undefined) return reference('found', known.corners, known.patch, field, developed);
  const brightest = brightestOf(preview, field);
  const whites = others.flatMap((other) => {
    const patch = patchOf(preview, other.corners);
    if (patch === null) return [];
    const relative = { ...patch, light: relativeTo(field, other.corners, patch) };
    return isWhite(relative, brightest, BESIDE_CREAM) ? [{ other, patch }] : [];
  });
  whites.sort((p, q) => polygonArea(q.other.corners) - polygonArea(p.other.corners));
  const best = whites[0];
  if (best !== undefined)
    return reference('found', best.other.corners, best.patch, field, developed);
  return {
    kind: 'none',
    corners: null,
    white: whiteOf(brightest, lit(brightest, field), developed, 'lightest'),
    error: ERROR.none,
    hueOpen: 1,
    burnt: 0,
  };
}

/**
 * Standard errors in CIELAB units: what white papers differ by, and what guessing costs.
 *
 * Source      without a card: 25 rendered pictures of squares and 15 of papers, tuning seeds 300 to 324, in all of which
 *             something light lay: 2.5 and 2.8 CIEDE2000, root mean square, by which 3 would do; the rest is for
 *             tables on which nothing is light.
 */
const ERROR = { card: 1.2, burnt: 3, none: 3.6 };
/**
 * What a scanner leaves open of a white paper's hue.
 *
 * Source      35 rendered scans, tuning seeds 100 to 134: the white was off by 0.86 in l, 0.21 in a and 0.60 in b, where
 *             papers differ by 0.88, 0.33 and 1.44.
 */
const OPEN_ON_SCANS = 0.45;

function reference(
  kind: 'found' | 'tapped',
  corners: Quad<'photo'>,
  patch: Patch,
  field: LightField,
  developed: boolean,
): Reference {
  const scanned = !developed && field.pressed;
  return {
    kind,
    corners,
    white: whiteOf(
      relativeTo(field, corners, patch),
      patch.light,
      developed,
      scanned ? 'scan' : 'card',
    ),
    error: patch.burnt > 0.2 ? ERROR.burnt : ERROR.card,
    hueOpen: scanned ? OPEN_ON_SCANS : 1,
    burnt: patch.burnt,
  };
}

/**
 * What the white of a photo that is tied to another leaves open: how well scraps agree after the tie is no property of
 * white papers, so nothing that is known of a scanner's white narrows it.
 *
 * Takes       the photo's own white, and what is left between its scraps and those of the other, in CIELAB units.
 */
export function openBeside(
  { error, hueOpen }: Reference,
  tieLeft: number,
): { readonly reference: number; readonly hueOpen: number } {
  const reference = Math.hypot(error, tieLeft);
  return { reference, hueOpen: Math.hypot(hueOpen * error, tieLeft) / reference };
}

/** What a light relative to the field is in the middle of the photo. */
function lit(relative: readonly [number, number, number], field: LightField): Light3 {
  const here = lightAt(field, field.width / 2, field.height / 2);
  return [relative[0] * here[0], relative[1] * here[1], relative[2] * here[2]];
}

function relativeTo(
  field: LightField,
  corners: Quad<'photo'>,
  { light }: Patch,
): [number, number, number] {
  const { x, y } = middleOf(corners);
  const here = lightAt(field, x, y);
  return [light[0] / here[0], light[1] / here[1], light[2] / here[2]];
}
