/** The two curves of the colour loops as tables: a table is some twenty times faster than colour objects. */
import { converter } from 'culori';

const toLinear = converter('lrgb');
const toEncoded = converter('rgb');

/** Linear light in [0, 1] of an encoded byte (sRGB and Display P3 share the curve). */
export const linearOfByte = Float32Array.from(
  { length: 256 },
  (_, byte) => toLinear({ mode: 'rgb', r: byte / 255, g: 0, b: 0 }).r,
);

/** Steps of linear light in `byteOfLight`, from 0 to 1. */
export const LIGHT_STEPS = 16384;
/** The encoded byte of each step of linear light. */
export const byteOfLight = Uint8Array.from({ length: LIGHT_STEPS + 1 }, (_, step) =>
  Math.round(255 * toEncoded({ mode: 'lrgb', r: step / LIGHT_STEPS, g: 0, b: 0 }).r),
);

/** The encoded byte of linear light, cut off at 0 and 255. */
export function encodedByte(light: number): number {
  if (!(light > 0)) return 0;
  return light >= 1 ? 255 : byteOfLight[(light * LIGHT_STEPS + 0.5) | 0]!;
}

/** Below this CIELAB's curve is a straight line: (6/29)^3. */
const KNEE = (6 / 29) ** 3;
const SLOPE = (29 / 6) ** 2 / 3;
const PER_UNIT = 8192;
/** Saturated Display P3 stays below 1.1 of the white; brighter light takes the slow way. */
const TOP = 1.25;
const roots = Float32Array.from({ length: PER_UNIT * TOP + 2 }, (_, step) =>
  exactRoot(step / PER_UNIT),
);

/** CIELAB's curve of light relative to the white (CIE 15): a cube root with a straight foot. */
export function cubeRootLike(t: number): number {
  if (!(t >= 0 && t < TOP)) return exactRoot(t);
  const place = t * PER_UNIT;
  const step = place | 0;
  const low = roots[step]!;
  return low + (place - step) * (roots[step + 1]! - low);
}

function exactRoot(t: number): number {
  return t <= KNEE ? SLOPE * t + 4 / 29 : Math.cbrt(t);
}
