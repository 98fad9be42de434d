import { transform } from './fourier.ts';
import type { Grid } from './grid.ts';

/** How like a picture is to itself turned by half, and mirrored, at the shift that suits it best: 1 when it is itself. */
export interface TurnedLikeness {
  half(): number;
  /** Left and right changed over, and up and down. */
  leftRight(): number;
  upDown(): number;
  /** Where `half` is reached: x and y of a field added to those of the field that comes to lie on it. */
  halfAt(): { readonly x: number; readonly y: number };
}

/**
 * Takes       a grid whose side is a power of two.
 * Gives       likenesses, each worked out when it is asked, by the fields on which both lie, of shifts at which at least a third of them do.
 */
export function turnedLikeness(grid: Grid): TurnedLikeness {
  const { side } = grid;
  const framed = 2 * side;
  const [re, im] = [new Float64Array(framed ** 2), new Float64Array(framed ** 2)];
  const variance = spread(grid, re, framed);
  transform(re, im, framed);
  const likeTo = (turnedX: boolean, turnedY: boolean): Best => {
    const [productRe, productIm] = product(re, im, framed, turnedX, turnedY);
    transform(productRe, productIm, framed, true);
    return mostLike(productRe, side, turnedX, turnedY);
  };
  const told = (best: Best): number => (variance > 0 ? best.like / variance : 0);
  return {
    half: () => told(likeTo(true, true)),
    leftRight: () => told(likeTo(true, false)),
    upDown: () => told(likeTo(false, true)),
    halfAt: () => likeTo(true, true),
  };
}

/** Of the waves of a picture with those of a mirrored copy: they stand elsewhere, and but for a shift are the same. */
function product(
  re: Float64Array,
  im: Float64Array,
  framed: number,
  turnedX: boolean,
  turnedY: boolean,
): readonly [Float64Array, Float64Array] {
  const [productRe, productIm] = [new Float64Array(re.length), new Float64Array(re.length)];
  for (let v = 0, p = 0; v < framed; v++) {
    const row = framed * (turnedY ? (framed - v) % framed : v);
    for (let u = 0; u < framed; u++, p++) {
      const q = row + (!turnedX || u === 0 ? u : framed - u);
      productRe[p] = re[p]! * re[q]! + im[p]! * im[q]!;
      productIm[p] = im[p]! * re[q]! - re[p]! * im[q]!;
    }
  }
  return [productRe, productIm];
}

/** Writes the fields less their mean into the frame; gives their variance. */
function spread({ side, values }: Grid, into: Float64Array, framed: number): number {
  let [sum, squares] = [0, 0];
  for (let at = values.length - 1; at >= 0; at--) sum += values[at]!;
  const mean = sum / values.length;
  for (let y = 0, p = 0; y < side; y++)
    for (let x = 0; x < side; x++, p++) {
      const value = values[p]! - mean;
      into[y * framed + x] = value;
      squares += value * value;
    }
  return squares / values.length;
}

interface Best {
  /** Mean product of the fields on which both lie. */
  readonly like: number;
  readonly x: number;
  readonly y: number;
}

/** Part of the fields on which both have to lie. */
export const SHARED = 1 / 3;

/**
 * The most by overlap. Along an axis that was turned over the sums stand by where both ends meet, from 0 to twice the
 * side; along the other by the shift, backwards ones from the end.
 */
function mostLike(sums: Float64Array, side: number, turnedX: boolean, turnedY: boolean): Best {
  const framed = 2 * side;
  const shared = (turned: boolean): Float64Array =>
    Float64Array.from({ length: framed }, (_, at) =>
      turned ? Math.min(at + 1, framed - 1 - at) : at < side ? side - at : at - side,
    );
  const [across, down] = [shared(turnedX), shared(turnedY)];
  let [like, best] = [0, 0];
  for (let y = 0, at = 0; y < framed; y++)
    for (let x = 0; x < framed; x++, at++) {
      const both = across[x]! * down[y]!;
      if (both < SHARED * side * side || sums[at]! <= like * both) continue;
      like = sums[at]! / both;
      best = at;
    }
  return { like, x: best % framed, y: Math.floor(best / framed) };
}
