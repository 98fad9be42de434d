/** One face of a paper: what is printed on it, in which colours. */
export interface PaperSide {
  readonly id: string;
  readonly design: Print | Wash;
  /** `#rrggbb` for each slot of a print, the ground first; from light to deep for a wash. */
  readonly colours: readonly string[];
  /** What the paper itself looks like under the ink. */
  readonly stock: 'smooth' | 'kraft';
}

export interface Print {
  readonly kind: 'print';
  readonly drawing: string;
  readonly seed: number;
  /** Side of the repeating tile in millimetres. */
  readonly repeat: number;
  /** Where the sheet was cut from the endless print, in parts of the tile. */
  readonly cutAt: readonly [number, number];
}

/** One tone that runs: no drawing, no edges. */
export interface Wash {
  readonly kind: 'wash';
  readonly texture: 'watercolour' | 'linen';
  readonly seed: number;
}

/** Sides with the same name show one pattern, whatever their colours. */
export function patternOf({ design }: PaperSide): string {
  return design.kind === 'print'
    ? `${design.drawing}-${design.seed}-${design.repeat}`
    : `${design.texture}-${design.seed}`;
}
