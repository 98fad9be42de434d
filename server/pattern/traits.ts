/** What a print is like apart from its colours. */
export interface PatternTraits {
  /** Length after which the print repeats, in millimetres; null when none was found. */
  readonly repeat: number | null;
  /** Typical size of a printed shape, in millimetres. */
  readonly scale: number;
  /** none: any turn looks right; two-way: upside down looks right; one-way: it has an up. */
  readonly direction: 'none' | 'two-way' | 'one-way';
  /** For a one-way print: how far, clockwise, the swatch has to be turned to bring its up to the top. */
  readonly up: 0 | 90 | 180 | 270;
  /** True once she has said which way is up; then it is not read any more. */
  readonly told?: boolean;
  /** How much goes on, in [0, 1]: 0 is plain paper, 1 a dense many-coloured print. */
  readonly busyness: number;
  /** A description of the drawing that ignores colour, light and rotation; compared by `sameness`. */
  readonly descriptor: readonly number[];
}
