import type { LabImage } from '../colour/lab.ts';
import { workRoom } from '../colour/work-room.ts';
import { rankInPlace } from './surface.ts';
import { colourTable, tableMask } from './table-colours.ts';
import type { TableColours } from './table-colours.ts';
import { walkOver } from './walk-over.ts';

/** Which pixels of the preview show the table, as far as it can be walked to from the picture's rim. */
export interface Table {
  readonly reached: Uint8Array;
  /** How far two neighbouring pixels of bare table differ, in CIELAB units: large on wood and cloth. */
  readonly roughness: number;
  /** Part of the picture that is table. */
  readonly share: number;
  readonly colours: TableColours;
}

/**
 * Finds the table that the sheets lie on.
 *
 * The rim of the picture is table for the most part. Its light is taken out with a smooth surface, the
 * colours that remain there (one on a board, a few on cloth, a range on wood) are the table's, and
 * everything of these colours that can be walked to from the rim without crossing an edge sharper than
 * the table's own is table. Then all is done once more from the table found, which lies around
 * the sheets and not only at the rim.
 */
export function findTable(image: LabImage): Table {
  const rim = rimPixels(image);
  const barrier = roughPixels(image, rim);
  // The first walk only fetches colours.
  const first = walkOdd(image, colourTable(image, rim, true), barrier.of, rim);
  const inner = someOf(first.reached, first.count, 20000);
  const colours =
    inner.length > 500 ? colourTable(image, inner, false) : colourTable(image, rim, true);
  const { reached, count } = walk(image, colours, barrier.of, rim);
  return { reached, roughness: barrier.roughness, share: count / reached.length, colours };
}

function rimPixels({ width, height }: LabImage): Int32Array {
  const band = Math.max(3, Math.round(0.01 * Math.max(width, height)));
  const pixels: number[] = [];
  for (let y = 1; y < height - 1; y += 2)
    for (let x = 1; x < width - 1; x += 2)
      if (Math.min(x, y, width - 1 - x, height - 1 - y) <= band) pixels.push(y * width + x);
  return Int32Array.from(pixels);
}

/** Difference to the right and lower neighbour, against what is usual on the table. */
function roughPixels(image: LabImage, rim: Int32Array): { of: Uint8Array; roughness: number } {
  const { width, height, lab } = image;
  const squared = squaredRoom(width * height);
  // Nothing differs at the rim, which is left out below.
  squared.fill(0, 0, width).fill(0, width * (height - 1));
  for (let y = 1; y < height; y++) squared.fill(0, y * width - 1, y * width + 1);
  const row = 3 * width;
  for (let y = 1; y < height - 1; y++)
    for (
      let pixel = y * width + 1, end = (y + 1) * width - 1, at = 3 * pixel;
      pixel < end;
      pixel++
    ) {
      const xl = lab[at + 3]! - lab[at - 3]!;
      const xa = lab[at + 4]! - lab[at - 2]!;
      const xb = lab[at + 5]! - lab[at - 1]!;
      const yl = lab[at + row]! - lab[at - row]!;
      const ya = lab[at + row + 1]! - lab[at - row + 1]!;
      const yb = lab[at + row + 2]! - lab[at - row + 2]!;
      squared[pixel] = xl * xl + xa * xa + xb * xb + yl * yl + ya * ya + yb * yb;
      at += 3;
    }
  const ofRim = Float32Array.from(rim, (pixel) => squared[pixel]!);
  const usual = Math.sqrt(rankInPlace(ofRim, Math.floor(0.5 * ofRim.length)));
  const high = Math.sqrt(rankInPlace(ofRim, Math.floor(0.95 * ofRim.length)));
  // On a plain table nearly all differences are noise; one clearly beyond it is an edge.
  const limit = Math.max(1.6 * high, 4 * usual, 1.2) ** 2;
  const of = new Uint8Array(squared.length);
  for (let pixel = 0; pixel < of.length; pixel++) if (squared[pixel]! > limit) of[pixel] = 1;
  return { of, roughness: usual };
}

const squaredRoom = workRoom((length) => new Float32Array(length));

/** All that has the table's colours and can be walked to from the rim. */
function walk(
  image: LabImage,
  colours: TableColours,
  barrier: Uint8Array,
  from: Int32Array,
): ReturnType<typeof walkOver> {
  return walkOver(
    { width: image.width, height: image.height, of: tableMask(image, colours, barrier, 1) },
    from,
  );
}

/**
 * The same over the pixels whose row and column are odd, as those of the rim are: enough where only colours are
 * fetched.
 */
function walkOdd(
  image: LabImage,
  colours: TableColours,
  barrier: Uint8Array,
  from: Int32Array,
): ReturnType<typeof walkOver> {
  const width = image.width >> 1;
  const height = image.height >> 1;
  const starts = from.map((pixel) => {
    const x = pixel % image.width;
    return (((pixel - x) / image.width) >> 1) * width + (x >> 1);
  });
  const { reached, count } = walkOver(
    { width, height, of: tableMask(image, colours, barrier, 2) },
    starts,
  );
  const all = new Uint8Array(image.width * image.height);
  for (let y = 0, at = 0; y < height; y++)
    for (let x = 0, to = (2 * y + 1) * image.width + 1; x < width; x++, at++, to += 2)
      all[to] = reached[at]!;
  return { reached: all, count };
}

/** At least half, at most all of so many pixels of a mask, evenly spread. */
export function someOf(mask: Uint8Array, count: number, about: number): Int32Array {
  const step = Math.max(1, Math.floor(count / about));
  const pixels = new Int32Array(Math.ceil(count / step));
  for (let pixel = 0, at = 0; pixel < mask.length; pixel++)
    if (mask[pixel] === 1 && at++ % step === 0) pixels[(at - 1) / step] = pixel;
  return pixels;
}
