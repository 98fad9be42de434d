import type { BatchCard } from '../cutting/pieces-of.ts';
import type { CuttingScheme } from '../cutting/piece.ts';
import type { Ruler, Size } from '../lengths/length.ts';
import type { Pad } from '../pad/pad.ts';
import type { Plan } from '../plan/plan.ts';
import type { Supply } from '../supplies/supply.ts';

/** A piece, by its id, that is cut out of a kept part instead of its slot's sheet. */
export interface FromPart {
  readonly slot: string;
  readonly piece: string;
  /** Of the part, lying as it lay on its sheet. */
  readonly size: Size;
}

/** All that a guide is made from. */
export interface GuideAsk {
  /** Stands at the head of the first page, such as 'Thank-you cards'. */
  readonly title: string;
  readonly pad: Pad;
  readonly cards: readonly BatchCard[];
  readonly scheme: CuttingScheme;
  readonly plan: Plan;
  readonly supplies: readonly Supply[];
  readonly ruler: Ruler;
  /** Address or key of a side's swatch picture; null when there is none, and its main colour is shown. */
  readonly picture: (side: string) => string | null;
  /** Most sheets under the blade at once; 3 when left out (common practice, no source). */
  readonly stack?: number;
  /** How many people get the whole batch; 1 when left out. */
  readonly people?: number;
  /** Pieces of sheets that need not be opened, because parts were kept of which all their pieces come. */
  readonly fromParts?: readonly FromPart[];
  /** Size of a sheet of cardstock; when left out 8 1/2 x 11 in, or A4 for a ruler in mm. */
  readonly stock?: Size;
}
