import { difference } from '../colour/difference.ts';
import type { Lab } from '../colour/lab.ts';
import { nameOf } from '../colour/names.ts';
import { LIMITS } from '../supplies/verdict.ts';
import type { GuideAsk } from './ask.ts';

/**
 * Where on her papers a colour to buy is found, so that she can take that sheet along: 'the ground of Sheet 3, front',
 * 'the light blue of Sheet 5, back'.
 *
 * Gives       the place that shows most of a colour within the reach of 'close'; null where no paper has it, as for
 *             a plain white.
 */
export function likePaper({ pad }: Pick<GuideAsk, 'pad'>, lab: Lab): string | null {
  const places = pad.sheets.flatMap(({ label, front, back }) =>
    Object.entries({ front, back }).flatMap(([face, side]) =>
      (side?.palette.colours ?? [])
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
