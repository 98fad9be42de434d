import { solve } from './surface.ts';

/**
 * Ties one photo's colours to another's by a few scraps of paper that lie in both.
 *
 * Takes       the chips' linear light as this photo shows it and as it should be (as the first photo showed
 *             it), three channels each, in the same order; at least two of them grey.
 * Gives       a map of linear light: first a curve for each channel that makes the greys agree (straight
 *             between them in the logarithm, prolonged at the ends), then a small matrix that pulls the
 *             coloured chips over while it leaves greys as they are.
 * Good up to  the colours that the chips span; the matrix is held near the identity, so six chips do not
 *             bend colours far from them.
 */
export type Light3 = readonly [number, number, number];

export interface Chip {
  readonly seen: Light3;
  readonly wanted: Light3;
  readonly grey: boolean;
}

export function tieByChips(chips: readonly Chip[]): (light: Light3) => Light3 {
  const greys = chips.filter(({ grey }) => grey);
  const curves = [0, 1, 2].map((channel) => curveThrough(greys, channel));
  const curved = (light: Light3): Light3 => [
    curves[0]!(light[0]),
    curves[1]!(light[1]),
    curves[2]!(light[2]),
  ];
  const rows = matrixFor(chips.map(({ seen, wanted }) => ({ from: curved(seen), to: wanted })));
  return (light) => {
    const [r, g, b] = curved(light);
    return rows.map((row) => row[0] * r + row[1] * g + row[2] * b) as unknown as Light3;
  };
}

/** Light below this is dark noise. */
const DARKEST = 1e-4;

function curveThrough(greys: readonly Chip[], channel: number): (light: number) => number {
  const points = greys
    .map(({ seen, wanted }) => ({
      x: Math.log(Math.max(DARKEST, seen[channel]!)),
      y: Math.log(Math.max(DARKEST, wanted[channel]!)),
    }))
    .sort((p, q) => p.x - q.x)
    .filter((point, index, all) => index === 0 || point.x - all[index - 1]!.x > 0.05);
  if (points.length === 0) return (light) => light;
  return (light) => {
    if (light <= DARKEST) return light;
    const x = Math.log(light);
    if (points.length === 1) return light * Math.exp(points[0]!.y - points[0]!.x);
    let at = points.findIndex((point) => point.x >= x);
    if (at === -1) at = points.length - 1;
    const after = Math.max(1, at);
    const [p, q] = [points[after - 1]!, points[after]!];
    // Beyond the greys the curve goes on with slope 1: as much lighter there as at its end.
    if (x < p.x) return Math.exp(p.y + (x - p.x));
    if (x > q.x) return Math.exp(q.y + (x - q.x));
    return Math.exp(p.y + ((x - p.x) / (q.x - p.x)) * (q.y - p.y));
  };
}

/** How firmly the matrix is held at the identity, against chips of middle lightness. */
const HOLD = 0.02;

/**
 * Least squares with rows that sum to 1, so that greys stay: each row is the identity's plus
 * u (g - r) + v (b - r) of the light.
 */
function matrixFor(
  pairs: readonly { readonly from: Light3; readonly to: Light3 }[],
): [number, number, number][] {
  return [0, 1, 2].map((channel) => {
    const matrix = [new Float64Array(3), new Float64Array(3)];
    matrix[0]![0] = HOLD;
    matrix[1]![1] = HOLD;
    for (const { from, to } of pairs) {
      // Eyes see ratios, so light errors count by how dark the chip is.
      const weight = 1 / (0.02 + from[1]);
      const terms = [from[1] - from[0], from[2] - from[0]];
      const miss = to[channel]! - from[channel]!;
      for (let r = 0; r < 2; r++) {
        for (let c = 0; c < 2; c++) matrix[r]![c]! += weight * terms[r]! * terms[c]!;
        matrix[r]![2]! += weight * terms[r]! * miss;
      }
    }
    const [u, v] = solve(matrix);
    const row: [number, number, number] = [-u! - v!, u!, v!];
    row[channel]! += 1;
    return row;
  });
}
