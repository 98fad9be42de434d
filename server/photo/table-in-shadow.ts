import type { LabImage } from '../colour/lab.ts';
import type { Mask } from './regions.ts';
import { withoutGaps, withoutThin } from './spread.ts';
import { colourTable, shadeOfTable } from './table-colours.ts';
import type { Table } from './table.ts';
import { someOf } from './table.ts';
import { walkOver } from './walk-over.ts';

/**
 * The table on both sides of a shadow's edge, which no smooth light explains.
 *
 *     lit    ───────╮              what the table's colour becomes in more light or less is table too, as far as it
 *                    ╲             can be walked to; the edge of a shadow is a slope, which may be walked over, the
 *     shaded          ╰───────     edge of a paper a step, and so is the line of its own shadow
 *
 * Takes       the picture and the table as it was found: it has to be a plain one, for on wood or cloth other light
 *             turns one colour of the table into another of its own.
 * Gives       the table with what was walked to, every other pixel looked at; null where nothing was, and on other
 *             tables.
 */
export function tableInShadow(image: LabImage, table: Table): Table | null {
  if (table.roughness > PLAIN) return null;
  const { width, height } = image;
  const known = halved(table.reached, width, height);
  const way = withoutThin({ ...known, of: openWay(image, table, known) }, NARROW);
  const starts: number[] = [];
  for (let pixel = 0; pixel < known.of.length; pixel++)
    if (known.of[pixel] === 1) {
      way.of[pixel] = 1;
      starts.push(pixel);
    }
  const before = starts.length;
  const { reached: walked, count } = walkOver(way, Int32Array.from(starts));
  if (count - before < WORTH * known.of.length) return null;
  const reached = table.reached.slice();
  for (let y = 0, at = 0; y < known.height; y++)
    for (let x = 0; x < known.width; x++, at++)
      if (walked[at] === 1 && known.of[at] === 0) {
        const pixel = 2 * y * width + 2 * x;
        reached.fill(1, pixel, pixel + 2);
        reached.fill(1, pixel + width, pixel + width + 2);
      }
  const all = reached.reduce((sum, one) => sum + one, 0);
  const colours = colourTable(image, someOf(reached, all, 20000), false);
  return { ...table, reached, colours, share: all / reached.length };
}

/** Largest difference, in CIELAB units, between neighbouring pixels of a plain table. */
const PLAIN = 0.8;
/** Of every other pixel: a way has to be more than twice as wide, so that none leads along a paper's edge into it. */
const NARROW = 1;
/** Part of the picture from which what was walked to is worth anything. */
const WORTH = 0.004;
/** CIELAB units between a pixel's neighbours from which it is a step or a slope. */
const STEEP = 2.0;
/** A slope rises so many times as much over eight pixels of the preview as over two. */
const SLOPE = 2.2;

/** Where the table may go on in other light: it has a shade of the table's colours, and no step lies there. */
function openWay({ width, height, lab }: LabImage, { colours }: Table, known: Mask): Uint8Array {
  const shades = known.of.slice();
  const steps = new Uint8Array(shades.length);
  const across = (at: number, by: number): number => {
    const l = lab[at + by]! - lab[at - by]!;
    const a = lab[at + by + 1]! - lab[at - by + 1]!;
    const b = lab[at + by + 2]! - lab[at - by + 2]!;
    return l * l + a * a + b * b;
  };
  const row = 3 * width;
  for (let half = 0; half < shades.length; half++) {
    if (shades[half] === 1) continue;
    const column = half % known.width;
    const [x, y] = [2 * column + 1, (2 * (half - column)) / known.width + 1];
    const at = 3 * (y * width + x);
    const shade = shadeOfTable(colours, [lab[at]!, lab[at + 1]!, lab[at + 2]!], x, y, LIGHTEST);
    if (shade === 0) continue;
    shades[half] = 1;
    // Nearer to the rim of the picture what stands further inside tells.
    const inner =
      3 *
      (Math.min(Math.max(y, FAR), height - 1 - FAR) * width +
        Math.min(Math.max(x, FAR), width - 1 - FAR));
    const step = across(inner, 3) + across(inner, row);
    const slope = across(inner, 3 * FAR) + across(inner, FAR * row);
    if (step > STEEP * STEEP && slope < SLOPE * SLOPE * step) steps[half] = 1;
  }
  // A speck of another colour in it bars no way.
  const { of } = withoutGaps({ ...known, of: shades }, 1);
  for (let half = 0; half < of.length; half++) if (steps[half] === 1) of[half] = 0;
  return of;
}

/** Pixels of the preview on either side over which a slope has risen. */
const FAR = 4;

/** How much lighter than the table as it was found it may be, in (L + 16). */
const LIGHTEST = 1.5;

function halved(mask: Uint8Array, width: number, height: number): Mask {
  const [across, down] = [width >> 1, height >> 1];
  const of = new Uint8Array(across * down);
  for (let y = 0, at = 0; y < down; y++)
    for (let x = 0; x < across; x++, at++) of[at] = mask[(2 * y + 1) * width + 2 * x + 1]!;
  return { width: across, height: down, of };
}
