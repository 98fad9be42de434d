import type { Quad } from '../geometry/points.ts';

export interface Placed {
  readonly id: string;
  readonly corners: Quad<'photo'>;
}

/** A front and the back that lay in the same place; null where one was not found. */
export interface Pair {
  readonly front: string | null;
  readonly back: string | null;
}

/**
 * Pairs the fronts of one photo with the backs of another in which the same sheets were turned over in
 * place.
 *
 * Both photos are first brought to one frame (their sheets' common middle and spread), which takes away a
 * step of the camera to the side or back. Then the pairs are chosen that move the least in
 * all; a pair further apart than a sheet is wide is no pair.
 *
 * Takes       what lies in each photo, with corners in pixels of that photo.
 * Gives       each item once, in reading order of the fronts, lone backs last.
 * Good up to  sheets that all stay in place; when many are missing on one side the frames no longer agree
 *             and she pairs by hand.
 */
export function pairByPlace(fronts: readonly Placed[], backs: readonly Placed[]): Pair[] {
  const ordered = readingOrder(fronts);
  const lying = readingOrder(backs);
  const match = bestMatch(ordered, lying);
  const taken = new Set(match);
  return [
    ...ordered.map((front, i) => ({ front: front.id, back: lying[match[i]!]?.id ?? null })),
    ...lying.filter((_, j) => !taken.has(j)).map((back) => ({ front: null, back: back.id })),
  ];
}

interface Spot {
  readonly x: number;
  readonly y: number;
  /** Length of a side. */
  readonly size: number;
}

function spotOf({ corners }: Placed): Spot {
  const [p, q, r, s] = corners;
  const area = Math.abs((p.x - r.x) * (q.y - s.y) - (q.x - s.x) * (p.y - r.y)) / 2;
  return {
    x: (p.x + q.x + r.x + s.x) / 4,
    y: (p.y + q.y + r.y + s.y) / 4,
    size: Math.sqrt(area),
  };
}

/** Rows from the top, each from the left; sheets whose middles differ by less than half a sheet share a row. */
export function readingOrder<Item extends Placed>(items: readonly Item[]): Item[] {
  const spots = items.map((item) => ({ item, spot: spotOf(item) }));
  const size = middle(spots.map(({ spot }) => spot.size));
  const rows: (typeof spots)[] = [];
  for (const entry of spots.sort((p, q) => p.spot.y - q.spot.y)) {
    const row = rows.at(-1);
    const height = row === undefined ? 0 : middle(row.map(({ spot }) => spot.y));
    if (row !== undefined && entry.spot.y - height < size / 2) row.push(entry);
    else rows.push([entry]);
  }
  return rows.flatMap((row) => row.sort((p, q) => p.spot.x - q.spot.x).map(({ item }) => item));
}

/** For each front the index of its back, or -1. */
function bestMatch(fronts: readonly Placed[], backs: readonly Placed[]): number[] {
  if (fronts.length === 0 || backs.length === 0) return fronts.map(() => -1);
  const [from, to] = [fronts.map(spotOf), backs.map(spotOf)];
  let best: { cost: number; match: number[] } | null = null;
  for (const moved of framings(from, to)) {
    const costs = moved.map((spot) =>
      to.map((other) => Math.hypot(spot.x - other.x, spot.y - other.y) / other.size),
    );
    const match = leastMoves(costs);
    const cost = match.reduce((sum, j, i) => sum + Math.min(LONE, j < 0 ? LONE : costs[i]![j]!), 0);
    if (best === null || cost < best.cost) best = { cost, match };
  }
  return best!.match;
}

/** Moving further than this many sides costs more than having no partner. */
const LONE = 0.75;

/** The fronts as they are, and as they would lie had the camera moved to where the backs were taken. */
function framings(from: readonly Spot[], to: readonly Spot[]): Spot[][] {
  const scale = middle(to.map(({ size }) => size)) / middle(from.map(({ size }) => size));
  const centre = (spots: readonly Spot[]): [number, number] => [
    spots.reduce((sum, { x }) => sum + x, 0) / spots.length,
    spots.reduce((sum, { y }) => sum + y, 0) / spots.length,
  ];
  const [fx, fy] = centre(from);
  const [tx, ty] = centre(to);
  return [
    [...from],
    from.map(({ x, y, size }) => ({
      x: tx + scale * (x - fx),
      y: ty + scale * (y - fy),
      size: scale * size,
    })),
  ];
}

/**
 * The matching of least total cost, where staying alone costs LONE: the Hungarian method on a square
 * table widened by lone places.
 */
function leastMoves(costs: readonly (readonly number[])[]): number[] {
  const [n, m] = [costs.length, costs[0]?.length ?? 0];
  const size = n + m;
  const cost = (i: number, j: number): number => {
    if (i < n && j < m) return costs[i]![j]!;
    return i < n || j < m ? LONE / 2 : 0;
  };
  const row = new Float64Array(size + 1);
  const column = new Float64Array(size + 1);
  const owner = new Int32Array(size + 1);
  const way = new Int32Array(size + 1);
  for (let i = 1; i <= size; i++) {
    owner[0] = i;
    let at = 0;
    const least = new Float64Array(size + 1).fill(Infinity);
    const seen = new Uint8Array(size + 1);
    do {
      seen[at] = 1;
      const here = owner[at]!;
      let step = Infinity;
      let next = 0;
      for (let j = 1; j <= size; j++) {
        if (seen[j] === 1) continue;
        const reduced = cost(here - 1, j - 1) - row[here]! - column[j]!;
        if (reduced < least[j]!) {
          least[j] = reduced;
          way[j] = at;
        }
        if (least[j]! < step) {
          step = least[j]!;
          next = j;
        }
      }
      for (let j = 0; j <= size; j++)
        if (seen[j] === 1) {
          row[owner[j]!]! += step;
          column[j]! -= step;
        } else least[j]! -= step;
      at = next;
    } while (owner[at] !== 0);
    while (at !== 0) {
      owner[at] = owner[way[at]!]!;
      at = way[at]!;
    }
  }
  const match = new Array<number>(n).fill(-1);
  for (let j = 1; j <= m; j++) if (owner[j]! <= n) match[owner[j]! - 1] = j - 1;
  return match;
}

function middle(values: readonly number[]): number {
  return [...values].sort((p, q) => p - q)[values.length >> 1] ?? 1;
}
