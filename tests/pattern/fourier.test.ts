import { describe, expect, test } from 'vitest';
import { autocorrelation } from '../../server/pattern/autocorrelation.ts';
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

test('autocorrelation agrees with the sum that defines it, overlap by overlap', () => {
  const side = 16;
  const chance = chanceOf(2);
  const values = Float64Array.from({ length: side * side }, () => 10 * chance());
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const likeness = autocorrelation([{ side, values }]);
  const variance = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length;
  for (const [dx, dy] of [
    [0, 0],
    [3, 0],
    [0, 5],
    [4, -7],
    [-2, 6],
  ] as const) {
    let [sum, overlap] = [0, 0];
    for (let y = 0; y < side; y++)
      for (let x = 0; x < side; x++) {
        if (x + dx < 0 || x + dx >= side || y + dy < 0 || y + dy >= side) continue;
        sum += (values[y * side + x]! - mean) * (values[(y + dy) * side + x + dx]! - mean);
        overlap++;
      }
    expect(likeness.at(dx, dy)).toBeCloseTo(sum / overlap / variance, 9);
  }
});
