/** Prints drawn for tests, each as a function of where on the sheet, for any choice of colours. */
import type { ColourError, Lab, LabImage } from '../../server/colour/lab.ts';
import { readPalette } from '../../server/colour/read-palette.ts';
import { labFromHex } from '../../server/colour/spaces.ts';
import { readPattern } from '../../server/pattern/read-pattern.ts';
import type { PatternTraits } from '../../server/pattern/traits.ts';
import { chanceOf } from '../colour/drawn.ts';

export type Paint = (x: number, y: number) => Lab;
export type Colours = readonly [ground: Lab, ...accents: Lab[]];

const hexes = (...list: [string, ...string[]]): Colours => list.map(labFromHex) as [Lab, ...Lab[]];

export const SHELL = hexes('#f3ead8', '#2f5d62', '#e2725b', '#c9b27c');
export const DEEP = hexes('#2f5d62', '#f3ead8', '#c9b27c', '#e2725b');
export const QUIET = hexes('#dfe6e2', '#b9cdc8', '#9fb9b5', '#c6c0ae');

/** Dots in a square lattice, `count` across the sheet, of a diameter that is a part of the lattice's step. */
export const dots =
  (count: number, colours: Colours, diameter = 0.6): Paint =>
  (x, y) => {
    const [u, v] = [((x * count) % 1) - 0.5, ((y * count) % 1) - 0.5];
    return Math.hypot(u, v) < diameter / 2 ? colours[1]! : colours[0];
  };

/** Upright stripes, `count` repeats across, of the ground and as many accents as are asked. */
export const stripes =
  (count: number, colours: Colours, accents = 1): Paint =>
  (x) =>
    colours[Math.floor(((x * count) % 1) * (accents + 1))]!;

/** Triangles that stand on their base in a lattice. */
export const triangles =
  (count: number, colours: Colours): Paint =>
  (x, y) => {
    const [u, v] = [(x * count) % 1, (y * count) % 1];
    return v > 0.2 && v < 0.8 && Math.abs(u - 0.5) < (v - 0.2) * 0.5 ? colours[1]! : colours[0];
  };

/** Round blossoms strewn over the sheet, of several sizes and colours. */
export function strewn(seed: number, colours: Colours): Paint {
  const chance = chanceOf(seed);
  const blossoms = Array.from({ length: 60 }, () => ({
    x: chance(),
    y: chance(),
    radius: 0.02 + 0.05 * chance(),
    accent: 1 + Math.floor(chance() * (colours.length - 1)),
  }));
  return (x, y) => {
    const here = blossoms.find(
      (blossom) => Math.hypot(x - blossom.x, y - blossom.y) < blossom.radius,
    );
    return here === undefined ? colours[0] : colours[here.accent]!;
  };
}

const ERROR: ColourError = { noise: 1, field: 0.5, reference: 1 };
export const SHEET = 152.4;

export function traitsOf(image: LabImage): PatternTraits {
  return readPattern(image, readPalette(image, ERROR, 1), SHEET / image.width);
}
