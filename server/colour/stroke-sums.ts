import type { Lab, LabImage } from './lab.ts';
import type { Labels } from './label-pixels.ts';
import { partsOf } from './stroke-parts.ts';
import { workRoom } from './work-room.ts';

/** The sums by which the hues of some colours follow from what pixels show of them: least squares. */
export interface HueSums {
  /** Of the parts shown, colour by colour. */
  readonly squares: Float64Array;
  /** Of the parts with the a, and the b, that no other colour explains. */
  readonly a: Float64Array;
  readonly b: Float64Array;
  /** Of the squares of that a and b. */
  readonly all: number;
}

/**
 * How much of a pixel's hue comes from the pixels beside it, one way: as sharp as lightness, then ever more blurred. Five
 * numbers each.
 */
const REACHES = [
  [0, 0, 1, 0, 0],
  [0, 0.25, 0.5, 0.25, 0],
  [0.0625, 0.25, 0.375, 0.25, 0.0625],
].map((blur) => Float64Array.from(blur));
/** The same row by row: what each reach weighs the pixel above all, the next, and so on. */
const BY_ROW = [0, 1, 2, 3, 4].map((row) => Float64Array.from(REACHES, (blur) => blur[row]!));
/** Pixels to either side that the widest reach looks at. A pixel tells of a stroke within so many pixels of it. */
const NEAR = 2;
/** With one more for telling parts. */
const RIM = NEAR + 1;
/** Every such row is asked at most: those between them show nearly the same. */
const ROWS = 5;
/** Rows further apart are asked where so many pixels tell, about, which settle the hues. */
const ENOUGH = 10_000;

/**
 * Sums over the pixels near the meant colours, for each reach of the blur in turn.
 *
 * The blur is taken down the columns of a row that is asked, and then along it.
 *
 * Takes       the picture, which colour each pixel shows, the colours, and the indices of the meant ones, the lowest first.
 */
export function sumsOver(
  image: LabImage,
  { of }: Labels,
  colours: readonly Lab[],
  meant: readonly number[],
): HueSums[] {
  const { width, height, lab } = image;
  const size = colours.length;
  const each = (): Float64Array => new Float64Array(meant.length);
  const sums = REACHES.map((): Growing => ({
    squares: new Float64Array(meant.length ** 2),
    a: each(),
    b: each(),
    all: new Float64Array(1),
  }));
  const isMeant = new Uint8Array(size);
  for (const colour of meant) isMeant[colour] = 1;
  const addParts = partsOf(of, width, lab, colours);
  const addTo = adderOf(colours, isMeant);
  const near = new Uint8Array(width);
  const shown = new Float64Array(size);
  // What each column shows of each colour around the row: for each reach, colour by colour.
  const column = REACHES.length * size;
  const columns = columnRoom(column * width);
  const step = rowsApart(of, isMeant, width);
  for (let y = ROWS; y < height - RIM; y += step) {
    if (!markNear(of, isMeant, width, y, near)) continue;
    let done = 0;
    for (let x = RIM; x < width - RIM; x++) {
      if (near[x] === 0) continue;
      for (done = Math.max(done, x - NEAR); done <= x + NEAR; done++) {
        columns.fill(0, column * done, column * (done + 1));
        for (let row = 0; row < BY_ROW.length; row++)
          addParts((y + row - NEAR) * width + done, BY_ROW[row]!, columns, column * done);
      }
      for (let which = 0; which < REACHES.length; which++) {
        along(columns, REACHES[which]!, column * x + size * which, column, shown);
        addTo(sums[which]!, shown, lab, 3 * (y * width + x) + 1);
      }
    }
  }
  return sums.map(({ all, ...rest }) => ({ ...rest, all: all[0]! }));
}

const columnRoom = workRoom((length) => new Float64Array(length));

/** What five columns show of each colour together, blurred; `at` is that of the middle one. */
function along(
  columns: Float64Array,
  blur: Float64Array,
  at: number,
  step: number,
  shown: Float64Array,
): void {
  for (let colour = 0; colour < shown.length; colour++, at++)
    shown[colour] =
      blur[0]! * columns[at - 2 * step]! +
      blur[1]! * columns[at - step]! +
      blur[2]! * columns[at]! +
      blur[3]! * columns[at + step]! +
      blur[4]! * columns[at + 2 * step]!;
}

interface Growing extends Omit<HueSums, 'all'> {
  readonly all: Float64Array;
}

/** What adds a pixel to the sums: what it shows of each colour, and where its a and b stand. */
function adderOf(
  colours: readonly Lab[],
  isMeant: Uint8Array,
): (sums: Growing, shown: Float64Array, lab: Float32Array, at: number) => void {
  const hues = Float64Array.from(colours.flatMap(({ a, b }) => [a, b]));
  const meant = Int32Array.from([...colours.keys()].filter((colour) => isMeant[colour] === 1));
  const others = Int32Array.from([...colours.keys()].filter((colour) => isMeant[colour] === 0));
  return (sums, shown, lab, at) => {
    let a = lab[at]!;
    let b = lab[at + 1]!;
    for (let other = others.length - 1; other >= 0; other--) {
      const colour = others[other]!;
      a -= shown[colour]! * hues[2 * colour]!;
      b -= shown[colour]! * hues[2 * colour + 1]!;
    }
    sums.all[0]! += a * a + b * b;
    for (let row = 0; row < meant.length; row++) {
      const part = shown[meant[row]!]!;
      if (part === 0) continue;
      sums.a[row]! += part * a;
      sums.b[row]! += part * b;
      for (let next = 0; next < meant.length; next++)
        sums.squares[row * meant.length + next]! += part * shown[meant[next]!]!;
    }
  };
}

/** How far apart the rows may lie that are asked, told by how much of some rows shows the meant colours. */
function rowsApart(of: Uint8Array, isMeant: Uint8Array, width: number): number {
  let count = 0;
  for (let row = 0; row < of.length; row += LOOKED_AT * width)
    for (let pixel = row; pixel < row + width; pixel++) count += isMeant[of[pixel]!]!;
  return Math.max(ROWS, Math.floor((BESIDE * LOOKED_AT * count) / ENOUGH));
}

const LOOKED_AT = 8;
/** Pixels near a stroke to those in it, about. */
const BESIDE = 2.5;

/** Marks the pixels of a row that have a meant colour within reach; false where there are none. */
function markNear(
  of: Uint8Array,
  isMeant: Uint8Array,
  width: number,
  y: number,
  near: Uint8Array,
): boolean {
  near.fill(0);
  let some = false;
  for (let row = (y - NEAR) * width; row <= (y + NEAR) * width; row += width)
    for (let x = RIM; x < width - RIM; x++)
      if (isMeant[of[row + x]!] === 1) {
        near.fill(1, x - NEAR, x + NEAR + 1);
        some = true;
      }
  return some;
}
