import type { Palette } from '../../colour/palette.ts';
import type { PatternTraits } from '../../pattern/traits.ts';
import { lookWith } from './look.ts';
import type { ColourTable, Look } from './look.ts';

/**
 * What a piece shows of a side.
 *
 * Where the palette of the very place is not known, the side's palette stands for it, and a piece
 * that is small against the print is taken to show less of the accents and more of the ground: of a
 * strip as wide as `reach` of a printed shape, the accents keep `reach` of their share.
 *
 * @param indices the palette's colours in the table of differences, in order
 * @param reach   in (0, 1]; see `reachOf`
 */
export function lookOfSide(
  palette: Palette,
  pattern: PatternTraits,
  indices: readonly number[],
  reach: number,
): Look {
  const accents = palette.colours.reduce(
    (sum, colour) => sum + (colour.role === 'accent' ? colour.share : 0),
    0,
  );
  const grounds = palette.colours.reduce((sum, colour) => sum + colour.share, 0) - accents;
  const shrink = grounds > 0 ? reach : 1;
  const grow = grounds > 0 ? (grounds + accents * (1 - shrink)) / grounds : 1;
  return lookWith(
    palette.colours.map((colour, at) => ({
      lab: colour.lab,
      ground: colour.role === 'ground',
      share: colour.share * (colour.role === 'ground' ? grow : shrink),
      index: indices[at]!,
    })),
    {
      busyness: pattern.busyness * (0.5 + 0.5 * reach),
      scale: pattern.scale,
      directional: pattern.direction !== 'none',
      solid: false,
    },
  );
}

/**
 * What a piece shows of a side, where it is known which colours lie at its place.
 *
 * @param indices the palette's colours in the table of differences, in order
 * @param shares  of each palette colour at the place; they add up to 1
 */
export function lookAtPlace(
  palette: Palette,
  pattern: PatternTraits,
  indices: readonly number[],
  shares: readonly number[],
): Look {
  const accents = (of: (at: number) => number): number =>
    palette.colours.reduce((sum, { role }, at) => sum + (role === 'accent' ? of(at) : 0), 0);
  const whole = accents((at) => palette.colours[at]!.share);
  // Where fewer accents lie than elsewhere less goes on, as on a narrow strip of a large print.
  const reach = whole === 0 ? 1 : Math.min(1, accents((at) => shares[at]!) / whole);
  return lookWith(
    palette.colours.flatMap(({ lab, role }, at) =>
      shares[at] === 0
        ? []
        : [{ lab, ground: role === 'ground', share: shares[at]!, index: indices[at]! }],
    ),
    {
      busyness: pattern.busyness * (0.5 + 0.5 * reach),
      scale: pattern.scale,
      directional: pattern.direction !== 'none',
      solid: false,
    },
  );
}

/**
 * How much of a print comes into its own on a piece, in quarters: 1 when the short edge holds
 * one and a half printed shapes or more.
 */
export function reachOf(shortEdgeMillimetres: number, scaleMillimetres: number): number {
  if (scaleMillimetres <= 0) return 1;
  const whole = shortEdgeMillimetres / (1.5 * scaleMillimetres);
  return Math.min(4, Math.max(1, Math.ceil(whole * 4))) / 4;
}

/** A cardstock, one flat colour. */
export function lookOfSolid(
  solid: { readonly lab: Look['mean']; readonly uncertainty: number },
  table: ColourTable,
): Look {
  return lookWith([{ lab: solid.lab, share: 1, ground: true, index: table.add(solid) }], {
    busyness: 0,
    scale: 0,
    directional: false,
    solid: true,
  });
}
