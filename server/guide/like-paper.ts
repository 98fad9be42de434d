import { difference } from '../colour/difference.ts';
import type { Lab } from '../colour/lab.ts';
import { nameOf } from '../colour/names.ts';
import type { Pad } from '../pad/pad.ts';
import { LIMITS } from '../supplies/verdict.ts';
import type { GuideAsk } from './ask.ts';

/**
 * Where on the papers of some cards a colour to buy for them is found, so that she can take that sheet along:
 * 'the ground of Sheet 3, front', 'the light blue of Sheet 5, back'.
 *
 * Gives       the place that shows most of a colour within the reach of 'close', on those cards or else on another
 *             of the plan: a sheet that is not cut lies on no card; null where there is none, as for a plain white.
 */
export function likePaper(
  { pad, plan }: Pick<GuideAsk, 'pad' | 'plan'>,
  lab: Lab,
  cards: readonly number[],
): string | null {
  const shownOn = (numbers: (card: number) => boolean): Set<string> =>
    new Set(
      plan.cards
        .filter(({ number }) => numbers(number))
        .flatMap(({ layers }) =>
          layers.flatMap(({ choice }) => (choice.kind === 'paper' ? [choice.side] : [])),
        ),
    );
  return (
    mostOf(
      pad,
      lab,
      shownOn((card) => cards.includes(card)),
    ) ??
    mostOf(
      pad,
      lab,
      shownOn(() => true),
    )
  );
}

function mostOf({ sheets }: Pad, lab: Lab, shown: ReadonlySet<string>): string | null {
  const places = sheets.flatMap(({ label, front, back }) =>
    Object.entries({ front, back }).flatMap(([face, side]) =>
      (side !== null && shown.has(side.id) ? side.palette.colours : [])
        .filter((colour) => difference(colour.lab, lab) <= LIMITS.close)
        .map((colour) => ({ colour, of: `${label}, ${face}` })),
    ),
  );
  const [first, ...others] = places;
  if (first === undefined) return null;
  const { colour, of } = others.reduce(
    (best, one) => (one.colour.share > best.colour.share ? one : best),
    first,
  );
  return `the ${colour.role === 'ground' ? 'ground' : nameOf(colour.lab).words} of ${of}`;
}
