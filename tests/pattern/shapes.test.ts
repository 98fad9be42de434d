import fc from 'fast-check';
import { expect, test } from 'vitest';
import { shapesOf } from '../../server/pattern/shapes.ts';

const drawing = (rows: readonly string[]) => ({
  width: rows[0]!.length,
  height: rows.length,
  of: Uint8Array.from(rows.join(''), Number),
});

test('shapes that meet further down are one', () => {
  const labels = drawing(['0100010', '0100010', '0111110', '0000000']);
  const { shape, first } = shapesOf(labels, 0);
  expect(first).toEqual([1]);
  for (let at = 0; at < labels.of.length; at++) if (labels.of[at] === 1) expect(shape[at]).toBe(0);
});

test('pixels that touch at a corner only are two shapes', () => {
  expect(shapesOf(drawing(['010', '100']), 0).first).toEqual([1, 3]);
});

test('two pixels are of one shape if and only if one can be walked to from the other', () => {
  const pictures = fc
    .tuple(fc.integer({ min: 1, max: 9 }), fc.integer({ min: 1, max: 9 }))
    .chain(([width, height]) =>
      fc
        .array(fc.integer({ min: 0, max: 2 }), {
          minLength: width * height,
          maxLength: width * height,
        })
        .map((of) => ({ width, height, of: Uint8Array.from(of) })),
    );
  fc.assert(
    fc.property(pictures, (labels) => {
      const { shape, first } = shapesOf(labels, 0);
      const walked = walkedFrom(labels);
      expect(first).toEqual([...new Set(walked.filter((from) => from >= 0))]);
      for (let at = 0; at < walked.length; at++)
        if (walked[at]! >= 0) expect(first[shape[at]!]).toBe(walked[at]);
    }),
  );
});

/** The first pixel of each pixel's shape, by walking from each in turn; -1 on the ground. */
function walkedFrom({ width, height, of }: ReturnType<typeof drawing>): number[] {
  const from = new Array<number>(of.length).fill(-1);
  for (let start = 0; start < of.length; start++) {
    if (of[start] === 0 || from[start]! >= 0) continue;
    const open = [start];
    from[start] = start;
    for (const at of open) {
      const [x, y] = [at % width, Math.floor(at / width)];
      for (const [dx, dy] of [
        [1, 0],
        [-1, 0],
        [0, 1],
        [0, -1],
      ] as const) {
        const to = at + dy * width + dx;
        if (x + dx < 0 || x + dx >= width || y + dy < 0 || y + dy >= height) continue;
        if (of[to] !== of[start] || from[to]! >= 0) continue;
        from[to] = start;
        open.push(to);
      }
    }
  }
  return from;
}
