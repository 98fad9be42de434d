import { difference } from '../colour/difference.ts';
import { gather } from './gather.ts';
import type { Side, StoryColour } from './pad.ts';

/**
 * The few colours that run through the whole pad.
 *
 * The palettes of all sides are gathered, weighed by area; a colour belongs to the story when it returns on
 * several sides and fills enough of the pad.
 *
 * Takes       the sides, each with the number of copies of its sheet.
 * Gives       at most eight colours, largest share first; each with the sides that carry it.
 */
export function storyOf(
  sides: readonly { readonly side: Side; readonly copies: number }[],
): StoryColour[] {
  const area = sides.reduce((sum, { copies }) => sum + copies, 0);
  const printed = sides.flatMap(({ side, copies }) =>
    side.palette.colours.map(({ lab, share }) => ({
      lab,
      weight: (share * copies) / area,
      items: [side.id],
    })),
  );
  return gather(printed, ONE_COLOUR)
    .map(({ lab, weight }) => ({
      lab,
      share: weight,
      sides: sides
        .filter(({ side }) => shareOf(side, { lab }) >= CARRIED)
        .map(({ side }) => side.id),
    }))
    .filter(
      (colour) =>
        colour.share >= LEAST_SHARE &&
        colour.sides.length >= Math.max(Math.min(2, sides.length), LEAST_SIDES * sides.length),
    )
    .sort((p, q) => q.share - p.share)
    .slice(0, MOST);
}

/** The share of a side that shows a colour of the story. */
export function shareOf(side: Side, { lab }: Pick<StoryColour, 'lab'>): number {
  return side.palette.colours
    .filter((colour) => difference(colour.lab, lab) < SAME_STORY)
    .reduce((sum, { share }) => sum + share, 0);
}

/** Colours gathered into one of the story: wider than one printing ink, narrower than two shades. */
const ONE_COLOUR = 9;
const SAME_STORY = 9;
/** A side carries a colour that fills at least this part of it. */
export const CARRIED = 0.03;
const LEAST_SHARE = 0.025;
const LEAST_SIDES = 0.1;
const MOST = 8;
