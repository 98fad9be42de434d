import type { Settled } from './settled.ts';

/**
 * How sure the corners of a sheet are, 0 to 1: below 0.5 she is asked to look.
 *
 * Takes       what its outline settled to, and whether only its motifs stood out from the table.
 * Source      the marks stand where, on photos of the samples' generator, outlines more than 1 % of a side off part
 *             from the others: of 543 sheets 26 were off so far, and 20 of them come out below 0.5, with 3 good ones.
 */
export function surenessOf(settled: Settled, byMotifs: boolean): number {
  const { borne, outside, offSize, lead, leadBySize, isBeside } = settled;
  const seen =
    0.3 + (0.4 * borne.reduce((sum, side) => sum + side, 0)) / 4 + 0.3 * Math.min(...borne);
  const rightSize = Math.max(0.2, 1 - Math.max(0, offSize - RIGHT) / OFF);
  // Either no other edges would do as well, or the table is seen beside all sides, but for one at most in part;
  // where neither holds the four edges are one guess of two, and no size or strength makes up for that.
  const [least = 0, next = 0] = [...outside].sort((p, q) => p - q);
  const bySize = leadBySize === undefined ? 0 : leadBySize / CLEAR_LEAD;
  const told = Math.min(1, Math.max(lead / 0.4 + GUESS, least + next, bySize));
  const motifs = byMotifs && leadBySize === undefined ? 0.75 * (0.7 + 0.3 * Math.min(1, lead)) : 1;
  const beside = isBeside === true ? BESIDE : 1;
  return Math.min(1, seen * rightSize * (0.35 + 0.65 * told) * motifs * beside);
}

/** What edges with rivals as good tell when no table was seen beside them: too little to be sure. */
const GUESS = 0.2;

/** What a sheet laid by its size is borne out better than at any other place, when no other can be meant. */
export const CLEAR_LEAD = 0.08;

/** What stays of it where the outline may lie beside the sheet: she is asked. */
const BESIDE = 0.45;

/** Nearly all outlines that fit have sides within this part of a sheet's size, and hardly any lies as far off again. */
const RIGHT = 0.0055;
const OFF = 0.0105;
