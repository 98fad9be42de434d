import fc from 'fast-check';
import { expect, test } from 'vitest';
import { countInsides, insidePixels } from '../../server/colour/insides.ts';

test('a pixel lies inside when it is flat and the square of nine around it shows one colour', () => {
  const pictures = fc
    .tuple(fc.integer({ min: 1, max: 8 }), fc.integer({ min: 1, max: 8 }))
    .chain(([width, height]) => {
      const all = { minLength: width * height, maxLength: width * height };
      // Mostly one colour, so that insides come about.
      const colour = fc.integer({ min: 0, max: 11 }).map((n) => (n === 0 ? 1 : 0));
      return fc.record({
        width: fc.constant(width),
        height: fc.constant(height),
        of: fc.array(colour, all).map((of) => Uint8Array.from(of)),
        flat: fc
          .array(
            colour.map((n) => 1 - n),
            all,
          )
          .map((flat) => Uint8Array.from(flat)),
      });
    });
  fc.assert(
    fc.property(pictures, ({ width, height, of, flat }) => {
      const inside = insidePixels({ width, height, of }, flat);
      for (let y = 0; y < height; y++)
        for (let x = 0; x < width; x++) {
          const square = [-1, 0, 1].flatMap((dy) =>
            [-1, 0, 1].map((dx) =>
              x + dx < 0 || x + dx >= width || y + dy < 0
                ? undefined
                : of[(y + dy) * width + x + dx],
            ),
          );
          const plain = square.every((label) => label === of[y * width + x]);
          expect(inside[y * width + x]).toBe(plain ? flat[y * width + x] : 0);
        }
      const counts = countInsides({ width, height, of }, inside, 2);
      expect(counts[0]! + counts[1]!).toBe(inside.reduce((sum, one) => sum + one, 0));
    }),
  );
});
