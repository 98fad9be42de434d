/** Every supply of a table against every side of it, with what is true of the two. */
import type { ColourTruth } from '../../sample-swatches/paper/render-side.ts';
import { difference } from '../../server/colour/difference.ts';
import type { Lab } from '../../server/colour/lab.ts';
import { matchOf } from '../../server/supplies/match-of.ts';
import type { MatchVerdict } from '../../server/supplies/match-of.ts';
import { nearestColour } from '../../server/supplies/nearest-colour.ts';
import type { Nearest } from '../../server/supplies/nearest-colour.ts';
import { LIMITS } from '../../server/supplies/verdict.ts';
import type { Verdict } from '../../server/supplies/verdict.ts';
import type { KnownSide, KnownSupply, Tables } from './supplies-tables.ts';

export interface Check {
  readonly given: MatchVerdict;
  readonly right: boolean;
  /** The verdict by colours of 5 % and more alone. */
  readonly ofLarge: Verdict;
  /** How far apart supply and side truly are. */
  readonly apart: number;
  /** The palette holds the colour that is truly nearest. */
  readonly sameColour: boolean;
}

/** The checks of each table; `again`: with the supplies from a picture of another day, beside another white card. */
export function checksOf(tables: readonly Tables[], which: 'supplies' | 'again'): Check[][] {
  return tables.map((table) =>
    table[which].flatMap((supply) => table.sides.map((side) => checkOf(supply, side))),
  );
}

function checkOf(known: KnownSupply, one: KnownSide): Check {
  const given = matchOf(known.supply, one.side);
  const { nearest, ofSmall } = truthOf(known, one, given);
  const apart = nearest.difference;
  const sameColour =
    ofSmall !== null ||
    difference(given.nearest.lab, nearest.at) <= MISREAD ||
    (apart > MISREAD && given.difference > MISREAD);
  const truth = ofSmall === null ? trueVerdict(apart) : trueVerdict(ofSmall);
  const ofLarge = trueVerdict(apart);
  const right = given.verdict === ofLarge || given.verdict === truth;
  return { given, right, ofLarge, apart, sameColour };
}

/** A palette colour further than this (CIEDE2000) from the printed one is another colour. */
const MISREAD = 6;

function trueVerdict(apart: number): Verdict {
  if (apart <= LIMITS.accepted) return 'match';
  return apart <= LIMITS.close ? 'close' : 'apart';
}

/** A colour of a print is to be found from this share of its area, as in the figures on photos. */
const SEEN = 0.05;

interface Truth {
  readonly nearest: Nearest;
  /** To the smaller colour that the verdict speaks of. */
  readonly ofSmall: number | null;
}

/**
 * What is true of a supply and a side: by the nearest of the colours that fill a twentieth of it or more,
 * wherever their tone runs; but where the verdict speaks of a smaller colour that is printed as well,
 * by that one.
 */
function truthOf({ lab }: KnownSupply, { printed }: KnownSide, given: MatchVerdict): Truth {
  const to = (colours: readonly ColourTruth[], of: Lab): Nearest =>
    nearestColour(of, {
      colours: colours.map((one) => ({ ...one, uncertainty: 0 })),
      tonal: false,
    });
  const nearest = to(
    printed.filter(({ share }) => share >= SEEN),
    lab,
  );
  const spokenOf = to(printed, given.nearest.lab);
  const small = spokenOf.difference <= MISREAD && spokenOf.colour.share < SEEN;
  return { nearest, ofSmall: small ? to([spokenOf.colour], lab).difference : null };
}
