/** The look of everything that is printed: one ink, few tints, one scale of letters (mm; points in brackets). */
export const INK = '#1d2326';
export const SOFT = '#5a6266';
export const HAIR = '#b9bfc0';
export const TINT = '#f1f0ec';
export const PAPER = '#ffffff';
export const CUT = '#a3122f';

export const SIZES = {
  /** Labels on drawings, table heads, the foot of a page: the smallest that is printed (9 1/2). */
  small: 3.35,
  /** What is read beside the work: notes, lists, the second line of a step (10 1/2). */
  note: 3.71,
  /** What is read at arm's length (12). */
  body: 4.2,
  /** A setting of the ruler, a piece (15). */
  large: 5.3,
  /** The head of a page (22). */
  head: 7.8,
  /** A card's number (40). */
  numeral: 14,
} as const;
