import { expected } from '../refusals/refusal.ts';

/**
 * The least work that turns one heap into the other: the earth mover's distance, solved exactly.
 *
 * Takes       two lists of weights >= 0, each with something in it, and the distance from item i of the
 *             first to item j of the second.
 * Gives       work per unit moved, in the unit of the distance. When one heap is heavier only the
 *             lighter weight is moved. A metric when the distance is one and the heaps weigh the same.
 * Good up to  some dozens of items a side: the cost grows with their cube.
 * Source      Y. Rubner, C. Tomasi, L. J. Guibas (2000), Int. J. Computer Vision 40(2), 99-121,
 *             doi:10.1023/A:1026543900054, eqs. 1-6.
 * Checked     against their worked example.
 */
export function earthMover(
  from: readonly number[],
  to: readonly number[],
  distance: (i: number, j: number) => number,
): number {
  checkHeap(from, 'from');
  checkHeap(to, 'to');
  const [n, m] = [from.length, to.length];
  const cost = Float64Array.from({ length: n * m }, (_, ij) => distance((ij / m) | 0, ij % m));
  const flow = new Float64Array(n * m);
  const supply = Float64Array.from(from);
  const demand = Float64Array.from(to);
  const total = Math.min(sum(from), sum(to));
  let left = total;
  let work = 0;
  while (left > total * DUST) {
    const route = cheapestRoute(cost, flow, supply, demand);
    if (route === null) break;
    const amount = Math.min(left, carry(route, flow, supply, demand, m));
    work += amount * route.cost;
    left -= amount;
  }
  return work / (total - Math.max(0, left));
}

/** What is left of the weights when floating point has eaten the rest. */
const DUST = 1e-12;

interface Route {
  /** Items in turn: a source, a target, and where earth is taken back from a target, further pairs. */
  readonly path: readonly number[];
  readonly cost: number;
}

/**
 * The cheapest way from any source with earth left to any target with room left: forward from source
 * to target, back along flow already laid (Bellman and Ford's rounds over both).
 */
function cheapestRoute(
  cost: Float64Array,
  flow: Float64Array,
  supply: Float64Array,
  demand: Float64Array,
): Route | null {
  const [n, m] = [supply.length, demand.length];
  const toSource = Float64Array.from(supply, (left) => (left > DUST ? 0 : Infinity));
  const toTarget = new Float64Array(m).fill(Infinity);
  const before = new Int32Array(m).fill(-1);
  const backFrom = new Int32Array(n).fill(-1);
  for (let moved = true; moved;) {
    moved = false;
    for (let i = 0; i < n; i++)
      for (let j = 0; j < m; j++) {
        const edge = i * m + j;
        if (toSource[i]! + cost[edge]! < toTarget[j]! - SLACK) {
          toTarget[j] = toSource[i]! + cost[edge]!;
          before[j] = i;
          moved = true;
        }
        if (flow[edge]! > DUST && toTarget[j]! - cost[edge]! < toSource[i]! - SLACK) {
          toSource[i] = toTarget[j]! - cost[edge]!;
          backFrom[i] = j;
          moved = true;
        }
      }
  }
  let end = -1;
  for (let j = 0; j < m; j++)
    if (demand[j]! > DUST && (end < 0 || toTarget[j]! < toTarget[end]!)) end = j;
  if (end < 0 || toTarget[end] === Infinity) return null;
  const path = [end];
  for (let j = end; ;) {
    const i = before[j]!;
    path.unshift(i);
    j = backFrom[i]!;
    if (j < 0) return { path, cost: toTarget[end]! };
    path.unshift(j);
  }
}

/** Keeps rounding from finding 'cheaper' ways for ever. */
const SLACK = 1e-9;

/** Sends as much as fits along the route; gives how much that was. */
function carry(
  { path }: Route,
  flow: Float64Array,
  supply: Float64Array,
  demand: Float64Array,
  m: number,
): number {
  const source = path[0]!;
  const target = path[path.length - 1]!;
  let amount = Math.min(supply[source]!, demand[target]!);
  for (let at = 1; at + 1 < path.length; at += 2)
    amount = Math.min(amount, flow[path[at + 1]! * m + path[at]!]!);
  for (let at = 0; at + 1 < path.length; at += 2) flow[path[at]! * m + path[at + 1]!]! += amount;
  for (let at = 1; at + 1 < path.length; at += 2) flow[path[at + 1]! * m + path[at]!]! -= amount;
  supply[source]! -= amount;
  demand[target]! -= amount;
  return amount;
}

function checkHeap(weights: readonly number[], field: string): void {
  if (!(sum(weights) > 0) || weights.some((weight) => !(weight >= 0)))
    throw expected(
      'weights that add up to more than 0',
      field,
      weights,
      'Give at least one share.',
    );
}

function sum(weights: readonly number[]): number {
  return weights.reduce((all, weight) => all + weight, 0);
}
