import type { LabImage } from '../colour/lab.ts';
import { contains, polygonArea } from '../geometry/polygon.ts';
import type { Quad } from '../geometry/points.ts';
import { rectangleQuad } from '../geometry/quad.ts';
import { gridOf } from './apart-quads.ts';
import { aboutShreds } from './about-shreds.ts';
import { fillQuad } from './fill-quad.ts';
import { scaledQuad } from './find-sheets.ts';
import type { Candidate, Overview } from './find-sheets.ts';
import { regionsOf } from './regions.ts';
import type { Mask, Region } from './regions.ts';
import { withoutThin } from './spread.ts';
import { median } from './surface.ts';
import { shrunken } from './white-card.ts';

/**
 * The last look: what lies there as broad as a good part of a sheet, and nothing that was told accounts for it.
 *
 * Takes       what was seen; all that was told, sheets, unsure places and other things; the sheets among it, and the
 *             area of one, in pixels of the preview.
 * Gives       quads of a sheet's size that say where to look; they may reach out of the picture. None where no sheet
 *             was told, since then nothing says how large one is.
 */
export function untold(
  { things }: Pick<Overview, 'things'>,
  told: readonly Quad<'photo'>[],
  sheets: readonly Candidate[],
  one: number,
): Candidate[] {
  if (sheets.length === 0) return [];
  const open = thinnedOut(things);
  for (const corners of told) fillQuad(open, scaledQuad(shrunken(corners, -BESIDE), 1 / EVERY), 0);
  const side = Math.sqrt(one) / EVERY;
  const small = one / EVERY ** 2;
  const broad = withoutThin(open, Math.max(1, Math.round((BROAD / 2) * side)));
  const smaller = sheets.map((sheet) => ({
    ...sheet,
    corners: scaledQuad(sheet.corners, 1 / EVERY),
    area: sheet.area / EVERY ** 2,
  }));
  return regionsOf(broad, LARGE * small).flatMap((region): Candidate[] => {
    const places = aboutShreds([region], smaller, small, open.width);
    const found = places.length > 0 ? places.map(({ corners }) => corners) : [boxOf(region)];
    return found.map((corners) => {
      const inFull = scaledQuad(corners, EVERY);
      return { corners: inFull, area: polygonArea(inFull), fill: 0 };
    });
  });
}

/** How many pixels of a region lie in none of these. */
export function pixelsOutside(
  { pixels }: Region,
  width: number,
  quads: readonly Quad<'photo'>[],
): number {
  const some = pixels.filter((_, index) => index % 37 === 0);
  const wider = quads.map((corners) => shrunken(corners, -BESIDE));
  const free = some.filter((pixel) => {
    const place = { x: (pixel % width) + 0.5, y: Math.floor(pixel / width) + 0.5 };
    return !wider.some((corners) => contains(corners, place));
  });
  return (pixels.length * free.length) / some.length;
}

/** Whether one colour shows all over a quad, as on a card, and no print. */
export function isPlain({ width, lab }: LabImage, corners: Quad<'photo'>): boolean {
  const seen = gridOf(shrunken(corners, 0.08), 11).map(({ x, y }) => {
    const at = 3 * (Math.floor(y) * width + Math.floor(x));
    return [lab[at]!, lab[at + 1]!, lab[at + 2]!];
  });
  const middle = [0, 1, 2].map((axis) => median(seen.map((colour) => colour[axis]!)));
  const off = seen.map((colour) => Math.hypot(...colour.map((value, k) => value - middle[k]!)));
  return off.filter((by) => by > ANOTHER).length < 0.1 * off.length;
}

/** CIELAB units by which another colour differs; light over a card changes it by less. */
const ANOTHER = 7;

/** Pixels of the preview to one that is looked at. */
const EVERY = 4;
/** Part of its side left out around what was told: a shadow, corners that are a little off. */
const BESIDE = 0.03;
/** In sides of a sheet: narrower things are gaps, shadows, rims. */
const BROAD = 0.36;
/** Part of a sheet's area that something has to cover. */
const LARGE = 0.2;

function thinnedOut({ width, height, of }: Mask): Mask {
  const [across, down] = [Math.floor(width / EVERY), Math.floor(height / EVERY)];
  const some = new Uint8Array(across * down);
  for (let y = 0, at = 0; y < down; y++)
    for (let x = 0; x < across; x++, at++)
      some[at] = of[(y * EVERY + EVERY / 2) * width + x * EVERY + EVERY / 2]!;
  return { width: across, height: down, of: some };
}

function boxOf({ left, top, right, bottom }: Region): Quad<'photo'> {
  return rectangleQuad<'photo'>(left, top, right - left + 1, bottom - top + 1);
}
