import { PackingTable } from './packing-table.ts';

/** A size of piece in whole grid steps, and how many of it there are. */
export interface Kind {
  readonly width: number;
  readonly height: number;
  /** Whether it may lie turned. */
  readonly turn: boolean;
  readonly count: number;
}

/** How pieces come out of a part by edge-to-edge cuts; `kind` is an index into the kinds. */
export type CutPlan =
  | { readonly kind: number; readonly turned: boolean }
  | { readonly way: 'vertical' | 'horizontal'; readonly first: CutPlan; readonly second: CutPlan };

/** Which sets of pieces can be cut from one sheet, edge to edge. */
export interface Packings {
  /** Whether so many of each kind can be cut from one sheet. Exact. */
  readonly fits: (counts: readonly number[]) => boolean;
  /** The cuts for it, or null when it does not fit. */
  readonly cuts: (counts: readonly number[]) => CutPlan | null;
}

/**
 * Settles for every selection of the pieces whether edge-to-edge cuts can bring it out of one sheet.
 *
 * Takes     kinds of pieces and a sheet in whole grid steps (a sheet of at most 15,000 steps a side).
 * Gives     exact answers, for any number of stages of cuts, with turning where a kind allows it.
 * How       for every selection S and every width w it keeps the least height h(S, w) into which S can
 *           be cut, and for every height the least width. A selection is one piece, or two selections
 *           one above the other, h(A, w) + h(B, w), or side by side, likewise in the heights:
 *
 *               ┌──────┐         ┌───┬───┐
 *               │  A   │         │ A │ B │
 *               ├──────┤   or    │   │   │
 *               │  B   │         └───┴───┘
 *               └──────┘
 *
 *           Widths and heights are taken only where sums of pieces end (normal patterns: Herz 1972;
 *           Christofides, Whitlock 1977).
 *           With `waste`, parts that waste more than that inside them are dropped (Wang 1983, Oper.
 *           Res. 31, 573-586): then only selections that leave at most so much of the sheet unused
 *           are answered, and those many times faster.
 * Good up to about twelve different pieces; equal ones count once with their number (`workOf`).
 */
export function packingsOf(
  kinds: readonly Kind[],
  width: number,
  height: number,
  waste = Infinity,
): Packings {
  const table = new PackingTable(kinds, width, height, waste);
  return {
    fits: (counts) => table.fits(table.indexOf(counts)),
    cuts: (counts) => {
      const index = table.indexOf(counts);
      return table.fits(index) ? table.cutsIn(index, width, height) : null;
    },
  };
}

/** How many pairs of selections `packingsOf` looks at: some tens of thousands take a millisecond or two. */
export function workOf(kinds: readonly Kind[]): number {
  return kinds.reduce((work, { count }) => (work * (count + 1) * (count + 2)) / 2, 1);
}
