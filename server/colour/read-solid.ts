import { colourUncertainty } from './colour-uncertainty.ts';
import { glareOf } from './glare.ts';
import type { ColourError, Lab, LabImage } from './lab.ts';

/** What a square of cardstock or a smear of ink looks like. */
export interface Solid {
  /** The mean of what is covered. */
  readonly lab: Lab;
  /** Standard error of the mean in CIEDE2000 (one sigma). */
  readonly uncertainty: number;
  /** The 5th and 95th percentile in lightness of what is covered: a smear is uneven. */
  readonly darkest: Lab;
  readonly lightest: Lab;
  /** The light mirrors in so much of it that its colour cannot be told. */
  readonly glossy: boolean;
}

/**
 * Reads one plain colour: cardstock to its edges, or ink smeared on white card.
 *
 * The middle says what the colour is. Where the rim of the picture is another colour, that is the card
 * around a smear, and only pixels nearer to the ink than to the card count. Then the few that stray
 * (dust, a fold, a glint) are left out.
 *
 * Takes       a flat picture of the square or smear, and how far off its colours may be.
 */
export function readSolid(image: LabImage, error: ColourError): Solid {
  const middle = median(image, inMiddle(image));
  const rimPixels = onRim(image);
  const rim = rimPixels.length > 0 ? median(image, rimPixels) : middle;
  const card = apart(middle, rim) > OTHER + 3 * error.noise && rim.l > middle.l ? rim : null;
  const covered = coveredPixels(image, middle, card);
  const steady = withoutStrays(image, covered, error.noise);
  const lab = mean(image, steady);
  const inside = card === null ? covered : insideOf(image);
  const byLightness = Int32Array.from(steady).sort((p, q) => image.lab[3 * p]! - image.lab[3 * q]!);
  const part = (from: number, to: number): Lab => {
    const first = Math.floor(from * byLightness.length);
    const last = Math.max(first + 1, Math.ceil(to * byLightness.length));
    return mean(image, byLightness.subarray(first, last));
  };
  return {
    lab,
    uncertainty: colourUncertainty(lab, steady.length, error),
    darkest: part(0.02, 0.08),
    lightest: part(0.92, 0.98),
    glossy: glareOf(image, inside, lab, card, error.noise) > SHINES,
  };
}

/** A few glints are left out with the dust; from this part on the sheen around them spoils the rest. A judgement. */
const SHINES = 0.03;

/** The rim is another material when it is this far from the middle, in CIELAB units. */
const OTHER = 8;
/** Part of the picture's side that the rim takes, and that the edge of cardstock may spoil. */
const RIM = 0.06;

function inMiddle({ width, height }: LabImage): Int32Array {
  return pixelsWhere(width, height, (x, y) => Math.abs(x - 0.5) < 0.2 && Math.abs(y - 0.5) < 0.2);
}

function onRim({ width, height }: LabImage): Int32Array {
  return pixelsWhere(width, height, (x, y) => Math.min(x, y, 1 - x, 1 - y) < RIM);
}

function insideOf({ width, height }: LabImage): Int32Array {
  return pixelsWhere(width, height, (x, y) => Math.min(x, y, 1 - x, 1 - y) >= RIM);
}

/** Pixels of a picture by their place, x and y in (0, 1). */
function pixelsWhere(
  width: number,
  height: number,
  take: (x: number, y: number) => boolean,
): Int32Array {
  const pixels: number[] = [];
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++)
      if (take((x + 0.5) / width, (y + 0.5) / height)) pixels.push(y * width + x);
  return Int32Array.from(pixels);
}

function coveredPixels(image: LabImage, ink: Lab, card: Lab | null): Int32Array {
  const inside = insideOf(image);
  if (card === null) return inside;
  return inside.filter((pixel) => {
    const here = at(image, pixel);
    return apart(here, ink) < apart(here, card);
  });
}

function withoutStrays(image: LabImage, pixels: Int32Array, noise: number): Int32Array {
  const centre = median(image, pixels);
  const distances = Float32Array.from(pixels, (pixel) => apart(at(image, pixel), centre));
  const typical = middleOf(distances);
  const limit = Math.max(3 * typical, 3 * noise, 1);
  const steady = pixels.filter((_, index) => distances[index]! <= limit);
  return steady.length > 0 ? steady : pixels;
}

function at({ lab }: LabImage, pixel: number): Lab {
  return { l: lab[3 * pixel]!, a: lab[3 * pixel + 1]!, b: lab[3 * pixel + 2]! };
}

function mean({ lab }: LabImage, pixels: Int32Array): Lab {
  let [l, a, b] = [0, 0, 0];
  for (const pixel of pixels) {
    l += lab[3 * pixel]!;
    a += lab[3 * pixel + 1]!;
    b += lab[3 * pixel + 2]!;
  }
  return { l: l / pixels.length, a: a / pixels.length, b: b / pixels.length };
}

function median({ lab }: LabImage, pixels: Int32Array): Lab {
  const channel = (axis: number): number =>
    middleOf(Float32Array.from(pixels, (pixel) => lab[3 * pixel + axis]!));
  return { l: channel(0), a: channel(1), b: channel(2) };
}

function middleOf(values: Float32Array): number {
  return Float32Array.from(values).sort()[values.length >> 1] ?? 0;
}

function apart(p: Lab, q: Lab): number {
  return Math.hypot(p.l - q.l, p.a - q.a, p.b - q.b);
}
