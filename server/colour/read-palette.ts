import { checkGround } from './check-ground.ts';
import { cluster } from './cluster.ts';
import { colourUncertainty } from './colour-uncertainty.ts';
import { flatPixels } from './flat-pixels.ts';
import { groundOf } from './ground.ts';
import { grainOf } from './grain.ts';
import { histogramOf, joined } from './histogram.ts';
import type { Histogram } from './histogram.ts';
import type { ColourError, Lab, LabImage } from './lab.ts';
import type { Labels } from './label-pixels.ts';
import { mergeClose } from './merge-close.ts';
import type { Palette, PaletteColour } from './palette.ts';
import { pureColours } from './pure-colours.ts';
import { peaksOf } from './peaks.ts';
import type { Refined } from './refine.ts';
import { shownIn, withoutMixtures } from './mixtures.ts';
import type { Shown } from './mixtures.ts';
import { strokeHues } from './stroke-hue.ts';
import { thinColours } from './thin-colours.ts';
import { tonalColours, toneRange } from './tone.ts';

/**
 * The dominant colours of one side.
 *
 * Pixels on the soft borders of printed shapes are left out; the rest are counted in a histogram whose
 * hills say how many colours there are and where k-means starts; k-means (ml-kmeans on a sample, then
 * all pixels) moves them to their means; what the eye does not separate is merged; shares count every
 * pixel. A side without hills, only a long ridge (watercolour, linen), is tonal.
 *
 * Takes       a flat swatch in CIELAB, how far off its colours may be, and a seed.
 * Gives       1 to 12 colours, largest share first; the same swatch and seed give the same palette.
 * Good up to  colours that fill 1 % or more and have strokes of two pixels or more.
 */
export function readPalette(image: LabImage, error: ColourError, seed: number): Palette {
  return readColours(image, error, seed).palette;
}

/** A palette, and which of its colours each pixel shows. */
export interface ReadColours {
  readonly palette: Palette;
  readonly labels: Labels;
}

/** The same as `readPalette`, with what else it found out. */
export function readColours(image: LabImage, error: ColourError, seed: number): ReadColours {
  const found = flatPixels(image, error.noise);
  const counted = count(found);
  const parted = counted >= FEWEST_FLAT * found.length;
  const flat = parted ? found : found.fill(1);
  const pixels = parted ? counted : found.length;
  const histogram = histogramOf(image.lab, flat);
  const peaks = peaksOf(histogram, RISE).filter(({ weight }) => weight >= SMALLEST * pixels);
  const clustered = cluster(
    histogram,
    peaks.slice(0, MOST).map(({ lab }) => lab),
    seed,
  );
  const tones = tonalColours(histogram, clustered.centres, error.noise, seed);
  if (tones !== null) return describe(image, shownIn(image, flat, tones), true, error);
  const centres = printedColours(image, flat, histogram, clustered, error.noise);
  const runs = centres.length === 1 && grainOf(image) > PLAIN + PLAIN_NOISE * error.noise;
  return describe(image, withoutMixtures(image, flat, centres), runs, error);
}

/** When fewer pixels than this are flat, the print is too fine to part flat from mixed: all count. */
const FEWEST_FLAT = 0.05;
/** A hill must rise to this many times its saddle. */
const RISE = 1.35;
/** A colour fills at least this part of the flat pixels. */
const SMALLEST = 0.008;
const MOST = 12;
/** Colours nearer than this in CIEDE2000 are one: side by side in print few would part them. */
const JUST_SEEN = 3;
/** Grain of plain paper, as it is and by the noise of the photo that averaging leaves. */
const PLAIN = 0.3;
const PLAIN_NOISE = 0.15;

function printedColours(
  image: LabImage,
  flat: Uint8Array,
  histogram: Histogram,
  { centres, weights }: Refined,
  noise: number,
): Lab[] {
  const solid = mergeClose(centres, weights, JUST_SEEN);
  const all = joined(histogram, histogramOf(image.lab, flat, 0));
  return [...solid, ...thinColours(all, solid, noise, LEAST_THIN, MOST - solid.length)];
}

/** A thin colour shows in at least this part of all pixels. */
const LEAST_THIN = 0.02;

function describe(image: LabImage, shown: Shown, tonal: boolean, error: ColourError): ReadColours {
  const { areas, insides } = shown;
  const pure = tonal
    ? shown.colours
    : pureColours(image, shown.labels, shown.inside, shown.colours);
  const free = Array.from(areas, (area, old) => Math.min(1, insides[old]! / Math.max(1, area)));
  const read = tonal ? pure : strokeHues(image, shown.labels, pure, free);
  const order = [...areas.keys()].sort((p, q) => areas[q]! - areas[p]!);
  const labels = renamed(shown.labels, order);
  const check = checkGround(shown.labels, shown.colours, areas);
  const ground = check === null ? groundOf(labels, order.length) : order.indexOf(check);
  const colours = order.map((old, index): PaletteColour => {
    const area = areas[old]!;
    const lab = read[old]!;
    return {
      lab,
      share: area / labels.of.length,
      role: tonal || index === ground ? 'ground' : 'accent',
      uncertainty: colourUncertainty(lab, area, error, tonal ? 1 : free[old]!),
      inside: free[old]!,
      ...(tonal ? { range: toneRange(image.lab, labels, index) } : {}),
    };
  });
  return { palette: { colours, tonal }, labels };
}

/** Labels by the place of each colour in `order`. */
function renamed({ width, height, of }: Labels, order: readonly number[]): Labels {
  if (order.every((old, index) => old === index)) return { width, height, of };
  const name = new Uint8Array(order.length);
  order.forEach((old, index) => (name[old] = index));
  const out = new Uint8Array(of.length);
  for (let pixel = 0; pixel < of.length; pixel++) out[pixel] = name[of[pixel]!]!;
  return { width, height, of: out };
}

function count(flags: Uint8Array): number {
  let set = 0;
  for (let at = flags.length - 1; at >= 0; at--) set += flags[at]!;
  return set;
}
