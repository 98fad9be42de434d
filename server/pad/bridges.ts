import type { Sheet, Side, StoryColour } from './pad.ts';
import { CARRIED, shareOf } from './story.ts';

/**
 * The sheets that tie others together: they carry most of the colour story.
 *
 * Takes       the sheets and the colour story of the pad.
 * Gives       ids of sheets that carry at least three colours and seven tenths of the story on one
 *             side, most colours first.
 */
export function bridgesOf(sheets: readonly Sheet[], story: readonly StoryColour[]): string[] {
  const needed = Math.max(FEWEST, Math.ceil(story.length * MOST_OF));
  return sheets
    .map((sheet) => ({ id: sheet.id, ...strengthOf(sheet, story) }))
    .filter(({ carried }) => carried >= needed)
    .sort((p, q) => q.carried - p.carried || q.evenness - p.evenness)
    .map(({ id }) => id);
}

const FEWEST = 3;
const MOST_OF = 0.7;

interface Strength {
  /** Colours of the story on the better side. */
  readonly carried: number;
  /** The smallest of their shares. */
  readonly evenness: number;
}

function strengthOf({ front, back }: Sheet, story: readonly StoryColour[]): Strength {
  const faces = [front, back].filter((side): side is Side => side !== null);
  return faces
    .map((side) => {
      const shares = story.map((colour) => shareOf(side, colour)).filter((s) => s >= CARRIED);
      return { carried: shares.length, evenness: Math.min(...shares, 1) };
    })
    .reduce(
      (best, face) =>
        face.carried > best.carried ||
        (face.carried === best.carried && face.evenness > best.evenness)
          ? face
          : best,
      { carried: 0, evenness: 0 },
    );
}
