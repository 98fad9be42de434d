import { labOfLinear, linearFromLab } from '../../server/colour/spaces.ts';
import type { Lab } from '../../server/colour/lab.ts';
import { chanceOf, normal } from '../chance.ts';
import { softNoise } from '../paper/noise.ts';
import type { Raster } from '../paper/raster.ts';

/** A piece of plain card: one colour, with the tooth of its surface. */
export function renderCard(lab: Lab, side: number, seed: number): Raster {
  const chance = chanceOf(seed);
  const { r, g, b } = linearFromLab(lab);
  const light = new Float32Array(3 * side * side);
  for (let at = 0; at < light.length; at += 3) {
    const grain = 1 + 0.012 * normal(chance);
    light[at] = r * grain;
    light[at + 1] = g * grain;
    light[at + 2] = b * grain;
  }
  return { side, light };
}

/** A smear of ink: where it covers, and how it looks there; and the mean of what is covered. */
export interface Smear {
  readonly raster: Raster;
  readonly cover: Float32Array;
  readonly lab: Lab;
  readonly darkest: Lab;
  readonly lightest: Lab;
}

/**
 * Ink pulled over card with a finger or pad: thick and thin in streaks, ragged at its ends.
 *
 * The ink lets through less the thicker it lies (Beer and Lambert): the light of card under ink of
 * thickness t is card x ink ^ t in each channel.
 */
export function renderSmear(ink: Lab, card: Lab, side: number, seed: number): Smear {
  const chance = chanceOf(seed);
  const streaks = softNoise(side, 2, 26, 2, chance);
  const patches = softNoise(side, 4, 4, 2, chance);
  const rag = softNoise(side, 3, 14, 2, chance);
  const under = linearFromLab(card);
  const full = linearFromLab(ink);
  const light = new Float32Array(3 * side * side);
  const cover = new Float32Array(side * side);
  for (let y = 0; y < side; y++)
    for (let x = 0; x < side; x++) {
      const pixel = y * side + x;
      const [u, v] = [(x + 0.5) / side, (y + 0.5) / side];
      const ends = Math.min(u, 1 - u) - 0.07 - 0.045 * rag[pixel]!;
      const edges = Math.min(v, 1 - v) - 0.08 - 0.02 * patches[pixel]!;
      cover[pixel] = Math.min(1, Math.max(0, 0.5 + 60 * Math.min(ends, edges)));
      const thick = Math.max(0.45, 1 + 0.13 * streaks[pixel]! + 0.1 * patches[pixel]!);
      const through = (channel: 'r' | 'g' | 'b'): number =>
        under[channel] * Math.max(0.001, full[channel] / under[channel]) ** thick;
      light[3 * pixel] = through('r');
      light[3 * pixel + 1] = through('g');
      light[3 * pixel + 2] = through('b');
    }
  return { raster: { side, light }, cover, ...coveredTruth(light, cover) };
}

function coveredTruth(
  light: Float32Array,
  cover: Float32Array,
): Pick<Smear, 'lab' | 'darkest' | 'lightest'> {
  const lab = labOfLinear(light, 'srgb');
  const inside = Array.from(cover.keys()).filter((pixel) => cover[pixel]! > 0.5);
  inside.sort((p, q) => lab[3 * p]! - lab[3 * q]!);
  const mean = (from: number, to: number): Lab => {
    const part = inside.slice(Math.floor(from * inside.length), Math.ceil(to * inside.length));
    const sum = (k: number): number =>
      part.reduce((all, pixel) => all + lab[3 * pixel + k]!, 0) / part.length;
    return { l: sum(0), a: sum(1), b: sum(2) };
  };
  return { lab: mean(0, 1), darkest: mean(0.04, 0.06), lightest: mean(0.94, 0.96) };
}
