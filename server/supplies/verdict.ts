import { chancesOfBands } from './chances.ts';

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

/** A verdict is given when it is at least this likely; else it is 'cannot tell'. A judgement, no source. */
export const SURE = 0.75;

/** The verdict on a measured difference, and how likely it is right. */
export interface Judged {
  readonly verdict: Verdict;
  readonly likely: number;
}

/** Takes the measured difference and its standard error, both in CIEDE2000. */
export function verdictOf(difference: number, uncertainty: number): Judged {
  const [match, close, apart] = chancesOfBands(difference, uncertainty, [
    LIMITS.accepted,
    LIMITS.close,
  ]);
  const chances: readonly (readonly [Verdict, number])[] = [
    ['match', match!],
    ['close', close!],
    ['apart', apart!],
  ];
  const [verdict, likely] = chances.reduce((best, one) => (one[1] > best[1] ? one : best));
  return likely >= SURE ? { verdict, likely } : { verdict: 'cannot tell', likely };
}
