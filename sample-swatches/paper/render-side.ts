import { labFromHex, labOfLinear, linearFromLab } from '../../server/colour/spaces.ts';
import type { Lab } from '../../server/colour/lab.ts';
import { chanceOf, normal, seedFor } from '../chance.ts';
import { softNoise } from './noise.ts';
import type { PaperSide } from './paper-side.ts';
import type { Raster } from './raster.ts';
import { renderWash } from './render-wash.ts';
import { slotsOf } from './render-print.ts';

/** What a side truly shows. */
export interface ColourTruth {
  readonly lab: Lab;
  readonly share: number;
  readonly role: 'ground' | 'accent';
  /** Of a tonal paper: the 5th and 95th percentile in lightness. */
  readonly range?: { readonly darkest: Lab; readonly lightest: Lab };
}

export interface RenderedSide {
  readonly raster: Raster;
  /** Largest share first. */
  readonly palette: readonly ColourTruth[];
}

/**
 * Prints a side: flat colours with soft edges made in linear light, on paper with a little grain.
 *
 * Takes       the side, its length in millimetres (sheets are square), and pixels a side.
 * Gives       its picture by even white light, and its colours with their shares counted in it.
 */
export async function renderSide(
  side: PaperSide,
  sheet: number,
  pixels: number,
): Promise<RenderedSide> {
  if (side.design.kind === 'wash') {
    const raster = renderWash(side.design, side.colours, pixels);
    return { raster: grained(raster, side), palette: [toneOf(raster)] };
  }
  const slots = await slotsOf(side.design, sheet, pixels * FINER);
  return {
    raster: grained(inked(slots, side.colours, pixels), side),
    palette: countedShares(slots, side.colours),
  };
}

/** Subpixels a side from which the soft edges of a print are averaged. */
const FINER = 2;

function inked(slots: Uint8Array, colours: readonly string[], side: number): Raster {
  const paints = colours.map((hex) => linearFromLab(labFromHex(hex)));
  const part = 1 / (FINER * FINER);
  const red = Float32Array.from(paints, ({ r }) => r * part);
  const green = Float32Array.from(paints, ({ g }) => g * part);
  const blue = Float32Array.from(paints, ({ b }) => b * part);
  const light = new Float32Array(3 * side * side);
  for (let y = 0; y < side * FINER; y++) {
    let at = y * side * FINER;
    const row = 3 * side * Math.floor(y / FINER);
    for (let to = row; to < row + 3 * side; to += 3)
      for (let fine = 0; fine < FINER; fine++) {
        const slot = slots[at++]!;
        light[to]! += red[slot]!;
        light[to + 1]! += green[slot]!;
        light[to + 2]! += blue[slot]!;
      }
  }
  return { side, light };
}

/** The grain of the paper: its mean is 1, so that no colour moves. */
function grained({ side, light }: Raster, paper: PaperSide): Raster {
  const chance = chanceOf(seedFor(paper.design.seed, 'grain', paper.id));
  const kraft = paper.stock === 'kraft';
  const cloud = softNoise(side, 24, 24, 2, chance);
  const grains = Float32Array.from({ length: 8192 }, () => normal(chance));
  const [fine, broad] = kraft ? [0.035, 0.02] : [0.012, 0.006];
  let start = 0;
  for (let pixel = 0; pixel < cloud.length; pixel++) {
    if (pixel % side === 0) start = Math.floor(8192 * chance());
    const by = 1 + broad * cloud[pixel]! + fine * grains[(start + pixel) & 8191]!;
    light[3 * pixel]! *= by;
    light[3 * pixel + 1]! *= by;
    light[3 * pixel + 2]! *= by;
  }
  return { side, light };
}

/** Slots of one colour count together. The ground is the paper's own slot, the first. */
function countedShares(slots: Uint8Array, colours: readonly string[]): ColourTruth[] {
  const counts = new Map<string, number>();
  const bySlot = new Uint32Array(256);
  for (const slot of slots) bySlot[slot]!++;
  colours.forEach((hex, slot) => counts.set(hex, (counts.get(hex) ?? 0) + bySlot[slot]!));
  return [...counts]
    .filter(([, count]) => count > 0)
    .map(([hex, count]): ColourTruth => ({
      lab: labFromHex(hex),
      share: count / slots.length,
      role: hex === colours[0] ? 'ground' : 'accent',
    }))
    .sort((p, q) => q.share - p.share);
}

function toneOf({ light }: Raster): ColourTruth {
  const lab = labOfLinear(light, 'srgb');
  const pixels = Array.from({ length: lab.length / 30 }, (_, k) => 30 * k);
  const order = pixels.sort((p, q) => lab[p]! - lab[q]!);
  const mean = (indices: readonly number[]): Lab => {
    const sum = [0, 0, 0];
    for (const at of indices) for (let k = 0; k < 3; k++) sum[k]! += lab[at + k]!;
    const [l, a, b] = sum.map((value) => value / indices.length);
    return { l: l!, a: a!, b: b! };
  };
  const near = (part: number): Lab => {
    const first = Math.floor((part - 0.01) * order.length);
    return mean(order.slice(first, first + Math.ceil(0.02 * order.length)));
  };
  return {
    lab: mean(order),
    share: 1,
    role: 'ground',
    range: { darkest: near(0.05), lightest: near(0.95) },
  };
}
