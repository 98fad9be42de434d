/**
 * How likely the true difference of two colours lies in each band between limits, given the difference that was
 * measured and how far off that may be.
 *
 * A measured colour lies around the true one in a space of three dimensions, equally uncertain in all;
 * so a true difference D is measured as d with the density of a non-central chi distribution. All true
 * differences count as equally likely beforehand, since what lies beside a paper was picked for it: in
 * an empty space of colours, far ones would outnumber near ones, and any poor photo would say 'apart'.
 *
 * Takes       the measured difference and its standard error, which is that of the whole difference and is
 *             shared out over the three dimensions, in CIEDE2000 (>= 0); the limits, rising.
 * Gives       one probability a band, the last one beyond all limits; they add up to 1.
 * Good up to  differences of about 5, where CIEDE2000 is nearly even in all directions around a colour.
 * Source      Bayes' rule on the non-central chi distribution with 3 degrees of freedom, whose density has
 *             a closed form; integrated by the midpoint rule, right to about 0.002.
 */
export function chancesOfBands(
  measured: number,
  uncertainty: number,
  limits: readonly number[],
): number[] {
  const sigma = Math.max(uncertainty / Math.sqrt(3), 1e-6);
  const [least, most] = [Math.max(0, measured - REACH * sigma), measured + REACH * sigma];
  if (least >= limits.at(-1)!) return [...limits.map(() => 0), 1];
  const edges = [0, ...limits, Infinity];
  const weights = edges.slice(1).map((upper, band) => {
    const from = Math.max(least, edges[band]!);
    const to = Math.min(most, upper);
    return to > from ? integral(measured, sigma, from, to) : 0;
  });
  const sum = weights.reduce((total, weight) => total + weight, 0);
  return weights.map((weight) => weight / sum);
}

/** Beyond so many standard errors nothing counts. */
const REACH = 4;
const STEPS_PER_SIGMA = 2.5;

function integral(measured: number, sigma: number, from: number, to: number): number {
  const steps = Math.max(4, Math.ceil((STEPS_PER_SIGMA * (to - from)) / sigma));
  const step = (to - from) / steps;
  let sum = 0;
  for (let at = 0; at < steps; at++) sum += density(measured, from + (at + 0.5) * step, sigma);
  return sum * step;
}

/** How dense measured differences lie at `measured` when the true one is `truth`, up to a factor without `truth`. */
function density(measured: number, truth: number, sigma: number): number {
  const d = Math.max(measured, 1e-6 * sigma) / sigma;
  const t = truth / sigma;
  const near = Math.exp(-((d - t) ** 2) / 2);
  const product = d * t;
  return product < 1e-4 ? 2 * near : (near * (1 - Math.exp(-2 * product))) / product;
}
