import { solve } from './surface.ts';

/** Linear light, three channels. */
export type Light3 = readonly [number, number, number];

export interface Chip {
  readonly seen: Light3;
  readonly wanted: Light3;
  readonly grey: boolean;
}

/**
 * Ties one photo's colours to another's by a few scraps of paper that lie in both.
 *
 * First a gain for each channel that makes the greys agree; then, in cube roots of light (about even steps
 * for the eye, in which a phone's tone curve is nearly straight), an offset and a 3 x 3 matrix that pull all
 * chips over, held near doing nothing so that a few chips do not bend colours far from them.
 *
 * Takes       the chips' linear light as this photo shows it and as it should be (as the first photo showed
 *             it), in the same order; at least one of them grey.
 * Gives       a map of linear light, in no way clipped.
 * Good up to  the colours that the chips span: on real phone photos of one target, six chips bring the
 *             other patches in two photos to a median of about 1.5 CIEDE2000 (see the bench).
 * Source      linear colour correction by least squares with a ridge: Hoerl, Kennard (1970),
 *             doi:10.1080/00401706.1970.10488634. The strength of the ridge and the choice of the six chips are our
 *             own: both were set by looking at all pairs of real photos of one target (median 1.54 reached on
 *             those same pairs), so that figure is a fit, not a forecast for photos that nobody has seen.
 */
export function tieByChips(chips: readonly Chip[]): (light: Light3) => Light3 {
  const gains = gainsOf(chips.filter(({ grey }) => grey));
  const rootsOf = (light: Light3): Light3 => [
    gains[0] * Math.cbrt(light[0]),
    gains[1] * Math.cbrt(light[1]),
    gains[2] * Math.cbrt(light[2]),
  ];
  const rows = rowsFor(
    chips.map(({ seen, wanted }) => ({
      from: rootsOf(seen),
      to: [Math.cbrt(wanted[0]), Math.cbrt(wanted[1]), Math.cbrt(wanted[2])],
    })),
  );
  return (light) => {
    const [r, g, b] = rootsOf(light);
    return rows.map(
      (row) => (row[0]! + row[1]! * r + row[2]! * g + row[3]! * b) ** 3,
    ) as unknown as Light3;
  };
}

/** What makes the cube roots of the greys agree on the whole, channel by channel. */
function gainsOf(greys: readonly Chip[]): Light3 {
  return [0, 1, 2].map((channel) => {
    const sum = (of: (chip: Chip) => Light3): number =>
      greys.reduce((total, chip) => total + Math.cbrt(Math.max(0, of(chip)[channel]!)), 0);
    const seen = sum(({ seen: light }) => light);
    return seen > 0 ? sum(({ wanted }) => wanted) / seen : 1;
  }) as unknown as Light3;
}

/** How firmly doing nothing is held to: a channel's own slope hardly, its offset and what crosses channels firmly. */
const HOLD = { own: 0.003, other: 0.1 };

/** For each channel an offset and a row of the matrix. */
function rowsFor(pairs: readonly { readonly from: Light3; readonly to: Light3 }[]): Float64Array[] {
  return [0, 1, 2].map((channel) => {
    const matrix = Array.from({ length: 4 }, (_, r) => {
      const row = new Float64Array(5);
      row[r] = r === 1 + channel ? HOLD.own : HOLD.other;
      return row;
    });
    for (const { from, to } of pairs) {
      const terms = [1, ...from];
      const miss = to[channel]! - from[channel]!;
      for (let r = 0; r < 4; r++) {
        const row = matrix[r]!;
        for (let c = 0; c < 4; c++) row[c]! += terms[r]! * terms[c]!;
        row[4]! += terms[r]! * miss;
      }
    }
    const solved = solve(matrix);
    solved[1 + channel]! += 1;
    return solved;
  });
}
