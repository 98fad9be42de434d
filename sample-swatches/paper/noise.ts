import type { Chance } from '../chance.ts';

/**
 * Soft uneven patches that join on to themselves: value noise, smoothly interpolated, several layers of
 * halving size.
 *
 * Takes       the side of a square picture in pixels, cells across and down of the coarsest layer, layers.
 * Gives       a number for each pixel, mean about 0, mostly within -1 and 1.
 */
export function softNoise(
  side: number,
  across: number,
  down: number,
  layers: number,
  chance: Chance,
): Float32Array {
  const out = new Float32Array(side * side);
  let strength = 1;
  for (let layer = 0; layer < layers; layer++) {
    addLayer(out, side, across << layer, down << layer, strength, chance);
    strength *= 0.55;
  }
  return out;
}

function addLayer(
  out: Float32Array,
  side: number,
  across: number,
  down: number,
  strength: number,
  chance: Chance,
): void {
  const knots = Float32Array.from({ length: across * down }, () => (2 * chance() - 1) * strength);
  const left = new Int32Array(side);
  const part = new Float32Array(side);
  for (let x = 0; x < side; x++) {
    const at = (x * across) / side;
    left[x] = Math.floor(at);
    part[x] = eased(at - left[x]!);
  }
  for (let y = 0; y < side; y++) {
    const at = (y * down) / side;
    const row = Math.floor(at);
    const fy = eased(at - row);
    const upper = row * across;
    const lower = ((row + 1) % down) * across;
    for (let x = 0; x < side; x++) {
      const p = left[x]!;
      const q = p + 1 === across ? 0 : p + 1;
      const fx = part[x]!;
      const above = knots[upper + p]! * (1 - fx) + knots[upper + q]! * fx;
      const below = knots[lower + p]! * (1 - fx) + knots[lower + q]! * fx;
      out[y * side + x]! += above * (1 - fy) + below * fy;
    }
  }
}

function eased(t: number): number {
  return t * t * (3 - 2 * t);
}
