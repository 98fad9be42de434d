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
  all: number;
}

/** How much of a pixel's hue comes from the pixels beside it, one way: as sharp as lightness, then ever more blurred. */
const REACHES = [[1], [0.25, 0.5, 0.25], [0.0625, 0.25, 0.375, 0.25, 0.0625]] as const;
/** Pixels to either side that the widest reach, and one more for telling parts, looks at. */
const RIM = 3;
/** A pixel tells of a stroke within so many pixels of it. */
const NEAR = 2;
/** Every such row is asked: those between them show nearly the same. */
const ROWS = 5;

/**
 * Sums over the pixels near the meant colours, for each reach of the blur in turn.
 *
 * Takes       the picture, which colour each pixel shows, the colours, and the indices of the meant ones.
 */
export function sumsOver(
  { width, height, lab }: LabImage,
  { of }: Labels,
  colours: readonly Lab[],
  meant: readonly number[],
): HueSums[] {
  const place = new Int8Array(colours.length).fill(-1);
  meant.forEach((colour, at) => (place[colour] = at));
  const sums = REACHES.map(() => ({
    squares: new Float64Array(meant.length ** 2),
    a: new Float64Array(meant.length),
    b: new Float64Array(meant.length),
    all: 0,
  }));
  const near = nearOf(of, width, height, place);
  const parts = partsOf(of, width, lab, colours);
  const shown = new Float64Array(colours.length);
  for (let y = RIM - (RIM % ROWS) + ROWS; y < height - RIM; y += ROWS)
    for (let pixel = y * width + RIM, end = (y + 1) * width - RIM; pixel < end; pixel++) {
      if (near[pixel] === 0) continue;
      REACHES.forEach((blur, which) => {
        shown.fill(0);
        const reach = (blur.length - 1) / 2;
        for (let dy = -reach; dy <= reach; dy++)
          for (let dx = -reach; dx <= reach; dx++)
            parts(pixel + dy * width + dx, blur[dy + reach]! * blur[dx + reach]!, shown);
        add(sums[which]!, shown, colours, place, lab[3 * pixel + 1]!, lab[3 * pixel + 2]!);
      });
    }
  return sums;
}

function add(
  sums: HueSums,
  shown: Float64Array,
  colours: readonly Lab[],
  place: Int8Array,
  a: number,
  b: number,
): void {
  const size = sums.a.length;
  for (let colour = 0; colour < shown.length; colour++)
    if (place[colour]! < 0 && shown[colour]! > 0) {
      a -= shown[colour]! * colours[colour]!.a;
      b -= shown[colour]! * colours[colour]!.b;
    }
  sums.all += a * a + b * b;
  for (let one = 0; one < shown.length; one++) {
    const row = place[one]!;
    const part = shown[one]!;
    if (row < 0 || part === 0) continue;
    sums.a[row]! += part * a;
    sums.b[row]! += part * b;
    for (let other = 0; other < shown.length; other++)
      if (place[other]! >= 0) sums.squares[row * size + place[other]!]! += part * shown[other]!;
  }
}

/** Which pixels of the rows that are asked have a meant colour within reach; one byte a pixel. */
function nearOf(of: Uint8Array, width: number, height: number, place: Int8Array): Uint8Array {
  const near = nearRoom(of.length).fill(0);
  for (let y = RIM; y < height - RIM; y++) {
    const asked = Math.round(y / ROWS) * ROWS;
    if (Math.abs(asked - y) > NEAR || asked >= height) continue;
    const row = (asked - y) * width;
    for (let at = y * width + RIM, end = (y + 1) * width - RIM; at < end; at++)
      if (place[of[at]!]! >= 0) near.fill(1, row + at - NEAR, row + at + NEAR + 1);
  }
  return near;
}

const nearRoom = workRoom((length) => new Uint8Array(length));
