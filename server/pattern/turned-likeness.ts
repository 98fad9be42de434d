import { transform } from './fourier.ts';
import type { Grid } from './grid.ts';

/** How like a picture is to itself turned by half, and mirrored, at the shift that suits it best: 1 when it is itself. */
export interface TurnedLikeness {
  half(): number;
  /** Left and right changed over, and up and down. */
  leftRight(): number;
  upDown(): number;
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
  const back = (at: number): number => (framed - at) % framed;
  /** Of the picture with a copy whose waves stand elsewhere: those of a mirrored picture do, but for a shift. */
  const likeTo = (x: (u: number) => number, y: (v: number) => number): number => {
    const [productRe, productIm] = [new Float64Array(re.length), new Float64Array(re.length)];
    for (let v = 0; v < framed; v++)
      for (let u = 0; u < framed; u++) {
        const [p, q] = [v * framed + u, y(v) * framed + x(u)];
        productRe[p] = re[p]! * re[q]! + im[p]! * im[q]!;
        productIm[p] = im[p]! * re[q]! - re[p]! * im[q]!;
      }
    transform(productRe, productIm, framed, true);
    return variance > 0 ? mostLike(productRe, side, x !== same, y !== same) / variance : 0;
  };
  const same = (at: number): number => at;
  return {
    half: () => likeTo(back, back),
    leftRight: () => likeTo(back, same),
    upDown: () => likeTo(same, back),
  };
}

/** Writes the fields less their mean into the frame; gives their variance. */
function spread({ side, values }: Grid, into: Float64Array, framed: number): number {
  let [sum, squares] = [0, 0];
  for (const value of values) sum += value;
  const mean = sum / values.length;
  for (let y = 0, p = 0; y < side; y++)
    for (let x = 0; x < side; x++, p++) {
      const value = values[p]! - mean;
      into[y * framed + x] = value;
      squares += value * value;
    }
  return squares / values.length;
}

/**
 * The most by overlap. Along an axis that was turned over the sums stand by where both ends meet, from 0 to twice the
 * side; along the other by the shift, backwards ones from the end.
 */
function mostLike(sums: Float64Array, side: number, turnedX: boolean, turnedY: boolean): number {
  const framed = 2 * side;
  const shared = (at: number, turned: boolean): number =>
    turned ? Math.min(at + 1, framed - 1 - at) : at < side ? side - at : at - side;
  let most = 0;
  for (let y = 0; y < framed; y++)
    for (let x = 0; x < framed; x++) {
      const both = shared(x, turnedX) * shared(y, turnedY);
      if (both * 3 < side * side) continue;
      most = Math.max(most, sums[y * framed + x]! / both);
    }
  return most;
}
