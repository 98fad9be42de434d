import { difference } from '../../colour/difference.ts';
import type { Lab } from '../../colour/lab.ts';
import type { PaletteColour } from '../../colour/palette.ts';

/** One colour of what a piece shows; `index` is its place in the table of differences. */
export interface LookColour {
  readonly lab: Lab;
  readonly share: number;
  readonly ground: boolean;
  readonly index: number;
}

/** What a piece shows of a paper or a cardstock, as far as going together is concerned. */
export interface Look {
  readonly colours: readonly LookColour[];
  /** The largest ground, or the largest colour where no ground was found. */
  readonly ground: LookColour;
  /** Mean by area. */
  readonly mean: Lab;
  readonly busyness: number;
  /** Size of a printed shape in millimetres. */
  readonly scale: number;
  readonly directional: boolean;
  /** A cardstock: one colour, no print. */
  readonly solid: boolean;
}

/** Differences between all colours that take part, each worked out once. */
export interface ColourTable {
  /** Puts a colour into the table and gives its index. */
  add(colour: Pick<PaletteColour, 'lab' | 'uncertainty'>): number;
  /** The difference of two colours less what the noise of both readings adds, in CIEDE2000. */
  between(a: number, b: number): number;
}

/**
 * The measured square of a difference is about the true square plus the squares of both standard
 * errors; that share is taken off, so that a difference within the noise counts as none.
 */
export function createColourTable(): ColourTable {
  const labs: Lab[] = [];
  const noise: number[] = [];
  const rows: number[][] = [];
  return {
    add(colour) {
      labs.push(colour.lab);
      noise.push(colour.uncertainty);
      rows.push([]);
      return labs.length - 1;
    },
    between(a, b) {
      if (a === b) return 0;
      if (a < b) return this.between(b, a);
      const row = rows[a]!;
      const known = row[b];
      if (known !== undefined) return known;
      const measured = difference(labs[a]!, labs[b]!);
      const added = noise[a]! ** 2 + noise[b]! ** 2;
      return (row[b] = Math.sqrt(Math.max(0, measured ** 2 - added)));
    },
  };
}

export function chroma(lab: Lab): number {
  return Math.hypot(lab.a, lab.b);
}

/** Builds a look out of colours that carry an index. */
export function lookWith(
  colours: readonly LookColour[],
  traits: Pick<Look, 'busyness' | 'scale' | 'directional' | 'solid'>,
): Look {
  const largest = (among: readonly LookColour[]): LookColour | undefined =>
    among.reduce<LookColour | undefined>(
      (best, colour) => (best === undefined || colour.share > best.share ? colour : best),
      undefined,
    );
  const ground = largest(colours.filter((colour) => colour.ground)) ?? largest(colours);
  if (ground === undefined) throw new RangeError('Expected a look with at least one colour');
  const total = colours.reduce((sum, colour) => sum + colour.share, 0);
  const mean = (axis: keyof Lab): number =>
    colours.reduce((sum, colour) => sum + colour.share * colour.lab[axis], 0) / total;
  return { colours, ground, mean: { l: mean('l'), a: mean('a'), b: mean('b') }, ...traits };
}
