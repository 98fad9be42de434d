import { describe, expect, it } from 'vitest';
import type { Quad } from '../../server/geometry/points.ts';
import { rectangleQuad } from '../../server/geometry/quad.ts';
import { hasBareStrip } from '../../server/photo/bare-strip.ts';

const SIZE = 200;

/** A table that shows outside a box, in pixels, and nowhere within it but where motifs leave it bare. */
function tableAround(
  sheet: Quad<'photo'>,
  isBare: (x: number, y: number) => boolean = () => false,
): Uint8Array {
  const reached = new Uint8Array(SIZE * SIZE);
  for (let y = 0; y < SIZE; y++)
    for (let x = 0; x < SIZE; x++) {
      const inside = x >= sheet[0].x && x < sheet[2].x && y >= sheet[0].y && y < sheet[2].y;
      reached[y * SIZE + x] = !inside || isBare(x, y) ? 1 : 0;
    }
  return reached;
}

describe('bare table within an outline', () => {
  const sheet = rectangleQuad<'photo'>(50, 50, 100, 100);

  it.each([
    ['right', 14, 0],
    ['left', -14, 0],
    ['lower', 0, 14],
    ['upper', 0, -14],
  ])('runs along its %s side where it lies beside its sheet', (_, dx, dy) => {
    const beside = rectangleQuad<'photo'>(50 + dx, 50 + dy, 100, 100);
    expect(hasBareStrip(beside, tableAround(sheet), SIZE)).toBe(true);
  });

  it('does not where it lies on its sheet, or a pixel or two off', () => {
    for (const off of [0, 2])
      expect(
        hasBareStrip(rectangleQuad<'photo'>(50 + off, 50, 100, 100), tableAround(sheet), SIZE),
      ).toBe(false);
  });

  it('does not where the whole sheet looks like the table', () => {
    expect(
      hasBareStrip(
        sheet,
        tableAround(sheet, () => true),
        SIZE,
      ),
    ).toBe(false);
    const motifs = tableAround(sheet, (x, y) => (x % 20) + (y % 20) > 14);
    expect(hasBareStrip(sheet, motifs, SIZE)).toBe(false);
  });
});
