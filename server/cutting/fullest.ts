import type { Lot, Work } from './lots.ts';
import { countsOf } from './oracle.ts';
import type { Oracle } from './oracle.ts';
import { workOf } from './packings.ts';

/** Pairs of selections that one table may cost while searching. */
export const TABLE_WORK = 40_000;

/** Adds lots to the pool in the order given as long as their table stays small. */
export function poolOf(
  start: readonly Lot[],
  more: readonly Lot[],
  oracle: Oracle,
  limit = TABLE_WORK,
): Lot[] {
  const pool = [...start];
  for (const lot of more) {
    if (pool.length >= 16) break;
    if (workOf(oracle.kindsOf(countsOf([...pool, lot]))) <= limit) pool.push(lot);
  }
  return pool;
}

/**
 * The selection of the pool that comes out of one sheet and is worth most, with `must` in it.
 * Lots whose cards forbid it never share the sheet. With `waste`, only selections that leave at most
 * so much of the sheet are looked at; null when there is none.
 */
export function fullest(
  pool: readonly Lot[],
  must: readonly Lot[],
  work: Work,
  oracle: Oracle,
  worth: (lot: Lot) => number,
  waste = Infinity,
): Lot[] | null {
  const sheet = work.width * work.height;
  const { packings, numbers } = oracle.table(pool, waste);
  const order = pool.filter((lot) => !must.includes(lot)).sort((a, b) => worth(b) - worth(a));
  const columns = new Map(numbers.map((kind, column) => [kind, column]));
  const counts = numbers.map(() => 0);
  const put = (lot: Lot, by: number): void => {
    for (const kind of lot.kinds) counts[columns.get(kind)!]! += by;
  };
  must.forEach((lot) => put(lot, 1));
  const left = [...order.map(worth), 0];
  for (let at = left.length - 2; at >= 0; at--) left[at]! += left[at + 1]!;

  let best: Lot[] | null = null;
  let most = -1;
  const chosen: Lot[] = [];
  const search = (at: number, value: number, area: number): void => {
    const fits = sheet - area <= waste && packings.fits(counts);
    if (fits && value > most) [best, most] = [[...must, ...chosen], value];
    if (!fits && waste === Infinity) return;
    for (let next = at; next < order.length; next++) {
      if (value + left[next]! <= most) return;
      const lot = order[next]!;
      if (area + lot.area > sheet || twinBefore(order, at, next)) continue;
      if (![...must, ...chosen].every((other) => work.mayShare(other, lot))) continue;
      put(lot, 1);
      chosen.push(lot);
      search(next + 1, value + worth(lot), area + lot.area);
      chosen.pop();
      put(lot, -1);
    }
  };
  search(
    0,
    0,
    must.reduce((sum, lot) => sum + lot.area, 0),
  );
  return best;
}

/** Whether a lot of the same card and sizes was passed over just before: the two are interchangeable. */
function twinBefore(order: readonly Lot[], from: number, at: number): boolean {
  const lot = order[at]!;
  return order
    .slice(from, at)
    .some((other) => other.type === lot.type && String(other.cards) === String(lot.cards));
}
