import type { Labels } from './label-pixels.ts';
import { workRoom } from './work-room.ts';
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
  const { first, packed } = byColour(lab, of, inside, colours.length);
  return colours.map((known, colour) => {
    const own = packed.subarray(3 * first[colour]!, 3 * first[colour + 1]!);
    let middle: Lab = known;
    // The first round counts all that lie inside.
    let reach = Infinity;
    for (let round = 0; round < ROUNDS; round++) {
      const steady = steadyOf(own, middle, reach);
      if (steady.count === 0 || (round === 0 && steady.count < FEWEST)) break;
      ({ middle, reach } = steady);
    }
    return middle;
  });
}

const ROUNDS = 3;

interface Packed {
  /** l, a, b of the inside pixels, those of one colour after those of the one before. */
  readonly packed: Float32Array;
  /** Where those of each colour begin, and behind the last. */
  readonly first: Int32Array;
}

/** The inside pixels put together by colour, so that each round walks over those of one colour alone. */
function byColour(lab: Float32Array, of: Uint8Array, inside: Uint8Array, colours: number): Packed {
  const first = new Int32Array(colours + 1);
  for (let pixel = 0; pixel < of.length; pixel++) first[of[pixel]! + 1]! += inside[pixel]!;
  for (let colour = 0; colour < colours; colour++) first[colour + 1]! += first[colour]!;
  const packed = packedRoom(3 * first[colours]!);
  const next = first.map((begin) => 3 * begin);
  for (let pixel = 0, p = 0; pixel < of.length; pixel++, p += 3) {
    if (inside[pixel] === 0) continue;
    const to = next[of[pixel]!]!;
    packed[to] = lab[p]!;
    packed[to + 1] = lab[p + 1]!;
    packed[to + 2] = lab[p + 2]!;
    next[of[pixel]!] = to + 3;
  }
  return { packed, first };
}

const packedRoom = workRoom((length) => new Float32Array(length));

/** The mean of the pixels that lie within a squared distance of a middle, and how far the next round reaches. */
function steadyOf(
  own: Float32Array,
  middle: Lab,
  reach: number,
): { readonly middle: Lab; readonly reach: number; readonly count: number } {
  const { l: middleL, a: middleA, b: middleB } = middle;
  let sumL = 0;
  let sumA = 0;
  let sumB = 0;
  let squares = 0;
  let count = 0;
  for (let p = 0; p < own.length; p += 3) {
    const l = own[p]!;
    const a = own[p + 1]!;
    const b = own[p + 2]!;
    const offL = l - middleL;
    const offA = a - middleA;
    const offB = b - middleB;
    const off = offL * offL + offA * offA + offB * offB;
    if (off > reach) continue;
    sumL += l;
    sumA += a;
    sumB += b;
    squares += off;
    count++;
  }
  return {
    middle: { l: sumL / count, a: sumA / count, b: sumB / count },
    reach: STRAYS ** 2 * (squares / count),
    count,
  };
}

/** Fewer pixels tell less than all of the colour's together. */
const FEWEST = 60;
/** Further off than this many typical distances a pixel strays. */
const STRAYS = 2;
