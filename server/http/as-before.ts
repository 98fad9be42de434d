import type { Lab } from '../colour/lab.ts';
import type { Tap } from '../photo/picture.ts';
import type { PhotoRow } from '../store/rows.ts';
import { chipColoursOf } from './chip-colours.ts';

/** What a photo is read with: what is shown in it, and what the scraps look like in the photo that came first. */
export interface ReadWith {
  readonly tap: Pick<Tap, 'white' | 'chips'>;
  readonly chipColours: readonly Lab[];
}

/**
 * How a photo is read again as it was: with the white card where she has shown it, and its scraps.
 *
 * Takes       the photos that may say how the scraps look, if it is not this one that does.
 */
export function asBefore(photo: PhotoRow, others: readonly PhotoRow[]): ReadWith {
  const { chips } = photo;
  return {
    tap: {
      ...tappedWhite(photo),
      ...(chips === undefined || chips.tie === 'none'
        ? {}
        : { chips: chips.scraps.map((scrap) => scrap.corners) }),
    },
    chipColours: chips?.tie === 'first' ? [] : chipColoursOf(others),
  };
}

/** The white card where she has shown it; nothing where it was found, or there is none. */
export function tappedWhite({ white }: PhotoRow): Pick<Tap, 'white'> {
  return white.kind === 'tapped' && white.corners !== null ? { white: white.corners } : {};
}
