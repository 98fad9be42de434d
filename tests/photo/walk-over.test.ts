import fc from 'fast-check';
import { expect, test } from 'vitest';
import { walkOver } from '../../server/photo/walk-over.ts';

const anyMask = fc
  .record({ width: fc.integer({ min: 1, max: 9 }), height: fc.integer({ min: 1, max: 9 }) })
  .chain(({ width, height }) => {
    const pixels = width * height;
    return fc.record({
      width: fc.constant(width),
      height: fc.constant(height),
      of: fc.array(fc.integer({ min: 0, max: 1 }), { minLength: pixels, maxLength: pixels }),
      from: fc.array(fc.nat(pixels - 1), { maxLength: 3 }),
    });
  });

/** Step by step, as one would walk: the slow way, written apart. */
function stepped(width: number, height: number, of: readonly number[], from: readonly number[]) {
  const reached = of.map(() => 0);
  const visit = (x: number, y: number): void => {
    if (x < 0 || y < 0 || x >= width || y >= height) return;
    const pixel = y * width + x;
    if (of[pixel] === 0 || reached[pixel] === 1) return;
    reached[pixel] = 1;
    visit(x - 1, y);
    visit(x + 1, y);
    visit(x, y - 1);
    visit(x, y + 1);
  };
  for (const pixel of from) visit(pixel % width, Math.floor(pixel / width));
  return reached;
}

test('what is walked to is what steps from pixel to pixel reach, and it is taken out of the mask', () => {
  fc.assert(
    fc.property(anyMask, ({ width, height, of, from }) => {
      const mask = Uint8Array.from(of);
      const { reached, count } = walkOver({ width, height, of: mask }, Int32Array.from(from));
      const wanted = stepped(width, height, of, from);
      expect([...reached]).toEqual(wanted);
      expect(count).toBe(wanted.filter((pixel) => pixel === 1).length);
      expect([...mask]).toEqual(of.map((pixel, at) => pixel - wanted[at]!));
    }),
    { numRuns: 400, seed: 1 },
  );
});

test('a way that turns back on itself is walked to its end', () => {
  const rows = [
    '#######',
    '......#',
    '#####.#',
    '#...#.#',
    '#.#.#.#',
    '#.###.#',
    '#.....#',
    '#######',
  ];
  const way = Uint8Array.from(rows.join(''), (sign) => (sign === '#' ? 1 : 0));
  const { count } = walkOver({ width: 7, height: 8, of: way.slice() }, Int32Array.of(0));
  expect(count).toBe(way.reduce((sum, pixel) => sum + pixel, 0));
});
