import { describe, expect, test } from 'vitest';
import { drawn, turned } from '../colour/drawn.ts';
import { SHELL, traitsOf } from './prints.ts';
import type { Paint } from './prints.ts';

const drawing = { size: 240, noise: 1 };

/** Scales in rows, each row set off by half a scale: rings that the row below covers. */
const scales: Paint = (x, y) => {
  const [step, radius] = [1 / 9, 0.5 / 9];
  for (let row = Math.floor(y / (step / 2)) + 2; row > y / (step / 2) - 3; row--) {
    const [u, v] = [x - (row % 2 === 0 ? 0 : step / 2), y - (row * step) / 2];
    const across = u - Math.round(u / step) * step;
    const far = Math.hypot(across, v) / radius;
    if (v <= 0 && far <= 1) return SHELL[far > 0.75 ? 1 : far > 0.45 ? 0 : 2]!;
  }
  return SHELL[0];
};

/** Rows of a broad and a narrow zigzag. */
const zigzag: Paint = (x, y) => {
  const wave = 0.02 * (4 * Math.abs(((x * 12) % 1) - 0.5) - 1);
  const across = ((((y + wave) * 7) % 1) + 1) % 1;
  return across < 0.25 ? SHELL[1]! : across > 0.5 && across < 0.68 ? SHELL[2]! : SHELL[0];
};

/** Fish-like drops, by turns pointing left and right. */
const bothWays: Paint = (x, y) => {
  const [column, row] = [Math.floor(x * 6), Math.floor(y * 8)];
  const u = (x * 6 - column - 0.5) * ((column + row) % 2 === 0 ? 1 : -1);
  const v = y * 8 - row - 0.5;
  return Math.abs(u) < 0.4 && Math.abs(v) < 0.22 * (0.4 - u) ? SHELL[1]! : SHELL[0];
};

describe('prints whose shapes alone do not tell how they run', () => {
  test('scales in rows stand', () => {
    expect(traitsOf(drawn(scales, drawing))).toMatchObject({ direction: 'one-way', up: 0 });
    expect(traitsOf(turned(drawn(scales, drawing), 1))).toMatchObject({
      direction: 'one-way',
      up: 90,
    });
  });

  test('zigzags run along their rows and are themselves upside down', () => {
    expect(traitsOf(drawn(zigzag, drawing)).direction).toBe('two-way');
  });

  test('long shapes that lie both ways make no up', () => {
    expect(traitsOf(drawn(bothWays, drawing)).direction).toBe('two-way');
  });
});
