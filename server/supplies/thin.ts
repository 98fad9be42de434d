import type { Palette, PaletteColour } from '../colour/palette.ts';
import { labDistance } from '../colour/difference.ts';
import type { Lab } from '../colour/lab.ts';
import { labFromLinear, linearFromLab } from '../colour/spaces.ts';
import type { LinearRgb } from '../colour/spaces.ts';

/** A place where a colour that was read off thin strokes may truly lie. */
export interface Place {
  readonly lab: Lab;
  /** How likely, beside the place where it was seen, which counts 1. */
  readonly weight: number;
}

/** The places on one way, away from a colour that may be mixed into the strokes. */
export interface Way {
  readonly beside: Lab;
  readonly seen: Lab;
  readonly places: readonly Place[];
}

/**
 * Where a colour that was read off thin strokes may truly lie. A stroke narrower than a pixel or two is seen
 * mixed with what is beside it, in linear light, and comes out as something between: the true colour lies
 * further from what is beside, on the same straight way.
 *
 *     beside ●───────●────○──○──○ places
 *                  seen: this part of the way
 *
 * Gives       a way for each of the two largest colours beside it, without places that no light can be; none
 *             for a colour that shows enough of its inside, or a tone that runs.
 * Source      additive mixture within a pixel, the model of an area that is covered in part. How large the seen
 *             part is was measured (TYPICAL, FADES).
 */
export function waysOf(colour: PaletteColour, { colours, tonal }: Palette): Way[] {
  const { inside = 1, share, range } = colour;
  if (tonal || range !== undefined || inside >= INSIDE || share > MOST_SHARE) return [];
  const others = colours.filter((one) => one !== colour);
  const all = others.reduce((sum, one) => sum + one.share, 0);
  const typical = TYPICAL * Math.exp(-inside / FADES);
  const seen = linearFromLab(colour.lab);
  return [...others]
    .sort((p, q) => q.share - p.share)
    .slice(0, BESIDE)
    .map((beside) => {
      const from = linearFromLab(beside.lab);
      const count = stepsOf(from, seen, colour.lab);
      const places = Array.from(
        { length: count },
        (_, step) => 1 - (LACKING * (step + 0.5)) / count,
      )
        .map((part) => ({
          light: further(from, seen, part),
          weight: ((USUAL / count) * Math.exp((part - 1) / typical) * beside.share) / all,
        }))
        .flatMap(({ light, weight }) =>
          light === null ? [] : [{ lab: labFromLinear(light), weight }],
        );
      return { beside: beside.lab, seen: colour.lab, places };
    });
}

function further(from: LinearRgb, seen: LinearRgb, part: number): LinearRgb | null {
  const r = from.r + (seen.r - from.r) / part;
  const g = from.g + (seen.g - from.g) / part;
  const b = from.b + (seen.b - from.b) / part;
  return Math.min(r, g, b) < DARKEST || Math.max(r, g, b) > 1 ? null : { r, g, b };
}

/** Channels of a colour in linear sRGB may be a little below 0: a deep teal is. */
const DARKEST = -0.01;

/** From this part of its area inside its shapes on, a colour is seen as it is. */
const INSIDE = 0.3;
/** A colour that fills more of a side is not all thin strokes. */
const MOST_SHARE = 0.6;
/** A pattern's strokes border on few colours. */
const BESIDE = 2;
/** Strokes lack at most this part of the whole way, or they would be no colour of the palette. */
const LACKING = 0.5;
/** A way is looked at in steps of about this many CIELAB units, which is finer than what lies beside it (compared.ts). */
const STEP = 3;
const FEWEST = 5;
const MOST = 12;
/** The weights of a way add up as those of so many steps would. */
const USUAL = 5;

function stepsOf(from: LinearRgb, seen: LinearRgb, lab: Lab): number {
  const end = further(from, seen, 1 - LACKING) ?? further(from, seen, 1 - LACKING / 2);
  const length = end === null ? 0 : labDistance(labFromLinear(end), lab);
  return Math.min(MOST, Math.max(FEWEST, Math.round(length / STEP)));
}

/**
 * How much of the whole way strokes typically lack, and how fast that fades with the part of them that is inside.
 *
 * Measured    on 880 palette colours of 45 rendered tables, seeds 300 to 344: strokes lacked 0.14 of the way in the
 *             mean where nothing of them was inside, 0.08 at 0.12, 0.03 at 0.22.
 */
const TYPICAL = 0.25;
const FADES = 0.2;
