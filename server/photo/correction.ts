import type { Lab } from '../colour/lab.ts';
import { labFromLinear, linearFromLab } from '../colour/spaces.ts';
import { lightAt } from './light.ts';
import type { LightField } from './light.ts';

/**
 * What linear light in the photo's primaries is multiplied by, place by place over a sheet, to look as under even,
 * white light. The field is smooth, so its gain is known at the corners of 8 x 8 fields and interpolated.
 */
export interface Gains {
  readonly width: number;
  readonly height: number;
  /** Three channels at each of 9 x 9 places, row by row. */
  readonly at: Float32Array;
}

/** The gains over a flat picture of the given size; `rows` maps its pixels into the photo. */
export type Correction = (rows: readonly number[], width: number, height: number) => Gains;

/** What white is in this photo. */
export interface White {
  /** Linear light of the white thing in the photo's primaries, divided by the light field there. */
  readonly relative: readonly [number, number, number];
  /** The same as the photo shows it, its light not divided. */
  readonly seen: readonly [number, number, number];
  /** Lightness that the thing has in truth, in CIELAB. */
  readonly lab: { readonly l: number; readonly a: number; readonly b: number };
  /** How much of its lightness is restored: 1 all, 0 nothing but its hue. */
  readonly lift: number;
}

/**
 * White paper by daylight: bright papers hold brighteners, so they are a little blue, not neutral.
 *
 * Source      photographs of known colours on white paper: L 89 to 96, b -2 to -7 (measured); the middle.
 */
const WHITE_PAPER = { l: 94.4, a: 0.3, b: -3.4 };

/**
 * How much of the hue in which a scanner shows white counts: its own white is set when it is made, to within about
 * half of what papers differ by.
 */
const SCANNER_KNOWS = 0.8;
/** A hue further from white paper than this, in CIELAB units, is the scanner's and not the paper's. */
const PAPERS_DIFFER = 5;

/** The same as phones show it, whose cameras see more of the brighteners' blue: the middle of real photos. */
const PAPER_BY_PHONE = { l: 92, a: 0.3, b: -5 };

/**
 * How much of the darkness of white in a picture that a camera developed is exposure, as a power of light.
 *
 * A phone sets its exposure by the middle tones and rolls the highlights off, so white lies darker than the rest
 * asks for. Lifting everything until white is white would part all colours further than they are.
 *
 * Source      eight photographs of 24 known colours by one phone, all of them seen while it was chosen (see the bench).
 */
const LIFT = 0.45;

/** What tells what white is: a card; a card lit as evenly as by a scanner; or just what is lightest in the photo. */
export type WhiteBy = 'card' | 'scan' | 'lightest';

/**
 * The lightest thing of a photo that shows no white card: from white with its brighteners to cream.
 *
 * A camera sets its own white too, about as well as that is known, so half of the hue that it shows is the thing's.
 * Source      a judgement; eight phone photographs of greys showed them with 0.05 too little red and 0.13 too much
 *             blue against green (root mean square of logarithms), which is 6 units along b.
 */
const LIGHTEST = { l: 94.8, a: 0.3, b: 1 };
const CAMERA_KNOWS = 0.5;
/** Further than this from the middle nothing is that may be taken for white, in CIELAB units. */
const LIGHTEST_DIFFER = 8;

/** The white of a photo and how it is brought to its true colour. */
export function whiteOf(
  relative: White['relative'],
  seen: White['seen'],
  developed: boolean,
  by: WhiteBy = 'card',
): White {
  if (developed) return { relative, seen, lab: PAPER_BY_PHONE, lift: LIFT };
  return { relative, seen, lab: paperBy(by, seen), lift: 1 };
}

function paperBy(by: WhiteBy, seen: White['seen']): Lab {
  if (by === 'card') return WHITE_PAPER;
  const scan = by === 'scan';
  const paper = scan ? WHITE_PAPER : LIGHTEST;
  const shown = asLightAs(paper, seen);
  const [da, db] = [shown.a - paper.a, shown.b - paper.b];
  const away = Math.hypot(da, db);
  if (scan && away > PAPERS_DIFFER) return paper;
  const knows = scan ? SCANNER_KNOWS : Math.min(CAMERA_KNOWS, LIGHTEST_DIFFER / away);
  return { l: paper.l, a: paper.a + knows * da, b: paper.b + knows * db };
}

/** The light as the photo shows it, made as light as a paper. */
function asLightAs(lab: Lab, [r, g, b]: White['seen']): Lab {
  const paper = linearFromLab(lab);
  const by =
    (0.2126 * paper.r + 0.7152 * paper.g + 0.0722 * paper.b) /
    (0.2126 * r + 0.7152 * g + 0.0722 * b);
  return labFromLinear({ r: r * by, g: g * by, b: b * by });
}

/** Takes the field as it stands over the preview; `perPixel` is preview pixels for each pixel of the photo asked of. */
export function correctionOf(field: LightField, white: White, perPixel: number): Correction {
  const gain = whiteGains(white);
  return ([a, b0, c, d, e, f, g0, h, i], width, height) => {
    const at = new Float32Array(3 * (GRID + 1) * (GRID + 1));
    for (let row = 0; row <= GRID; row++)
      for (let column = 0; column <= GRID; column++) {
        const u = (column * width) / GRID;
        const v = (row * height) / GRID;
        const w = g0! * u + h! * v + i!;
        const x = ((a! * u + b0! * v + c!) / w) * perPixel;
        const y = ((d! * u + e! * v + f!) / w) * perPixel;
        const here = lightAt(field, x, y);
        for (let k = 0; k < 3; k++) at[3 * (row * (GRID + 1) + column) + k] = gain[k]! / here[k]!;
      }
    return { width, height, at };
  };
}

/** What brings the white to its true colour, channel by channel in the photo's primaries, near enough to sRGB's for white. */
export function whiteGains({ relative, seen, lab, lift }: White): [number, number, number] {
  const { r, g, b } = linearFromLab(lab);
  const gains = [r / relative[0], g / relative[1], b / relative[2]] as const;
  const whole = (0.2126 * r) / seen[0] + (0.7152 * g) / seen[1] + (0.0722 * b) / seen[2];
  const kept = whole ** (lift - 1);
  return [gains[0] * kept, gains[1] * kept, gains[2] * kept];
}

/** What the white card looks like once it is corrected. */
export function correctedWhite(white: White): Lab {
  const [r, g, b] = whiteGains(white).map((gain, k) => gain * white.relative[k]!);
  return labFromLinear({ r: r!, g: g!, b: b! });
}

/** Fields a side. */
const GRID = 8;

/**
 * The gains at places in one row of the flat picture: the first `firstX` from its left edge, each `step` from the
 * one before, in pixels. Gives three for each place into `line`.
 */
export function gainsOfRow(
  { width, height, at }: Gains,
  y: number,
  firstX: number,
  step: number,
  line: Float32Array,
): void {
  const down = Math.min(GRID, (y * GRID) / height);
  const row = Math.min(GRID - 1, down | 0);
  const stride = 3 * (GRID + 1);
  for (let place = 0, x = firstX; place < line.length; place += 3, x += step) {
    const across = Math.min(GRID, (x * GRID) / width);
    const column = Math.min(GRID - 1, across | 0);
    for (let k = 0; k < 3; k++) {
      const p = row * stride + 3 * column + k;
      const left = at[p]! + (down - row) * (at[p + stride]! - at[p]!);
      const right = at[p + 3]! + (down - row) * (at[p + stride + 3]! - at[p + 3]!);
      line[place + k] = left + (across - column) * (right - left);
    }
  }
}
