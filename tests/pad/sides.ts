/** Sides and sheets made up for tests: a palette in hex and shares, a drawing, a place on the table. */
import type { PaletteColour } from '../../server/colour/palette.ts';
import { labFromHex } from '../../server/colour/spaces.ts';
import type { Quad } from '../../server/geometry/points.ts';
import type { Sheet, Side } from '../../server/pad/pad.ts';
import { MAP_SIDE } from '../../server/pattern/descriptor.ts';
import { chanceOf } from '../colour/drawn.ts';

export type Colours = readonly (readonly [hex: string, share: number])[];

/** The first colour is the ground. `drawing` picks the pattern: equal numbers, equal patterns. */
export function sideOf(id: string, colours: Colours, drawing = 0): Side {
  const chance = chanceOf(drawing + 1);
  const palette: PaletteColour[] = colours.map(([hex, share], index) => ({
    lab: labFromHex(hex),
    share,
    role: index === 0 ? 'ground' : 'accent',
    uncertainty: 1,
  }));
  return {
    id,
    photo: 'photo',
    corners: square(0, 0, 100),
    palette: { tonal: false, colours: palette.sort((p, q) => q.share - p.share) },
    pattern: {
      repeat: null,
      scale: 10,
      direction: 'none',
      up: 0,
      busyness: 0.3,
      descriptor: Array.from({ length: MAP_SIDE ** 2 }, () => Math.floor(256 * chance() ** 4)),
    },
    confidence: 1,
    notes: [],
  };
}

export function sheetOf(id: string, front: Side | null, back: Side | null, copies = 1): Sheet {
  return { id, label: id, copies, front, back };
}

export function square(x: number, y: number, size: number): Quad<'photo'> {
  return [
    { x, y },
    { x: x + size, y },
    { x: x + size, y: y + size },
    { x, y: y + size },
  ];
}
