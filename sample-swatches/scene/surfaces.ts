import { labFromHex, linearFromLab } from '../../server/colour/spaces.ts';
import { chanceOf, normal, seedFor } from '../chance.ts';
import { softNoise } from '../paper/noise.ts';
import type { Raster } from '../paper/raster.ts';
import type { SurfaceKind } from './scene.ts';

/** Millimetres after which the picture of a table joins on to itself. */
export const SURFACE_SIDE = 512;

type Painter = (x: number, y: number, noise: number, other: number) => number;

interface Surface {
  readonly colour: string;
  readonly other: string;
  /** Cells of the two layers of unevenness across and down. */
  readonly cells: readonly [number, number, number, number];
  /** Part of the other colour at a place, in millimetres, given two kinds of unevenness. */
  readonly part: Painter;
}

const SURFACES: Record<SurfaceKind, Surface> = {
  'white board': {
    colour: '#ebe9e3',
    other: '#dedbd3',
    cells: [5, 5, 64, 64],
    part: (_x, _y, noise, other) => 0.3 + 0.25 * noise + 0.12 * other,
  },
  'grey desk': {
    colour: '#a3a5a3',
    other: '#8f9291',
    cells: [5, 5, 128, 128],
    part: (_x, _y, noise, other) => 0.45 + 0.28 * noise + 0.22 * other,
  },
  wood: {
    colour: '#cda678',
    other: '#9d744a',
    cells: [3, 40, 8, 128],
    part: (x, y, noise, other) => {
      const joint = y % 128 < 0.7 ? 1 : 0;
      const board = 0.12 * Math.sin(7 * Math.floor(y / 128));
      const rings = 0.18 * Math.sin(y * 0.55 + 4 * noise + 2 * Math.sin(x * 0.01227));
      return joint + 0.3 + board + 0.32 * noise + 0.22 * other + rings;
    },
  },
  'cutting mat': {
    colour: '#23443d',
    other: '#86aa9b',
    cells: [8, 8, 128, 128],
    part: (x, y, noise, other) => {
      const line = (at: number): number => {
        const near = Math.abs(((at + 5.12) % 10.24) - 5.12);
        const bold = Math.round(at / 10.24) % 5 === 0;
        return near < (bold ? 0.4 : 0.22) ? (bold ? 0.8 : 0.42) : 0;
      };
      return Math.max(line(x), line(y)) + 0.03 + 0.025 * noise + 0.03 * other;
    },
  },
  cloth: {
    colour: '#d8cfbd',
    other: '#8b9a9c',
    cells: [4, 4, 128, 128],
    part: (x, y, noise, other) => {
      const band = (at: number): number =>
        at % 25.6 < 6.4 ? 0.33 : at % 25.6 > 15 && at % 25.6 < 16.4 ? 0.33 : 0;
      const weave = (Math.floor(x / 0.64) + Math.floor(y / 0.64)) % 2 === 0 ? 0.06 : 0;
      return band(x) + band(y) + weave + 0.05 * noise + 0.12 * other;
    },
  },
};

/** Paints a table: a square of `SURFACE_SIDE` millimetres that joins on to itself. */
export function renderSurface(kind: SurfaceKind, side: number, seed: number): Raster {
  const { colour, other, cells, part } = SURFACES[kind];
  const chance = chanceOf(seedFor(seed, 'surface'));
  const [one, two] = [colour, other].map((hex) => linearFromLab(labFromHex(hex)));
  const broad = softNoise(side, cells[0], cells[1], 3, chance);
  const fine = softNoise(side, cells[2], cells[3], 3, chance);
  const grains = Float32Array.from({ length: 8192 }, () => 1 + 0.02 * normal(chance));
  const light = new Float32Array(3 * side * side);
  const step = SURFACE_SIDE / side;
  for (let y = 0; y < side; y++)
    for (let x = 0; x < side; x++) {
      const pixel = y * side + x;
      const t = Math.min(1, Math.max(0, part(x * step, y * step, broad[pixel]!, fine[pixel]!)));
      const grain = grains[(pixel * 7 + y * 131) & 8191]!;
      light[3 * pixel] = (one!.r + t * (two!.r - one!.r)) * grain;
      light[3 * pixel + 1] = (one!.g + t * (two!.g - one!.g)) * grain;
      light[3 * pixel + 2] = (one!.b + t * (two!.b - one!.b)) * grain;
    }
  return { side, light };
}
