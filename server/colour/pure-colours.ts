import type { Labels } from './label-pixels.ts';
import type { Lab, LabImage } from './lab.ts';

/**
 * Each colour as the middle of its shapes shows it.
 *
 * The mean of all pixels that are nearest to a colour holds some that are mixed of two others and only happen to lie
 * near it, and the rims of its own shapes, which lean towards what is beside them. Pixels a whole pixel inside a shape
 * are free of both; of them the few that stray (a dot of another colour that has no label) are left out.
 *
 * Takes       the picture, which colour each pixel shows, which pixels are flat, and the colours as they are known.
 * Gives       as many colours; one that has next to no inside stays as it was.
 */
export function pureColours(
  { lab }: LabImage,
  { width, height, of }: Labels,
  flat: Uint8Array,
  colours: readonly Lab[],
): Lab[] {
  const inside = colours.map((): number[] => []);
  for (let y = 1; y < height - 1; y++)
    for (let x = 1; x < width - 1; x++) {
      const at = y * width + x;
      if (flat[at] === 1 && isInside(of, width, at)) inside[of[at]!]!.push(at);
    }
  return colours.map((colour, index) => {
    const pixels = inside[index]!;
    return pixels.length < FEWEST ? colour : steadyMean(lab, pixels, colour);
  });
}

/** Whether the eight neighbours of a pixel that is not at the rim show the same colour. */
export function isInside(of: Uint8Array, width: number, at: number): boolean {
  const label = of[at];
  return (
    of[at - 1] === label &&
    of[at + 1] === label &&
    of[at - width - 1] === label &&
    of[at - width] === label &&
    of[at - width + 1] === label &&
    of[at + width - 1] === label &&
    of[at + width] === label &&
    of[at + width + 1] === label
  );
}

/** Fewer pixels tell less than all of the colour's together. */
const FEWEST = 60;
/** Further off than this many typical distances a pixel strays. */
const STRAYS = 2;

function steadyMean(lab: Float32Array, pixels: readonly number[], start: Lab): Lab {
  let middle = start;
  let reach = Infinity;
  for (let round = 0; round < 3; round++) {
    let [l, a, b, squares, count] = [0, 0, 0, 0, 0];
    for (const pixel of pixels) {
      const p = 3 * pixel;
      const off =
        (lab[p]! - middle.l) ** 2 + (lab[p + 1]! - middle.a) ** 2 + (lab[p + 2]! - middle.b) ** 2;
      if (off > reach) continue;
      l += lab[p]!;
      a += lab[p + 1]!;
      b += lab[p + 2]!;
      squares += off;
      count++;
    }
    if (count === 0) break;
    middle = { l: l / count, a: a / count, b: b / count };
    reach = STRAYS ** 2 * (squares / count);
  }
  return middle;
}
