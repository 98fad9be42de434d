import { describe, expect, test } from 'vitest';
import { chanceOf, drawn } from '../colour/drawn.ts';
import { SHELL, traitsOf } from './prints.ts';
import type { Paint } from './prints.ts';

const SEEDS = [1, 2, 3, 4, 5, 6];

/** Lenses of one size, all lying, strewn anyhow; themselves either way up. */
function lenses(seed: number): Paint {
  const chance = chanceOf(seed);
  const middles = Array.from({ length: 45 }, () => ({ x: chance(), y: chance() }));
  return (x, y) =>
    middles.some(({ x: p, y: q }) => Math.abs(y - q) < 0.02 * (1 - ((x - p) / 0.06) ** 2))
      ? SHELL[1]!
      : SHELL[0];
}

/** Bands that wave side by side, each as broad as it happens to be. */
function bands(seed: number): Paint {
  const chance = chanceOf(seed);
  const edges: { at: number; colour: number }[] = [];
  for (let at = -0.1; at < 1.1; at += 0.03 + 0.07 * chance())
    edges.push({ at, colour: edges.length % 2 === 0 ? 0 : 1 + Math.floor(3 * chance()) });
  return (x, y) => {
    const here = y + 0.02 * Math.sin(2 * Math.PI * 5 * x);
    return SHELL[edges.findLast(({ at }) => at <= here)?.colour ?? 0]!;
  };
}

/** Rows of dashes, each as long as it happens to be. */
function dashes(seed: number): Paint {
  const chance = chanceOf(seed);
  const rows = Array.from({ length: 14 }, () => {
    const row: [from: number, to: number][] = [];
    for (let x = 0.1 * chance(); x < 1;) {
      const to = x + 0.03 + 0.2 * chance();
      row.push([x, to]);
      x = to + 0.03 + 0.06 * chance();
    }
    return row;
  });
  return (x, y) => {
    const row = rows[Math.floor(14 * y)]!;
    const inRow = Math.abs(14 * y - Math.floor(14 * y) - 0.5) < 0.2;
    return inRow && row.some(([from, to]) => x >= from && x < to) ? SHELL[1]! : SHELL[0];
  };
}

describe('prints that run along a line without any repeat, in shapes that are the same upside down', () => {
  test.each([
    ['lenses strewn alike', lenses],
    ['bands of uneven breadth', bands],
    ['rows of dashes of uneven length', dashes],
  ])('%s have no up', (_name, print) => {
    const stand = SEEDS.filter(
      (seed) => traitsOf(drawn(print(seed), { size: 240, noise: 1, seed })).direction === 'one-way',
    );
    expect(stand).toEqual([]);
  });
});
