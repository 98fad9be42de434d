import type { Pad, Side } from '../../server/contract/pads.ts';
import type { Plan } from '../../server/contract/plans.ts';
import type { Supply } from '../../server/contract/supplies.ts';
import { sideIn, sidesOf } from '../pad/sides.ts';
import { padWords } from '../words/pad.ts';
import type { Wishes } from './wishes.ts';

/** What was done to the papers of a pad since a plan was made of them, by the names she knows them by. */
export interface PapersSince {
  /** Sides whose print is said to be up another way. */
  readonly turned: readonly string[];
  /** Sheets that were read anew, by other corners or in another light, have other sides or another count. */
  readonly corrected: readonly string[];
  readonly added: readonly string[];
  /** Whether the plan cuts a sheet that the pad has no more. */
  readonly gone: boolean;
}

type Seen = Plan['papers'][number]['sides'][number];

export function papersSince({ papers, sheetsUsed }: Plan, pad: Pad): PapersSince {
  const known = new Map(papers.map((paper) => [paper.sheet, paper]));
  const seen = new Map(papers.flatMap(({ sides }) => sides.map((side) => [side.side, side])));
  const isReadAnew = ({ id, swatch }: Side): boolean => seen.get(id)?.swatch !== swatch;
  return {
    turned: sidesOf(pad).flatMap(({ side, sheet, face }) => {
      const then = seen.get(side.id);
      if (then === undefined || !isTurned(then, side)) return [];
      return [padWords.sideName(sheet.label, face)];
    }),
    corrected: pad.sheets.flatMap(({ id, label, copies, front, back }) => {
      const then = known.get(id);
      if (then === undefined) return [];
      const sides = [front, back].flatMap((side) => side ?? []);
      const same =
        copies === then.copies &&
        sides.map((side) => side.id).join() === then.sides.map(({ side }) => side).join() &&
        !sides.some(isReadAnew);
      return same ? [] : [label];
    }),
    added: pad.sheets.flatMap(({ id, label }) => (known.has(id) ? [] : [label])),
    gone: sheetsUsed.some(({ sheet }) => pad.sheets.every(({ id }) => id !== sheet)),
  };
}

function isTurned(then: Seen, { pattern }: Side): boolean {
  if (then.direction !== pattern.direction) return true;
  return pattern.direction === 'one-way' && then.up !== pattern.up;
}

/** Her wishes without those that speak of a paper, a cardstock or an ink that is no more. */
export function wishesLeft(
  { pins = [], without = [] }: Wishes,
  pad: Pad,
  supplies: readonly Supply[],
): Pick<Wishes, 'pins' | 'without'> {
  const has = (sheet: string): boolean => pad.sheets.some(({ id }) => id === sheet);
  return {
    pins: pins.filter(
      ({ sheet, side, supply }) =>
        (sheet === undefined || has(sheet)) &&
        (side === undefined || sideIn(pad, side) !== null) &&
        (supply === undefined || supplies.some(({ id }) => id === supply)),
    ),
    without: without.filter(has),
  };
}
