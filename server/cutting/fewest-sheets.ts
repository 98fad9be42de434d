import type { GridKind, Lot, Work } from './lots.ts';
import type { Oracle } from './oracle.ts';

/**
 * A number of sheets below which no scheme can go: the largest of
 *
 * - the area of all pieces by the area of a sheet, also with sizes stretched by dual feasible
 *   functions, which keep any sheet's pieces within a sheet (Fekete, Schepers 2001, Math. Programming
 *   91, 11-31, doi:10.1007/s101070100243; a turnable piece counts the way that asks less);
 * - lots of which no two can share a sheet, by their cards or by their sizes (a clique, found greedily).
 *
 * Where sizes had to be rounded to the grid, only true areas and cards count.
 */
export function fewestSheets(work: Work, oracle: Oracle): number {
  if (work.lots.length === 0) return 0;
  const area = work.exact ? stretchedArea(work) : Math.ceil(work.sheetsByArea - 1e-9);
  return Math.max(1, area, largestClique(work, oracle));
}

type Stretch = (side: number) => number;

function stretchedArea(work: Work): number {
  const { width, height, kinds, lots } = work;
  const across = stretches(width, kinds);
  const down = stretches(height, kinds);
  let most = 0;
  for (const f of across)
    for (const g of down) {
      const needs = kinds.map((kind) => need(kind, f, g));
      const total = lots.reduce(
        (sum, lot) => sum + lot.kinds.reduce((part, kind) => part + needs[kind]!, 0),
        0,
      );
      most = Math.max(most, Math.ceil(total - 1e-9));
    }
  return most;
}

/** Of a sheet, in [0, 1]. */
function need(kind: GridKind, f: Stretch, g: Stretch): number {
  const upright = f(kind.width) * g(kind.height);
  return kind.turn ? Math.min(upright, f(kind.height) * g(kind.width)) : upright;
}

/** Functions of a side to [0, 1] whose values over any pieces in a row within the limit add up to 1 at most. */
function stretches(limit: number, kinds: readonly GridKind[]): Stretch[] {
  const sides = new Set(kinds.flatMap((kind) => [kind.width, kind.height]));
  const small = [...sides].filter((side) => side <= limit / 2).slice(0, 24);
  const cutOff = small.map(
    (edge): Stretch =>
      (side) =>
        side > limit - edge ? 1 : side >= edge ? side / limit : 0,
  );
  const rounded = [1, 2, 3, 4, 5].map((k): Stretch => (side) => {
    const share = ((k + 1) * side) / limit;
    return Number.isInteger(share) ? side / limit : Math.floor(share) / k;
  });
  return [(side) => side / limit, ...cutOff, ...rounded];
}

/** Lots of one type clash with themselves or not; a greedy clique from every lot, largest areas first. */
function largestClique({ lots, mayShare, exact: exactGrid }: Work, oracle: Oracle): number {
  const order = [...lots].sort((a, b) => b.area - a.area || a.index - b.index).slice(0, 80);
  const clash = (a: Lot, b: Lot): boolean => {
    if (!mayShare(a, b)) return true;
    if (!exactGrid) return false;
    const { plan, exact } = oracle.fitting([a, b]);
    return plan === null && exact;
  };
  let most = 0;
  for (const start of order) {
    const clique = [start];
    for (const lot of order)
      if (lot !== start && clique.every((member) => clash(member, lot))) clique.push(lot);
    most = Math.max(most, clique.length);
  }
  return most;
}
