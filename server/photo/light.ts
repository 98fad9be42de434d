import { linearOfByte } from '../colour/curves.ts';
import type { Picture } from './picture.ts';
import { fitSurface, heightAt } from './surface.ts';
import type { Sample } from './surface.ts';

/** How the light falls over the photo: for each channel a smooth surface in the logarithm of linear light. */
export interface LightField {
  readonly of: readonly [Float64Array, Float64Array, Float64Array];
  /** How far the light differs over the table, largest over smallest, in the green channel. */
  readonly range: number;
  /** How well the surface tells the light, as a standard error of its logarithm. */
  readonly error: number;
  readonly width: number;
  readonly height: number;
}

/**
 * Reads the light off the bare table: whatever its colour, it is the same all over but for the light.
 *
 * Takes       the preview and which of its pixels are table. With too little of it (one sheet fills the
 *             frame) the light is taken as even, and the error says that nobody knows.
 */
export function lightOnTable(picture: Picture, reached: Uint8Array): LightField {
  const { width, height } = picture;
  const cells = cellsOfTable(picture, reached);
  if (cells.length < 24) return evenLight(picture);
  const fits = [0, 1, 2].map((channel) =>
    fitSurface(
      cells.map((cell): Sample => ({ x: cell.x, y: cell.y, value: cell.log[channel]! })),
      2e-3,
    ),
  );
  const of = fits.map((fit) => fit.of) as unknown as LightField['of'];
  const heights = cells.map(({ x, y }) => heightAt(of[1], x, y));
  const range = Math.exp(Math.max(...heights) - Math.min(...heights));
  const spread = fits[1]!.spread;
  return { of, range, error: Math.max(LEAST, spread / 3), width, height };
}

/** Light taken as the same everywhere, for want of better knowledge. */
export function evenLight({ width, height }: Picture): LightField {
  const even = (): Float64Array => new Float64Array(6);
  return { of: [even(), even(), even()], range: 1, error: UNKNOWN, width, height };
}

/** Standard error of log light where the table is not seen, and the least that is claimed anywhere. */
const UNKNOWN = 0.12;
const LEAST = 0.02;

interface Cell {
  readonly x: number;
  readonly y: number;
  readonly log: readonly [number, number, number];
}

/** Means of table pixels over cells of 16 pixels: what stands out in one cell only weighs little. */
function cellsOfTable({ width, height, rgb }: Picture, reached: Uint8Array): Cell[] {
  const cells: Cell[] = [];
  for (let top = 0; top < height; top += CELL)
    for (let left = 0; left < width; left += CELL) {
      let [count, r, g, b, sumX, sumY] = [0, 0, 0, 0, 0, 0];
      for (let y = top; y < Math.min(height, top + CELL); y += 2)
        for (let x = left; x < Math.min(width, left + CELL); x += 2) {
          const pixel = y * width + x;
          if (reached[pixel] === 0) continue;
          count++;
          sumX += x;
          sumY += y;
          r += linearOfByte[rgb[3 * pixel]!]!;
          g += linearOfByte[rgb[3 * pixel + 1]!]!;
          b += linearOfByte[rgb[3 * pixel + 2]!]!;
        }
      if (count < CELL) continue;
      const log = (sum: number): number => Math.log(Math.max(1e-4, sum / count));
      cells.push({
        x: (2 * sumX) / count / width - 1,
        y: (2 * sumY) / count / height - 1,
        log: [log(r), log(g), log(b)],
      });
    }
  return cells;
}

const CELL = 16;

/** Light in each channel at a place of the preview, relative to nothing in particular. */
export function lightAt(field: LightField, x: number, y: number): [number, number, number] {
  const u = (2 * x) / field.width - 1;
  const v = (2 * y) / field.height - 1;
  return [
    Math.exp(heightAt(field.of[0], u, v)),
    Math.exp(heightAt(field.of[1], u, v)),
    Math.exp(heightAt(field.of[2], u, v)),
  ];
}
