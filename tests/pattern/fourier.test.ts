import { describe, expect, test } from 'vitest';
import { transform } from '../../server/pattern/fourier.ts';
import { chanceOf } from '../colour/drawn.ts';

describe('Fourier transform', () => {
  test('agrees with the sum that defines it', () => {
    const side = 8;
    const chance = chanceOf(1);
    const values = Float64Array.from({ length: side * side }, () => chance());
    const [re, im] = [Float64Array.from(values), new Float64Array(side * side)];
    transform(re, im, side);
    for (let v = 0; v < side; v++)
      for (let u = 0; u < side; u++) {
        let [sumRe, sumIm] = [0, 0];
        for (let y = 0; y < side; y++)
          for (let x = 0; x < side; x++) {
            const angle = (-2 * Math.PI * (u * x + v * y)) / side;
            sumRe += values[y * side + x]! * Math.cos(angle);
            sumIm += values[y * side + x]! * Math.sin(angle);
          }
        expect(re[v * side + u]).toBeCloseTo(sumRe, 9);
        expect(im[v * side + u]).toBeCloseTo(sumIm, 9);
      }
    transform(re, im, side, true);
    values.forEach((value, at) => expect(re[at]).toBeCloseTo(value, 9));
  });

  test('a side that is no power of two is refused', () => {
    expect(() => transform(new Float64Array(36), new Float64Array(36), 6)).toThrow(RangeError);
  });
});
