import { bridgesOf } from './bridges.ts';
import { familiesOf } from './families.ts';
import type { Grouping, Sheet, Side } from './pad.ts';
import { patternSetsOf } from './pattern-sets.ts';
import { storyOf } from './story.ts';

/**
 * What goes with what in a pad: the colours that run through it, the sides led by one colour, the patterns
 * that come in several colourways, and the sheets that tie the others together.
 *
 * Takes       the sheets of a pad, sides missing or not.
 * Gives       the grouping; everything in it is a side or sheet of the pad, nothing is invented for an empty
 *             pad.
 */
export function groupPad(sheets: readonly Sheet[]): Grouping {
  const sides = sheets.flatMap(({ copies, front, back }) =>
    [front, back].filter((side): side is Side => side !== null).map((side) => ({ side, copies })),
  );
  const story = storyOf(sides);
  return {
    story,
    families: familiesOf(sides.map(({ side }) => side)),
    patternSets: patternSetsOf(sides.map(({ side }) => side)),
    bridges: bridgesOf(sheets, story),
  };
}
