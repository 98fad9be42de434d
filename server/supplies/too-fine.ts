import { difference } from '../colour/difference.ts';
import type { Lab } from '../colour/lab.ts';
import type { Palette, PaletteColour } from '../colour/palette.ts';
import { labFromLinear, linearFromLab } from '../colour/spaces.ts';
import type { LinearRgb } from '../colour/spaces.ts';
import { isThin } from './thin.ts';

/**
 * Whether a colour of a palette may be another colour, printed in lines or dots too fine for the photo.
 *
 * A stroke narrower than a pixel or two is seen mixed with what is beside it, in linear light, and comes
 * out as something between. So a colour read off thin strokes that lies where a mixture of `lab` with another
 * colour of the print would lie may truly be `lab`, and a photo from further off cannot tell the two apart.
 *
 *     beside ●────────●──────────● lab
 *                 seen: this part of the way
 *
 * Gives       the palette colour that may be it; null where there is none.
 * Good up to  two colours mixed. Thin strokes can lie on that way by chance as well: this only takes
 *             back an 'apart', it never gives a 'match'.
 * Source      additive mixture within a pixel, the model of an area that is covered in part. How far colours
 *             go by it was measured on tuning seeds of rendered photos.
 */
export function tooFineFor(lab: Lab, palette: Palette): PaletteColour | null {
  let whole: LinearRgb | null = null;
  for (const { thin, beside } of pairsOf(palette)) {
    if (!isSameWay(beside.lab, thin.lab, lab)) continue;
    whole ??= lightOf(lab);
    const mixed = mixtureNearest(beside.linear, thin.linear, whole);
    if (mixed === null || Math.abs(lightnessOf(mixed) - thin.lab.l) > FAR) continue;
    if (difference(labFromLinear(mixed), thin.lab) < LIKE) return thin.colour;
  }
  return null;
}

/** Fine lines still show at least this part of their colour, or they would be no colour of the palette; at most nearly all. */
const LEAST_PART = 0.3;
const MOST_PART = 0.98;
/** How near, in CIEDE2000, the colour seen is to the mixture: what reading both leaves open. */
const LIKE = 4;
/** Steps of L at which no difference is below LIKE: S_L is at most 1.75 (Sharma, Wu, Dalal 2005, eq. 15). */
const FAR = 1.75 * LIKE;

interface InLight {
  readonly colour: PaletteColour;
  readonly lab: Lab;
  readonly linear: LinearRgb;
}

/** A colour read off thin strokes, and one that may be mixed into it. */
interface Pair {
  readonly thin: InLight;
  readonly beside: InLight;
}

/** One palette is asked about for every supply of hers. */
const known = new WeakMap<Palette, readonly Pair[]>();

function pairsOf(palette: Palette): readonly Pair[] {
  const before = known.get(palette);
  if (before !== undefined) return before;
  const all = palette.colours.map((colour): InLight => ({
    colour,
    lab: colour.lab,
    linear: linearFromLab(colour.lab),
  }));
  const pairs = all
    .filter(({ colour }) => !palette.tonal && isThin(colour))
    .flatMap((thin) =>
      all.filter((beside) => beside !== thin).map((beside): Pair => ({ thin, beside })),
    );
  known.set(palette, pairs);
  return pairs;
}

/** Roughly in one direction from what is beside, and further: a quick look before the light is reckoned. */
function isSameWay(beside: Lab, colour: Lab, lab: Lab): boolean {
  const [l, a, b] = [colour.l - beside.l, colour.a - beside.a, colour.b - beside.b];
  const [m, n, o] = [lab.l - beside.l, lab.a - beside.a, lab.b - beside.b];
  const [near, far] = [l * l + a * a + b * b, m * m + n * n + o * o];
  const along = l * m + a * n + b * o;
  return along > 0 && far > near && along * along > 0.75 * near * far && near > 0.1 * far;
}

/** The mixture with `whole` that is nearest to `seen`; null when it would hold too little or all of it. */
function mixtureNearest(beside: LinearRgb, seen: LinearRgb, whole: LinearRgb): LinearRgb | null {
  const [r, g, b] = [whole.r - beside.r, whole.g - beside.g, whole.b - beside.b];
  const part =
    (r * (seen.r - beside.r) + g * (seen.g - beside.g) + b * (seen.b - beside.b)) /
    (r * r + g * g + b * b);
  if (!(part >= LEAST_PART && part <= MOST_PART)) return null;
  return { r: beside.r + part * r, g: beside.g + part * g, b: beside.b + part * b };
}

/** L of a light in linear sRGB (IEC 61966-2-1 for its luminance, CIE 15 for L), quicker than the whole of Lab. */
function lightnessOf({ r, g, b }: LinearRgb): number {
  const y = 0.2126 * r + 0.7152 * g + 0.0722 * b;
  return y > 216 / 24389 ? 116 * Math.cbrt(y) - 16 : (24389 / 27) * y;
}

/** A supply is asked about against every side. */
const lights = new WeakMap<Lab, LinearRgb>();

function lightOf(lab: Lab): LinearRgb {
  const before = lights.get(lab);
  if (before !== undefined) return before;
  const light = linearFromLab(lab);
  lights.set(lab, light);
  return light;
}
