import type { Labels } from './label-pixels.ts';
import type { Lab, LabImage } from './lab.ts';

/**
 * Each colour as the middle of its shapes shows it.
 *
 * The mean of all pixels that are nearest to a colour holds some that are mixed of two others and only happen to lie
 * near it, and the rims of its own shapes, which lean towards what is beside them. Pixels a whole pixel inside a shape
 * are free of both; of them the few that stray (a dot of another colour that has no label) are left out.
 *
 * Takes       the picture, which colour each pixel shows, which pixels lie inside shapes (`insidePixels`), and the
 *             colours as they are known.
 * Gives       as many colours; one that has next to no inside stays as it was.
 */
export function pureColours(
  { lab }: LabImage,
  { of }: Labels,
  inside: Uint8Array,
  colours: readonly Lab[],
): Lab[] {
  const middle = Float64Array.from(colours.flatMap(({ l, a, b }) => [l, a, b]));
  const reach = new Float64Array(colours.length).fill(Infinity);
  const sums = new Float64Array(SUMS * colours.length);
  for (let round = 0; round < ROUNDS; round++) {
    sums.fill(0);
    addSteady(lab, of, inside, middle, reach, sums);
    for (let colour = 0, s = 0; colour < colours.length; colour++, s += SUMS) {
      const count = sums[s + 4]!;
      // The first round counts all that lie inside.
      if (count === 0 || (round === 0 && count < FEWEST)) {
        reach[colour] = NOTHING;
        continue;
      }
      for (let axis = 0; axis < 3; axis++) middle[3 * colour + axis] = sums[s + axis]! / count;
      reach[colour] = STRAYS ** 2 * (sums[s + 3]! / count);
    }
  }
  return colours.map((_, colour) => ({
    l: middle[3 * colour]!,
    a: middle[3 * colour + 1]!,
    b: middle[3 * colour + 2]!,
  }));
}

const ROUNDS = 3;
/** Sums of each colour: l, a, b, the squared distances from its middle, and how many pixels. */
const SUMS = 5;
/** No pixel lies within this squared distance. */
const NOTHING = -1;

/** Adds to the sums of each colour its inside pixels that lie within reach of its middle. */
function addSteady(
  lab: Float32Array,
  of: Uint8Array,
  inside: Uint8Array,
  middle: Float64Array,
  reach: Float64Array,
  sums: Float64Array,
): void {
  for (let pixel = 0, p = 0; pixel < of.length; pixel++, p += 3) {
    if (inside[pixel] === 0) continue;
    const colour = of[pixel]!;
    const l = lab[p]!;
    const a = lab[p + 1]!;
    const b = lab[p + 2]!;
    const offL = l - middle[3 * colour]!;
    const offA = a - middle[3 * colour + 1]!;
    const offB = b - middle[3 * colour + 2]!;
    const off = offL * offL + offA * offA + offB * offB;
    if (off > reach[colour]!) continue;
    const s = SUMS * colour;
    sums[s]! += l;
    sums[s + 1]! += a;
    sums[s + 2]! += b;
    sums[s + 3]! += off;
    sums[s + 4]! += 1;
  }
}

/** Fewer pixels tell less than all of the colour's together. */
const FEWEST = 60;
/** Further off than this many typical distances a pixel strays. */
const STRAYS = 2;
