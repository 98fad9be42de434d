import { aspectOf } from './find-sheets.ts';
import type { Candidate, Overview } from './find-sheets.ts';
import { fillQuad } from './fill-quad.ts';
import { regionsOf } from './regions.ts';
import type { Mask, Region } from './regions.ts';
import { filledWithoutThin, spreadOut } from './spread.ts';
import { shrunken } from './white-card.ts';

export interface Strewn {
  readonly inside: readonly Region[];
  /** These may go on outside the picture. */
  readonly atRim: readonly Region[];
}

/**
 * Where small things lie strewn close together, joined to regions: the motifs of a sheet whose ground looks so
 * much like the table that nothing else of it is seen.
 *
 *     +-----------+
 *     |  *   *  * |     the border is a faint line, the ground was taken for table;
 *     | *   *  *  |     the motifs, with what lies between them, fill most of the sheet
 *     |   *  *   *|
 *     +-----------+
 *
 * Takes       what was seen, the sheets already told, and the area of one sheet, in pixels of the preview.
 * Gives       regions of at least a tenth of a sheet that lie in no sheet told, nor in a large thing that
 *             ends at the rim of the picture; none, without looking closer, where little is left.
 */
export function strewnOver(
  { things, cutOff, candidates }: Overview,
  sheets: readonly Pick<Candidate, 'corners'>[],
  one: number,
): Strewn {
  const { width, height } = things;
  const of = things.of.slice();
  wipeTold({ width, height, of }, sheets, candidates, one);
  for (const { pixels } of cutOff) if (pixels.length > WHOLE_THING * one) clear(of, pixels);
  if (countOf(of) < WORTH_A_LOOK * one) return { inside: [], atRim: [] };
  const by = Math.round(Math.sqrt(one) / 20);
  const regions = regionsOf(filledWithoutThin({ width, height, of }, by), WHOLE_THING * one);
  // The next motif would lie so far off.
  const rim = 2 * by + 3;
  const isAtRim = ({ left: l, top, right, bottom }: Region): boolean =>
    l < rim || top < rim || right >= width - rim || bottom >= height - rim;
  return {
    inside: regions.filter((region) => !isAtRim(region)),
    atRim: regions.filter(isAtRim),
  };
}

/** Whether a group of motifs or shreds goes on to the very rim of the picture: not a speck of it, but a stretch. */
export function goesOnOutside(
  { pixels }: Region,
  { width, height }: Pick<Mask, 'width' | 'height'>,
  one: number,
): boolean {
  let atRim = 0;
  for (const pixel of pixels) {
    const x = pixel % width;
    const y = (pixel - x) / width;
    if (x < RIM || y < RIM || x >= width - RIM || y >= height - RIM) atRim++;
  }
  return atRim > STRETCH * Math.sqrt(one);
}

/** Pixels of the preview; the outermost three belong to nothing. */
const RIM = 8;
/** Pixels at the rim, in sides of a sheet: a sheet that is cut off shows at least some of its print there. */
const STRETCH = 0.2;

/** Parts of a sheet's area: of a thing that stands for itself, and of what is left before it is looked at. */
const WHOLE_THING = 0.1;
const WORTH_A_LOOK = 0.03;
/** Length over width of a card at most; stripes are longer. */
const LONG = 2.4;

/** Part of a sheet's side around it that belongs to it: its shadow, its torn rim. */
const AROUND = 0.025;

/** Other whole things, such as the white card, are told like the sheets; bars and specks are parts of a print. */
function wipeTold(
  mask: Mask,
  sheets: readonly Pick<Candidate, 'corners'>[],
  candidates: readonly Candidate[],
  one: number,
): void {
  const whole = candidates.filter(
    ({ corners, area }) => area > WHOLE_THING * one && aspectOf(corners) < LONG,
  );
  for (const { corners } of [...sheets, ...whole]) fillQuad(mask, shrunken(corners, -AROUND), 0);
}

/**
 * Shreds of a sheet whose ground looks so much like the table that most of it was taken for table: specks, a stretch
 * of its border, a darker cloud of a wash. Each group of them as one region that its outermost shreds bound.
 *
 * Takes       what was seen, the sheets already told, and the area of one sheet, in pixels of the preview.
 */
export function shredsOver(
  { table, things, cutOff, candidates }: Overview,
  sheets: readonly Pick<Candidate, 'corners'>[],
  one: number,
): Region[] {
  const { width, height } = things;
  const of = new Uint8Array(width * height);
  // The picture's outermost pixels belong to no table.
  for (let y = 3; y < height - 3; y++)
    for (let pixel = y * width + 3, end = (y + 1) * width - 3; pixel < end; pixel++)
      of[pixel] = 1 - table.reached[pixel]!;
  wipeTold({ width, height, of }, sheets, candidates, one);
  for (const { pixels } of cutOff) clear(of, pixels);
  if (countOf(of) < WORTH_A_LOOK * one) return [];
  const groups = regionsOf(
    spreadOut({ width, height, of }, Math.round(Math.sqrt(one) / 20)),
    0.3 * one,
  );
  return groups.flatMap(({ pixels }): Region[] => {
    const shreds = pixels.filter((pixel) => of[pixel] === 1);
    if (shreds.length < WORTH_A_LOOK * one) return [];
    let left = width;
    let right = 0;
    for (let at = shreds.length - 1; at >= 0; at--) {
      const x = shreds[at]! % width;
      if (x < left) left = x;
      if (x > right) right = x;
    }
    // They come row by row.
    const top = Math.floor(shreds[0]! / width);
    const bottom = Math.floor(shreds[shreds.length - 1]! / width);
    return [{ pixels: shreds, left, right, top, bottom }];
  });
}

// Counted by index: to walk over so long an array with `of` makes an object for each pixel.
function countOf(of: Uint8Array): number {
  let count = 0;
  for (let pixel = of.length - 1; pixel >= 0; pixel--) count += of[pixel]!;
  return count;
}

function clear(of: Uint8Array, pixels: Int32Array): void {
  for (let at = pixels.length - 1; at >= 0; at--) of[pixels[at]!] = 0;
}
