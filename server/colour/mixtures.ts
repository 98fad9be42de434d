import { areasOf } from './areas.ts';
import { offLine, printedPart } from './company.ts';
import { countInsides, insidePixels } from './insides.ts';
import type { Lab, LabImage } from './lab.ts';
import { labelPixels } from './label-pixels.ts';
import type { Labels } from './label-pixels.ts';

/** Colours, which of them each pixel shows, and how many pixels each fills. */
export interface Shown {
  readonly colours: readonly Lab[];
  readonly labels: Labels;
  readonly areas: Float64Array;
  /** Which pixels lie well inside the shapes, one byte each, and how many of each colour do. */
  readonly inside: Uint8Array;
  readonly insides: Float64Array;
}

export function shownIn(image: LabImage, flat: Uint8Array, colours: readonly Lab[]): Shown {
  const labels = labelPixels(image, colours, flat);
  const inside = insidePixels(labels, flat);
  return {
    colours,
    labels,
    areas: areasOf(image, colours, labels, flat, inside),
    inside,
    insides: countInsides(labels, inside, colours.length),
  };
}

/**
 * Leaves out colours that nobody printed: those that fill next to nothing, and those that have no inside of
 * their own and lie in colour between two others, as the soft borders of shapes do.
 *
 * Takes       the picture, which of its pixels are flat, and the colours found (1 or more).
 * Gives       the colours that stay, at least one, and where they show.
 */
export function withoutMixtures(image: LabImage, flat: Uint8Array, colours: readonly Lab[]): Shown {
  const shown = shownIn(image, flat, colours);
  const { labels, areas, insides } = shown;
  const pixels = labels.of.length;
  const stays = colours.filter((colour, index) => {
    const area = areas[index]!;
    if (area < SMALLEST * pixels) return false;
    if (area > MIXED_AT_MOST * pixels || insides[index]! > OWN_INSIDE * area) return true;
    const near = insides[index]! < SMEARED * area ? BETWEEN_SMEARED : BETWEEN;
    const parents = colours.filter(
      (_, other) => areas[other]! > area || insides[other]! > insides[index]!,
    );
    const between = parents.some((p, i) =>
      parents.some((q, j) => j > i && offLine(colour, p, q) < near),
    );
    return !between || printedPart(labels, colours, index, near) > PRINTED;
  });
  if (stays.length === colours.length) return shown;
  return shownIn(image, flat, stays.length > 0 ? stays : colours.slice(0, 1));
}

/** A printed colour fills at least this part of the side. */
const SMALLEST = 0.012;
/** Borders together fill no more than this. */
const MIXED_AT_MOST = 0.1;
/** A printed shape has at least this part of its area away from its border. */
const OWN_INSIDE = 0.15;
/** More of a printed colour than this lies where no mixture could. */
const PRINTED = 0.4;
/** How far off the line between two colours a mixture may lie, in CIELAB units. */
const BETWEEN = 9;
/**
 * A colour of which less than this part lies inside shapes may be a border whose hue JPEG smeared further than its
 * lightness; such a mixture bends off the line by as much as this.
 */
const SMEARED = 0.01;
const BETWEEN_SMEARED = 18;
