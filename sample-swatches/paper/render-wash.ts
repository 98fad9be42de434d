import { labFromHex, linearFromLab } from '../../server/colour/spaces.ts';
import { chanceOf, normal } from '../chance.ts';
import { softNoise } from './noise.ts';
import type { Wash } from './paper-side.ts';
import type { Raster } from './raster.ts';

/** Paints a paper of one running tone. Colours go from light to deep. */
export function renderWash(wash: Wash, colours: readonly string[], side: number): Raster {
  const tone = wash.texture === 'linen' ? linenTone(side, wash.seed) : waterTone(side, wash.seed);
  const stops = colours.map((hex) => linearFromLab(labFromHex(hex)));
  const light = new Float32Array(3 * side * side);
  for (let pixel = 0; pixel < tone.length; pixel++) {
    const at = Math.min(0.9999, Math.max(0, tone[pixel]!)) * (stops.length - 1);
    const [from, part] = [stops[Math.floor(at)]!, at % 1];
    const to = stops[Math.floor(at) + 1]!;
    light[3 * pixel] = from.r + part * (to.r - from.r);
    light[3 * pixel + 1] = from.g + part * (to.g - from.g);
    light[3 * pixel + 2] = from.b + part * (to.b - from.b);
  }
  return { side, light };
}

/** Pools of pigment: broad patches, and finer ones where the colour settled. */
function waterTone(side: number, seed: number): Float32Array {
  const chance = chanceOf(seed);
  const pools = softNoise(side, 2, 2, 5, chance);
  const drift = softNoise(side, 3, 2, 2, chance);
  return pools.map((pool, pixel) => {
    const x = 0.5 + 0.34 * pool + 0.22 * drift[pixel]!;
    return x + 0.06 * Math.sin(9 * x);
  });
}

/** Threads across and down, each with its own depth, thickening and thinning as it goes. */
function linenTone(side: number, seed: number): Float32Array {
  const chance = chanceOf(seed);
  const threads = Math.round(side / Math.max(2.2, side / 420));
  const across = Float32Array.from({ length: threads }, () => normal(chance));
  const down = Float32Array.from({ length: threads }, () => normal(chance));
  const slub = softNoise(side, 4, 60, 2, chance);
  const slubDown = softNoise(side, 60, 4, 2, chance);
  const out = new Float32Array(side * side);
  for (let y = 0; y < side; y++)
    for (let x = 0; x < side; x++) {
      const pixel = y * side + x;
      const row = across[Math.floor((y * threads) / side)]!;
      const column = down[Math.floor((x * threads) / side)]!;
      out[pixel] = 0.5 + 0.1 * row + 0.1 * column + 0.1 * slub[pixel]! + 0.1 * slubDown[pixel]!;
    }
  return out;
}
