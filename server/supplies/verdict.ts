import { chancesOfBands } from './chances.ts';
import type { Possible } from './nearest-colour.ts';

export type Verdict = 'match' | 'close' | 'apart' | 'cannot tell';

/**
 * Where the verdicts part, in CIEDE2000.
 *
 * perceived, accepted: half of the observers see a difference of 0.8 and half still accept 1.8.
 * Paravina et al. (2015), J. Esthet. Restor. Dent. 27 Suppl 1, S1-S9, doi:10.1111/jerd.12149: 175 observers
 * judged pairs of dental ceramics in a booth. Dental work, not paper; taken because it is the largest
 * published study of flat samples seen side by side that gives both limits in CIEDE2000.
 *
 * close: the formula is meant for differences up to about 5 CIELAB units (CIE 142-2001, the recommendation
 * of CIEDE2000; the figure from memory). Beyond it two colours are plainly different.
 */
export const LIMITS = { perceived: 0.8, accepted: 1.8, close: 5 } as const;

/**
 * A verdict is given when it is at least this likely; else it is 'cannot tell'. A judgement: five to two. On 45
 * tuning tables, seeds 300 to 344, 96 % of the verdicts were right then and 14 % undecided; at three to one
 * 96.5 and 15.5, at seven to three 96 and 13.
 */
export const SURE = 5 / 7;

/** The verdict on a measured difference, and how likely it is right. */
export interface Judged {
  readonly verdict: Verdict;
  readonly likely: number;
  /** One standard error of the difference, with all that may be the true one, in CIEDE2000. */
  readonly uncertainty: number;
}

/** Takes the measured difference and its standard error, both in CIEDE2000. */
export function verdictOf(difference: number, uncertainty: number): Judged {
  return verdictAmong([{ difference, weight: 1 }], uncertainty);
}

/**
 * The verdict where the true difference may be one of several, each with its weight.
 *
 * As all true differences count as equally likely beforehand (see chancesOfBands), a place at twice the distance
 * stands for four times the room around her colour, and counts a quarter.
 */
export function verdictAmong(possible: readonly Possible[], uncertainty: number): Judged {
  const likely = [0, 0, 0];
  let [all, mean, square] = [0, 0, 0];
  for (const { difference, weight } of possible) {
    const part = weight / (difference * difference + uncertainty * uncertainty + LEAST);
    const chances = chancesOfBands(difference, uncertainty, BOUNDS);
    for (let band = 0; band < likely.length; band++) likely[band]! += part * chances[band]!;
    all += part;
    mean += part * difference;
    square += part * difference * difference;
  }
  const band = likely.indexOf(Math.max(...likely));
  const chance = likely[band]! / all;
  const spread = Math.max(0, square / all - (mean / all) ** 2);
  return {
    verdict: chance >= SURE ? VERDICTS[band]! : 'cannot tell',
    likely: chance,
    uncertainty: Math.sqrt(uncertainty * uncertainty + spread),
  };
}

const BOUNDS = [LIMITS.accepted, LIMITS.close] as const;
const VERDICTS = ['match', 'close', 'apart'] as const;
/** Keeps a weight finite where nothing is uncertain. */
const LEAST = 1e-9;
