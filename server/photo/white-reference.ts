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
import { isWhite, patchOf } from './white-card.ts';
import type { Patch } from './white-card.ts';

/** The white that the photo's colours are read against. */
export interface Reference {
  readonly kind: 'found' | 'tapped' | 'none';
  /** In pixels of the preview. */
  readonly corners: Quad<'photo'> | null;
  readonly white: White;
  /** Standard error that it brings into every colour, in CIELAB units. */
  readonly error: number;
  /** Part of the white that is at the camera's limit. */
  readonly burnt: number;
}

/** The brightest light, channel by channel, that a good part of the photo reaches once the field is out. */
export function brightestOf(preview: Picture, field: LightField): [number, number, number] {
  const { width, height, rgb } = preview;
  const bins = [0, 1, 2].map(() => new Uint32Array(BINS));
  const logs: [number, number, number] = [0, 0, 0];
  let count = 0;
  for (let y = 4; y < height; y += 8)
    for (let x = 4; x < width; x += 8) {
      const here = lightAt(field, x, y);
      const at = 3 * (y * width + x);
      for (let k = 0; k < 3; k++) {
        logs[k] = Math.log2(Math.max(1e-5, linearOfByte[rgb[at + k]!]! / here[k]!));
        bins[k]![Math.max(0, Math.min(BINS - 1, Math.round(64 * (logs[k]! + 12))))]!++;
      }
      count++;
    }
  return bins.map((bin) => {
    let above = 0;
    for (let at = BINS - 1; at >= 0; at--) {
      above += bin[at]!;
      if (above > 0.005 * count) return 2 ** (at / 64 - 12);
    }
    return 1;
  }) as [number, number, number];
}

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
    return isWhite(relative, brightest) ? [{ other, patch }] : [];
  });
  whites.sort((p, q) => polygonArea(q.other.corners) - polygonArea(p.other.corners));
  const best = whites[0];
  if (best !== undefined)
    return reference('found', best.other.corners, best.patch, field, developed);
  return {
    kind: 'none',
    corners: null,
    white: whiteOf(brightest, lit(brightest, field), developed),
    error: ERROR.none,
    burnt: 0,
  };
}

/** Standard errors in CIELAB units: what white papers differ by, also when a scanner tells their hue, and what guessing costs. */
const ERROR = { card: 1.2, scanned: 0.9, burnt: 3, none: 4.5 };

/** No window or lamp lights a table so evenly: largest light over smallest. */
const SCANNED = 1.08;
/** The light has been read and not just taken for even. */
const LIGHT_KNOWN = 0.1;

function reference(
  kind: 'found' | 'tapped',
  corners: Quad<'photo'>,
  patch: Patch,
  field: LightField,
  developed: boolean,
): Reference {
  const scanned = !developed && field.error < LIGHT_KNOWN && field.range < SCANNED;
  return {
    kind,
    corners,
    white: whiteOf(relativeTo(field, corners, patch), patch.light, developed, scanned),
    error: patch.burnt > 0.2 ? ERROR.burnt : scanned ? ERROR.scanned : ERROR.card,
    burnt: patch.burnt,
  };
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
