import sharp from 'sharp';
import { chanceOf } from '../chance.ts';
import { drawingOf } from '../drawing/catalogue.ts';
import { n } from '../drawing/strokes.ts';
import type { Print } from './paper-side.ts';

/**
 * Draws a print so that each pixel tells which slot of the colourway it shows: no soft edges, so that
 * areas can be counted and colours be laid in afterwards in linear light.
 *
 * Takes       the print, the side of the sheet in millimetres and in pixels.
 * Gives       the number of the slot for each pixel, row by row.
 */
export async function slotsOf(print: Print, sheet: number, pixels: number): Promise<Uint8Array> {
  const drawing = drawingOf(print.drawing);
  const paints = Array.from({ length: drawing.slots }, (_, slot) => {
    const grey = slot * STEP;
    return `rgb(${grey},${grey},${grey})`;
  });
  const tile = drawing.tile(print.repeat, paints, chanceOf(print.seed));
  const { data, info } = await sharp(Buffer.from(svgOf(tile, print, sheet, pixels)))
    .flatten({ background: '#000000' })
    .toColourspace('b-w')
    .raw()
    .toBuffer({ resolveWithObject: true });
  const slots = new Uint8Array(pixels * pixels);
  for (let pixel = 0; pixel < slots.length; pixel++)
    slots[pixel] = Math.round(data[pixel * info.channels]! / STEP);
  return slots;
}

const STEP = 40;

function svgOf(tile: string, { repeat, cutAt }: Print, sheet: number, pixels: number): string {
  const uses: string[] = [];
  const count = Math.ceil(sheet / repeat) + 2;
  for (let row = -1; row < count; row++)
    for (let column = -1; column < count; column++)
      uses.push(
        `<use href="#tile" x="${n((column - cutAt[0]) * repeat)}" y="${n((row - cutAt[1]) * repeat)}"/>`,
      );
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${pixels}" height="${pixels}" viewBox="0 0 ${sheet} ${sheet}" shape-rendering="crispEdges"><rect width="${sheet}" height="${sheet}" fill="rgb(0,0,0)"/><defs><g id="tile">${tile}</g></defs>${uses.join('')}</svg>`;
}
