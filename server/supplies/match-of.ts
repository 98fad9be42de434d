import type { Lab } from '../colour/lab.ts';
import type { PaletteColour } from '../colour/palette.ts';
import type { Side } from '../pad/pad.ts';
import { comparedHow, uncertaintyOfDifference } from './compared.ts';
import { directionOf } from './direction.ts';
import { nearestColour } from './nearest-colour.ts';
import type { Nearest } from './nearest-colour.ts';
import { reasonGlossy, reasonOf, reasonTooFine } from './reason.ts';
import type { Supply } from './supply.ts';
import type { Verdict } from './verdict.ts';
import { verdictAmong, verdictOf } from './verdict.ts';

/** Whether a cardstock or an ink matches a colour of a side. */
export interface MatchVerdict {
  readonly verdict: Verdict;
  /** The palette colour that it is nearest to, or the one that was asked of. */
  readonly nearest: PaletteColour;
  /** The very place it was compared with: for a tone that runs, a place on its run; else that colour. */
  readonly at: Lab;
  /** From that place, in CIEDE2000. */
  readonly difference: number;
  /** One standard error of the difference, in CIEDE2000. */
  readonly uncertainty: number;
  /** How the supply looks beside that place: 'a little lighter and yellower'; '' when alike, or when it cannot be told. */
  readonly direction: string;
  readonly reason: string;
}

/**
 * Checks one cardstock or ink against one side: against its nearest colour, or the one at a place of its palette.
 *
 * Gives       'match' when the difference is within what half of the observers accept, 'close' up to the
 *             reach of the formula, 'apart' beyond it; 'cannot tell' when the uncertainty allows none of
 *             them at five to two or more, or when the side's print may be that colour in lines too fine
 *             for the photo; or when the light mirrors in the supply. Colours in one photo share most of
 *             its errors and compare finer.
 * Good up to  plain colours in even light: glitter and foil have no one colour.
 * Source      see LIMITS.
 */
export function matchOf(supply: Supply, side: Side, colour?: number): MatchVerdict {
  const how = comparedHow(supply, side);
  const nearest = nearestColour(supply.lab, side.palette, colour);
  const error = uncertaintyOfDifference(supply, nearest.colour, how);
  const judged = verdictAmong(nearest.possible, error);
  const { uncertainty } = judged;
  const direction = directionOf(supply.lab, nearest.at, nearest.difference);
  const told = (verdict: Verdict, reason: string): MatchVerdict => ({
    verdict,
    nearest: nearest.colour,
    at: nearest.at,
    difference: nearest.difference,
    uncertainty,
    direction: verdict === 'cannot tell' ? '' : direction,
    reason,
  });
  if (supply.glossy === true) return told('cannot tell', reasonGlossy(supply));
  if (judged.verdict === 'cannot tell' && isTooFine(nearest, error))
    return told('cannot tell', reasonTooFine(nearest.colour));
  return told(judged.verdict, reasonOf(supply, nearest, judged, how, direction));
}

/** As it was seen it would be apart; only what is too fine to be seen keeps it in doubt. */
function isTooFine({ difference, possible }: Nearest, error: number): boolean {
  return possible.length > 1 && verdictOf(difference, error).verdict === 'apart';
}
