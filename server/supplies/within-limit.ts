/**
 * How likely two colours are truly no further apart than a limit, given the difference that was measured
 * and how far off that may be.
 *
 * The colour of the one lies around the measured place in a space of three dimensions, equally uncertain
 * in all of them; the answer is the part of that cloud inside a ball of the limit's radius around the
 * other colour. For three dimensions the integral has a closed form (non-central chi distribution).
 *
 * Takes       limit and difference in CIEDE2000 (>= 0); the uncertainty as one standard error of the whole
 *             difference, in CIEDE2000 (>= 0), shared out equally over the three dimensions.
 * Gives       a probability in [0, 1].
 * Good up to  differences of about 5, where CIEDE2000 is nearly even in all directions around a colour.
 * Source      the error function by Abramowitz and Stegun (1964), 7.1.26, right to 1.5e-7.
 */
export function withinLimit(limit: number, difference: number, uncertainty: number): number {
  const sigma = uncertainty / Math.sqrt(3);
  if (sigma < 1e-6) return difference <= limit ? 1 : 0;
  const t = limit / sigma;
  const d = difference / sigma;
  if (d < 0.01) return 2 * below(t) - 1 - 2 * t * density(t);
  const inside = below(t - d) - below(-t - d) - (density(t - d) - density(t + d)) / d;
  return Math.min(1, Math.max(0, inside));
}

function density(z: number): number {
  return Math.exp(-(z * z) / 2) / Math.sqrt(2 * Math.PI);
}

/** The part of a standard normal distribution below z. */
function below(z: number): number {
  return z < 0 ? 1 - below(-z) : 1 - tail(z / Math.SQRT2) / 2;
}

function tail(x: number): number {
  const t = 1 / (1 + 0.3275911 * x);
  const sum =
    t *
    (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
  return sum * Math.exp(-x * x);
}
