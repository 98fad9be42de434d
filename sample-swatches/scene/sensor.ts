import { bytesOfLinear } from '../../server/colour/spaces.ts';
import { chanceOf, normal, seedFor } from '../chance.ts';
import type { Canvas } from './paint-things.ts';
import type { Scene } from './scene.ts';

/** The softness of a lens: each pixel takes a quarter from its neighbours across, then down. */
export function blur({ width, height, light }: Canvas): void {
  const row = 3 * width;
  for (let y = 0; y < height; y++) {
    const start = y * row;
    for (let k = 0; k < 3; k++) {
      let before = light[start + k]!;
      for (let at = start + k; at < start + row - 3; at += 3) {
        const here = light[at]!;
        light[at] = 0.5 * here + 0.25 * (before + light[at + 3]!);
        before = here;
      }
    }
  }
  const above = light.slice(0, row);
  for (let y = 0; y < height - 1; y++)
    for (let at = y * row, x = 0; x < row; at++, x++) {
      const here = light[at]!;
      light[at] = 0.5 * here + 0.25 * (above[x]! + light[at + row]!);
      above[x] = here;
    }
}

/** Light becomes bytes: noise of the sensor, the camera's tones, sRGB. */
export function develop(canvas: Canvas, scene: Scene): Uint8Array {
  addNoise(canvas, scene);
  if (scene.toneCurve > 0) bendTones(canvas.light, scene.toneCurve);
  return bytesOfLinear(canvas.light);
}

function addNoise({ width, height, light }: Canvas, { seed, noise }: Scene): void {
  const chance = chanceOf(seedFor(seed, 'noise'));
  const drawn = Float32Array.from({ length: 1 << 16 }, () => normal(chance));
  const row = 3 * width;
  for (let y = 0; y < height; y++) {
    const start = Math.floor(65536 * chance());
    for (let x = 0; x < row; x++) {
      const value = light[y * row + x]!;
      const spread = Math.sqrt(
        noise.read * noise.read + noise.shot * noise.shot * Math.max(0, value),
      );
      light[y * row + x] = value + spread * drawn[(start + x) & 65535]!;
    }
  }
}

/** Deepens the shadows and rolls the highlights off, as phones do to please: a smooth S over encoded tones. */
function bendTones(light: Float32Array, strength: number): void {
  for (let at = 0; at < light.length; at++) {
    const tone = Math.sqrt(Math.max(0, light[at]!));
    const bent = tone < 1 ? tone + strength * tone * (1 - tone) * (2 * tone - 0.7) : tone;
    light[at] = bent * bent;
  }
}
