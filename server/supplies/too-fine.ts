import { difference, labDistance } from '../colour/difference.ts';
import type { Lab } from '../colour/lab.ts';
import type { Palette, PaletteColour } from '../colour/palette.ts';
import { labFromLinear, linearFromLab } from '../colour/spaces.ts';
import type { LinearRgb } from '../colour/spaces.ts';

/**
 * Whether a colour of a palette may be another colour, printed in lines or dots too fine for the photo.
 *
 * A stroke narrower than a pixel or two is seen mixed with the ground around it, in linear light, and
 * comes out paler than it is. So a colour that lies where a mixture of `lab` with the ground would lie may
 * truly be `lab`, and a photo from further off cannot tell the two apart.
 *
 *     ground ●────────●──────────● lab
 *                 seen: this part of the way
 *
 * Gives       the palette colour that may be it; null where there is none.
 * Good up to  prints of one ground. Full areas can lie on that way by chance as well: this only takes
 *             back an 'apart', it never gives a 'match'.
 * Source      additive mixture within a pixel, the model of an area that is covered in part. How far colours
 *             go by it was measured on tuning seeds of the rendered sample photos.
 */
export function tooFineFor(lab: Lab, palette: Palette): PaletteColour | null {
  const { ground, thin } = thinOf(palette);
  if (ground === null) return null;
  let whole: LinearRgb | null = null;
  for (const colour of thin) {
    if (!isSameWay(ground.lab, colour.lab, lab)) continue;
    whole ??= linearFromLab(lab);
    const mixed = mixtureNearest(ground.linear, colour.linear, whole);
    if (mixed === null || labDistance(mixed, colour.lab) > FAR) continue;
    if (difference(mixed, colour.lab) < LIKE) return colour;
  }
  return null;
}

/** A colour that fills more than this is not all fine lines. */
const MOST_SHARE = 0.27;
/** Fine lines still show at least this part of their colour, or they would be no colour of the palette; at most nearly all. */
const LEAST_PART = 0.3;
const MOST_PART = 0.98;
/** How near, in CIEDE2000, the colour seen is to the mixture: what reading both leaves open. */
const LIKE = 2;
/** Plain CIELAB distance at which no difference is below LIKE: S_C and S_H reach 7 at the rim of print. */
const FAR = 14;

interface InLight {
  readonly lab: Lab;
  readonly linear: LinearRgb;
}

interface Thin {
  readonly ground: InLight | null;
  readonly thin: readonly (PaletteColour & InLight)[];
}

/** One palette is asked about for every supply of hers. */
const known = new WeakMap<Palette, Thin>();

function thinOf(palette: Palette): Thin {
  const before = known.get(palette);
  if (before !== undefined) return before;
  const ground = palette.tonal ? undefined : palette.colours.find(({ role }) => role === 'ground');
  const found: Thin = {
    ground: ground === undefined ? null : { lab: ground.lab, linear: linearFromLab(ground.lab) },
    thin: palette.colours
      .filter(({ role, share }) => role === 'accent' && share <= MOST_SHARE)
      .map((colour) => ({ ...colour, linear: linearFromLab(colour.lab) })),
  };
  known.set(palette, found);
  return found;
}

/** Roughly in one direction from the ground, and further: a quick look before the light is reckoned. */
function isSameWay(ground: Lab, colour: Lab, lab: Lab): boolean {
  const [l, a, b] = [colour.l - ground.l, colour.a - ground.a, colour.b - ground.b];
  const [m, n, o] = [lab.l - ground.l, lab.a - ground.a, lab.b - ground.b];
  const [near, far] = [l * l + a * a + b * b, m * m + n * n + o * o];
  const along = l * m + a * n + b * o;
  return along > 0 && far > near && along * along > 0.85 * near * far;
}

/** The mixture of ground and `whole` that is nearest to `seen`; null when it would hold too little or all of it. */
function mixtureNearest(ground: LinearRgb, seen: LinearRgb, whole: LinearRgb): Lab | null {
  const [r, g, b] = [whole.r - ground.r, whole.g - ground.g, whole.b - ground.b];
  const part =
    (r * (seen.r - ground.r) + g * (seen.g - ground.g) + b * (seen.b - ground.b)) /
    (r * r + g * g + b * b);
  if (!(part >= LEAST_PART && part <= MOST_PART)) return null;
  return labFromLinear({ r: ground.r + part * r, g: ground.g + part * g, b: ground.b + part * b });
}
