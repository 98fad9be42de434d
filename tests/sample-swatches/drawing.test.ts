import { describe, expect, it } from 'vitest';
import { chanceOf } from '../../sample-swatches/chance.ts';
import { drawings } from '../../sample-swatches/drawing/catalogue.ts';
import { spread } from '../../sample-swatches/drawing/strokes.ts';
import { renderSide } from '../../sample-swatches/paper/render-side.ts';
import { slotsOf } from '../../sample-swatches/paper/render-print.ts';
import type { PaperSide } from '../../sample-swatches/paper/paper-side.ts';

const PAINTS = ['#f8ede2', '#155862', '#e5735c', '#6b7136', '#1c2547'];

function sideOf(name: string, slots: number, repeat: number): PaperSide {
  return {
    id: name,
    design: { kind: 'print', drawing: name, seed: 5, repeat, cutAt: [0.3, 0.6] },
    colours: PAINTS.slice(0, slots),
    stock: 'smooth',
  };
}

describe('every drawing', () => {
  it.each(drawings.map((drawing) => [drawing.name, drawing] as const))(
    '%s shows all its colours, and their shares add up to 1',
    async (name, drawing) => {
      const { palette } = await renderSide(
        sideOf(name, drawing.slots, drawing.repeat[0]),
        152.4,
        200,
      );
      expect(palette).toHaveLength(drawing.slots);
      expect(palette.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
      expect(palette.filter(({ role }) => role === 'ground')).toHaveLength(1);
    },
  );

  it.each(drawings.map((drawing) => [drawing.name, drawing] as const))(
    '%s comes back to itself after its repeat, and no sooner than it says',
    async (name, drawing) => {
      // A repeat of 32 whole pixels, so that a shift by it can be compared pixel by pixel.
      const pixels = 320;
      const repeat = 40;
      const sheet = 160;
      const slots = await slotsOf(
        { kind: 'print', drawing: name, seed: 5, repeat, cutAt: [0, 0] },
        sheet,
        pixels,
      );
      const shift = (repeat / (drawing.within ?? 1) / sheet) * pixels;
      const [across, down] = [unlike(slots, pixels, shift, 0), unlike(slots, pixels, 0, shift)];
      expect(Math.min(across, down)).toBeLessThan(0.01);
      const half = shift / 2;
      expect(
        Math.max(unlike(slots, pixels, half, 0), unlike(slots, pixels, 0, half)),
      ).toBeGreaterThan(0.02);
    },
  );
});

/** Part of the pixels that show another colour than those shifted by so much. */
function unlike(slots: Uint8Array, side: number, dx: number, dy: number): number {
  let [other, all] = [0, 0];
  for (let y = 0; y + dy < side; y++)
    for (let x = 0; x + dx < side; x++) {
      all++;
      if (slots[y * side + x] !== slots[(y + dy) * side + x + dx]) other++;
    }
  return other / all;
}

describe('places on a tile', () => {
  it('keep room around each, also across the edges where tiles join', () => {
    const side = 40;
    const places = spread(12, side, chanceOf(3));
    const near = places.flatMap(([x, y], index) =>
      places.slice(0, index).map(([u, v]) => {
        const [dx, dy] = [Math.abs(x - u), Math.abs(y - v)];
        return Math.hypot(Math.min(dx, side - dx), Math.min(dy, side - dy));
      }),
    );
    expect(Math.min(...near)).toBeGreaterThan(0.6 * Math.sqrt((side * side) / 12));
    for (const value of places.flat()) expect(value).toBeGreaterThanOrEqual(0);
  });
});
