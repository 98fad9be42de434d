import { converter, parse } from 'culori';
import { expected } from '../refusals/refusal.ts';
import { cubeRootLike, encodedByte, linearOfByte } from './curves.ts';
import type { Lab } from './lab.ts';

/**
 * The one door between colours as files and screens hold them and CIELAB under D65.
 *
 * culori's `lab` is under D50 and its `lab65` under D65 (sRGB red is L 54.29 there and 53.24 here);
 * everything in this project is `lab65`, and no other file asks culori for a colour space.
 *
 * Source      sRGB: IEC 61966-2-1:1999. CIELAB: CIE 15:2018. Display P3 shares sRGB's curve.
 * Checked     against the published CIELAB values of the sRGB primaries, and bulk against single.
 */
export type Primaries = 'srgb' | 'display-p3';

const toLab = converter('lab65');
const toXyz = converter('xyz65');
const toLinear = converter('lrgb');
const toRgb = converter('rgb');

/** Reads `#rrggbb` or `#rgb`. */
export function labFromHex(hex: string): Lab {
  if (!/^#(?:[0-9a-f]{3}|[0-9a-f]{6})$/i.test(hex))
    throw expected('a colour like #2a6f77', 'hex', hex, 'Write # and six digits 0-9 or a-f.');
  return labFromCss(hex);
}

/** Reads any colour that CSS can write (`teal`, `#0f766e`, `rgb(15 118 110)`, `oklch(...)`). */
export function labFromCss(text: string): Lab {
  const parsed = parse(text);
  if (parsed === undefined)
    throw expected(
      'a colour',
      'colour',
      text,
      'Write a colour like #2a6f77, teal or rgb(42 111 119).',
    );
  const { l, a, b } = toLab(parsed);
  return { l, a, b };
}

/** Writes `#rrggbb`; a colour that sRGB cannot show is cut off at its edge. */
export function hexFromLab(lab: Lab): string {
  const { r, g, b } = toRgb({ mode: 'lab65', ...lab });
  return `#${[r, g, b].map(hexByte).join('')}`;
}

function hexByte(channel: number): string {
  return Math.round(255 * Math.min(1, Math.max(0, channel)))
    .toString(16)
    .padStart(2, '0');
}

/** Light in linear sRGB, each channel in [0, 1] for what sRGB can show and outside for what it cannot. */
export interface LinearRgb {
  readonly r: number;
  readonly g: number;
  readonly b: number;
}

export function linearFromLab(lab: Lab): LinearRgb {
  const { r, g, b } = toLinear({ mode: 'lab65', ...lab });
  return { r, g, b };
}

export function labFromLinear(light: LinearRgb): Lab {
  const { l, a, b } = toLab({ mode: 'lrgb', ...light });
  return { l, a, b };
}

type Matrix = readonly [number, number, number, number, number, number, number, number, number];

/** XYZ relative to the D65 white (so that white is 1, 1, 1) from linear light, row by row. */
const RELATIVE_XYZ: Record<Primaries, Matrix> = {
  srgb: relativeXyz('lrgb'),
  'display-p3': relativeXyz('p3'),
};

/** A primary at full light is 1 both encoded and linear, so its XYZ is a column of the matrix. */
function relativeXyz(mode: 'lrgb' | 'p3'): Matrix {
  const white = toXyz({ mode: 'lab65', l: 100, a: 0, b: 0 });
  const [r, g, b] = [
    toXyz({ mode, r: 1, g: 0, b: 0 }),
    toXyz({ mode, r: 0, g: 1, b: 0 }),
    toXyz({ mode, r: 0, g: 0, b: 1 }),
  ];
  return [
    r.x / white.x,
    g.x / white.x,
    b.x / white.x,
    r.y / white.y,
    g.y / white.y,
    b.y / white.y,
    r.z / white.z,
    g.z / white.z,
    b.z / white.z,
  ];
}

const LINEAR_FROM_RELATIVE_XYZ = inverse(RELATIVE_XYZ.srgb);

/**
 * CIELAB of pixels that are held as bytes with sRGB's curve in the named primaries.
 *
 * Takes       3 bytes a pixel.
 * Gives       l, a, b for each pixel; nothing is clipped.
 * Good up to  0.02 CIELAB units beside culori (checked).
 */
export function labOfBytes(
  rgb: Uint8Array,
  primaries: Primaries,
  out = new Float32Array(rgb.length),
): Float32Array {
  const [m0, m1, m2, m3, m4, m5, m6, m7, m8] = RELATIVE_XYZ[primaries];
  for (let at = 0; at < rgb.length; at += 3) {
    const r = linearOfByte[rgb[at]!]!;
    const g = linearOfByte[rgb[at + 1]!]!;
    const b = linearOfByte[rgb[at + 2]!]!;
    const x = cubeRootLike(m0 * r + m1 * g + m2 * b);
    const y = cubeRootLike(m3 * r + m4 * g + m5 * b);
    const z = cubeRootLike(m6 * r + m7 * g + m8 * b);
    out[at] = 116 * y - 16;
    out[at + 1] = 500 * (x - y);
    out[at + 2] = 200 * (y - z);
  }
  return out;
}

/** CIELAB of linear light in the named primaries, three numbers a pixel; like `labOfBytes`. */
export function labOfLinear(
  light: Float32Array,
  primaries: Primaries,
  out = new Float32Array(light.length),
): Float32Array {
  const [m0, m1, m2, m3, m4, m5, m6, m7, m8] = RELATIVE_XYZ[primaries];
  for (let at = 0; at < light.length; at += 3) {
    const r = light[at]!;
    const g = light[at + 1]!;
    const b = light[at + 2]!;
    const x = cubeRootLike(m0 * r + m1 * g + m2 * b);
    const y = cubeRootLike(m3 * r + m4 * g + m5 * b);
    const z = cubeRootLike(m6 * r + m7 * g + m8 * b);
    out[at] = 116 * y - 16;
    out[at + 1] = 500 * (x - y);
    out[at + 2] = 200 * (y - z);
  }
  return out;
}

/** Linear sRGB light of pixels in CIELAB, three numbers a pixel; nothing is clipped. */
export function linearOfLab(lab: Float32Array, out = new Float32Array(lab.length)): Float32Array {
  const [m0, m1, m2, m3, m4, m5, m6, m7, m8] = LINEAR_FROM_RELATIVE_XYZ;
  for (let at = 0; at < lab.length; at += 3) {
    const fy = (lab[at]! + 16) / 116;
    const x = cubeLike(fy + lab[at + 1]! / 500);
    const y = cubeLike(fy);
    const z = cubeLike(fy - lab[at + 2]! / 200);
    out[at] = m0 * x + m1 * y + m2 * z;
    out[at + 1] = m3 * x + m4 * y + m5 * z;
    out[at + 2] = m6 * x + m7 * y + m8 * z;
  }
  return out;
}

/** sRGB bytes of linear sRGB light, cut off at 0 and 255; within one step of exact rounding. */
export function bytesOfLinear(light: Float32Array, out = new Uint8Array(light.length)): Uint8Array {
  for (let at = 0; at < light.length; at++) out[at] = encodedByte(light[at]!);
  return out;
}

/** sRGB bytes of pixels in CIELAB, cut off at 0 and 255; within one step of exact rounding. */
export function bytesOfLab(lab: Float32Array): Uint8Array {
  return bytesOfLinear(linearOfLab(lab));
}

/** Linear sRGB light of pixels that are held as bytes in the named primaries; nothing is clipped. */
export function linearOfBytes(
  rgb: Uint8Array,
  primaries: Primaries,
  out = new Float32Array(rgb.length),
): Float32Array {
  const [m0, m1, m2, m3, m4, m5, m6, m7, m8] = LINEAR_SRGB[primaries];
  for (let at = 0; at < rgb.length; at += 3) {
    const r = linearOfByte[rgb[at]!]!;
    const g = linearOfByte[rgb[at + 1]!]!;
    const b = linearOfByte[rgb[at + 2]!]!;
    out[at] = m0 * r + m1 * g + m2 * b;
    out[at + 1] = m3 * r + m4 * g + m5 * b;
    out[at + 2] = m6 * r + m7 * g + m8 * b;
  }
  return out;
}

/** Linear sRGB of one light in the named primaries; nothing is clipped. */
export function linearSrgbOf(
  [r, g, b]: readonly [number, number, number],
  primaries: Primaries,
): [number, number, number] {
  const m = LINEAR_SRGB[primaries];
  return [
    m[0] * r + m[1] * g + m[2] * b,
    m[3] * r + m[4] * g + m[5] * b,
    m[6] * r + m[7] * g + m[8] * b,
  ];
}

/** Linear light in the named primaries becomes linear sRGB in place, three numbers a pixel; nothing is clipped. */
export function linearInSrgb(light: Float32Array, primaries: Primaries): void {
  const [m0, m1, m2, m3, m4, m5, m6, m7, m8] = LINEAR_SRGB[primaries];
  for (let at = 0; at < light.length; at += 3) {
    const r = light[at]!;
    const g = light[at + 1]!;
    const b = light[at + 2]!;
    light[at] = m0 * r + m1 * g + m2 * b;
    light[at + 1] = m3 * r + m4 * g + m5 * b;
    light[at + 2] = m6 * r + m7 * g + m8 * b;
  }
}

const LINEAR_SRGB: Record<Primaries, Matrix> = {
  srgb: [1, 0, 0, 0, 1, 0, 0, 0, 1],
  'display-p3': product(LINEAR_FROM_RELATIVE_XYZ, RELATIVE_XYZ['display-p3']),
};

/** The inverse of CIELAB's curve (CIE 15, eq. 8.8 onwards). */
function cubeLike(f: number): number {
  return f > 6 / 29 ? f * f * f : 3 * (6 / 29) ** 2 * (f - 4 / 29);
}

function inverse([a, b, c, d, e, f, g, h, i]: Matrix): Matrix {
  const determinant = a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
  return [
    (e * i - f * h) / determinant,
    (c * h - b * i) / determinant,
    (b * f - c * e) / determinant,
    (f * g - d * i) / determinant,
    (a * i - c * g) / determinant,
    (c * d - a * f) / determinant,
    (d * h - e * g) / determinant,
    (b * g - a * h) / determinant,
    (a * e - b * d) / determinant,
  ];
}

function product(left: Matrix, right: Matrix): Matrix {
  return [0, 1, 2].flatMap((row) =>
    [0, 1, 2].map((column) =>
      [0, 1, 2].reduce((sum, k) => sum + left[3 * row + k]! * right[3 * k + column]!, 0),
    ),
  ) as unknown as Matrix;
}
