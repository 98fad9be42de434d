import { difference, labDistance } from '../colour/difference.ts';
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
    whole ??= linearFromLab(lab);
    const mixed = mixtureNearest(beside.linear, thin.linear, whole);
    if (mixed === null || labDistance(mixed, thin.lab) > FAR) continue;
    if (difference(mixed, thin.lab) < LIKE) return thin.colour;
  }
  return null;
}

/** Fine lines still show at least this part of their colour, or they would be no colour of the palette; at most nearly all. */
const LEAST_PART = 0.3;
const MOST_PART = 0.98;
/** How near, in CIEDE2000, the colour seen is to the mixture: what reading both leaves open. */
const LIKE = 4;
/** Plain CIELAB distance at which no difference is below LIKE: S_C and S_H reach 7 at the rim of print. */
const FAR = 28;

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
  return along > 0 && far > near && along * along > 0.6 * near * far;
}

/** The mixture with `whole` that is nearest to `seen`; null when it would hold too little or all of it. */
function mixtureNearest(beside: LinearRgb, seen: LinearRgb, whole: LinearRgb): Lab | null {
  const [r, g, b] = [whole.r - beside.r, whole.g - beside.g, whole.b - beside.b];
  const part =
    (r * (seen.r - beside.r) + g * (seen.g - beside.g) + b * (seen.b - beside.b)) /
    (r * r + g * g + b * b);
  if (!(part >= LEAST_PART && part <= MOST_PART)) return null;
  return labFromLinear({ r: beside.r + part * r, g: beside.g + part * g, b: beside.b + part * b });
}
