import type { Lab } from '../colour/lab.ts';
import type { Palette } from '../colour/palette.ts';
import type { Quad } from '../geometry/points.ts';
import type { Size } from '../lengths/length.ts';
import type { PatternTraits } from '../pattern/traits.ts';

/** One face of a sheet, as read from a photo. */
export interface Side {
  readonly id: string;
  /** Id of the photo it was read from. */
  readonly photo: string;
  readonly corners: Quad<'photo'>;
  readonly palette: Palette;
  readonly pattern: PatternTraits;
  readonly confidence: number;
  readonly notes: readonly string[];
}

/** A paper of the pad. `copies` sheets of the same design count as one entry. */
export interface Sheet {
  readonly id: string;
  readonly label: string;
  readonly copies: number;
  readonly front: Side | null;
  readonly back: Side | null;
}

/** One of the few colours that run through the whole pad. */
export interface StoryColour {
  readonly lab: Lab;
  /** Share of the whole pad's area. */
  readonly share: number;
  /** Ids of the sides that carry it. */
  readonly sides: readonly string[];
}

/** The sides led by one colour of the story. */
export interface Family {
  readonly name: string;
  readonly lab: Lab;
  readonly sides: readonly string[];
}

export interface Grouping {
  readonly story: readonly StoryColour[];
  readonly families: readonly Family[];
  /** Sets of side ids that show one pattern in several colourways; only sets of two or more. */
  readonly patternSets: readonly (readonly string[])[];
  /** Ids of the sheets that carry most of the colour story, the strongest first. */
  readonly bridges: readonly string[];
}

export interface Pad {
  readonly id: string;
  readonly name: string;
  readonly sheetSize: Size;
  readonly sheets: readonly Sheet[];
}
