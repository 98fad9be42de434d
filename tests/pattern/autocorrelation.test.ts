import { expect, test } from 'vitest';
import { autocorrelation } from '../../server/pattern/autocorrelation.ts';
import { chanceOf } from '../colour/drawn.ts';

const SIDE = 16;

test('autocorrelation agrees with the sum that defines it, overlap by overlap', () => {
  const chance = chanceOf(2);
  const values = Float64Array.from({ length: SIDE * SIDE }, () => 10 * chance());
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const variance = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length;
  const likeness = (dx: number, dy: number): number => {
    let [sum, overlap] = [0, 0];
    for (let y = 0; y + dy < SIDE; y++)
      for (let x = 0; x + dx < SIDE; x++) {
        sum += (values[y * SIDE + x]! - mean) * (values[(y + dy) * SIDE + x + dx]! - mean);
        overlap++;
      }
    return sum / overlap / variance;
  };
  const { across, down } = autocorrelation([{ side: SIDE, values }], 11);
  for (let shift = 0; shift <= 11; shift++) {
    expect(across[shift]).toBeCloseTo(likeness(shift, 0), 9);
    expect(down[shift]).toBeCloseTo(likeness(0, shift), 9);
  }
});

test('of a print that runs down the sheet every second row tells the same as all of them', () => {
  const chance = chanceOf(3);
  const row = Float64Array.from({ length: SIDE }, () => 10 * chance());
  const values = Float64Array.from({ length: SIDE * SIDE }, (_, at) => row[at % SIDE]!);
  const all = autocorrelation([{ side: SIDE, values }], 11);
  const half = autocorrelation([{ side: SIDE, values }], 11, 2);
  for (let shift = 0; shift <= 11; shift++)
    expect(half.across[shift]).toBeCloseTo(all.across[shift]!, 9);
});

test('a wave of period four is itself after four fields and its opposite after two', () => {
  const values = Float64Array.from({ length: SIDE * SIDE }, (_, at) =>
    Math.cos((2 * Math.PI * (at % SIDE)) / 4),
  );
  const { across, down } = autocorrelation([{ side: SIDE, values }], 8);
  for (const [shift, like] of [1, 0, -1, 0, 1, 0, -1, 0, 1].entries())
    expect(across[shift]).toBeCloseTo(like, 9);
  for (const like of down) expect(like).toBeCloseTo(1, 9);
});

test('plain paper is unlike itself at every shift', () => {
  const values = new Float64Array(SIDE * SIDE).fill(50);
  const { across, down } = autocorrelation([{ side: SIDE, values }], 8);
  expect([...across, ...down].every((like) => like === 0)).toBe(true);
});
