import { HAIR } from './network.ts';
import { pairLines, tripleLines } from './lines.ts';
import type { Relaxation } from './relaxation.ts';
import type { Task } from './task.ts';

/** One slot that is settled before a walk begins. */
export interface First {
  readonly at: number;
  readonly place: number;
}

/**
 * Searches a tightened relaxation through, slot by slot, without tightening it again: for every open
 * slot a row keeps what each of its designs is worth beside the slots that are settled, and the best
 * of each row bounds what is still to come. That bound is looser than a new tightening and some
 * thousand times cheaper. The slot with the fewest designs that can still beat the best plan is next.
 *
 * The walk takes at most `budget` nodes, with one slot settled beforehand, and gives the largest bound
 * of what it left unsearched: -Infinity when nothing was.
 */
export function walkerOf(
  relaxation: Relaxation,
  task: Task,
): (budget: number, first: First) => number {
  const { designs, slots } = relaxation;
  const count = slots.length;
  const width = designs.reduce((most, list) => Math.max(most, list.length), 0);
  const size = designs.map((list) => list.length);
  const level = count * width;
  const rows = new Float64Array((count + 1) * level);
  const most = new Float64Array((count + 1) * count);
  const open = new Int32Array((count + 1) * count);
  const order = new Int32Array((count + 1) * width);
  const taken = new Int32Array(count);
  const place = new Int32Array(count).fill(-1);
  const left = relaxation.copies.slice();
  const settled = relaxation.settled.slice();
  const placeOf = placesOf(designs, left.length);
  const pairs = pairLines(relaxation);
  const triples = tripleLines(relaxation);
  const wides = task.wides.map((wide) => ({
    wide,
    open: wide.scope.filter((slot) => settled[slot] === -1).length,
  }));
  const widesAt = slots.map((slot) => wides.filter(({ wide }) => wide.scope.includes(slot)));
  const rules = slots.map((slot) => ({
    notBelow: task.rules.flatMap(([low, high]) => (low === slot ? [slots.indexOf(high)] : [])),
    notAbove: task.rules.flatMap(([low, high]) => (high === slot ? [slots.indexOf(low)] : [])),
  }));
  let end = 0;
  let least = -Infinity;
  let stopped = false;
  const halted = (): boolean => stopped;

  /** Settles a slot; gives what the cards that are now whole lose against their tables. */
  const take = (depth: number, at: number, chosen: number): number => {
    const design = designs[at]![chosen]!;
    place[at] = chosen;
    taken[depth] = at;
    left[design]!--;
    settled[slots[at]!] = design;
    let lost = 0;
    for (const one of widesAt[at]!) if (--one.open === 0) lost += one.wide.correction(settled);
    return lost;
  };
  const giveBack = (at: number): void => {
    left[designs[at]![place[at]!]!]!++;
    place[at] = -1;
    settled[slots[at]!] = -1;
    for (const one of widesAt[at]!) one.open++;
  };
  const plus = (
    to: number,
    data: Float64Array,
    from: number,
    step: number,
    length: number,
  ): void => {
    if (step === 1) for (let i = 0; i < length; i++) rows[to + i]! += data[from + i]!;
    else for (let i = 0, cell = from; i < length; i++, cell += step) rows[to + i]! += data[cell]!;
  };
  /** The rows of the slots that stay open once `at` is settled, one level down. */
  const goDown = (depth: number, at: number, openSlots: number): void => {
    const from = depth * level;
    const to = from + level;
    const below = (depth + 1) * count;
    const design = designs[at]![place[at]!]!;
    const used = left[design] === 0;
    let kept = 0;
    for (let i = 0; i < openSlots; i++) {
      const other = open[depth * count + i]!;
      if (other === at) continue;
      open[below + kept++] = other;
      const row = to + other * width;
      rows.copyWithin(row, from + other * width, from + other * width + size[other]!);
      const line = pairs[at * count + other];
      if (line !== undefined)
        plus(row, line.data, place[at]! * line.first, line.step, size[other]!);
      for (let earlier = 0; earlier < depth; earlier++) {
        const one = taken[earlier]!;
        const lines = triples[(one * count + at) * count + other];
        if (lines === undefined) continue;
        const begin = place[one]! * lines.first + place[at]! * lines.second;
        plus(row, lines.data, begin, lines.step, size[other]!);
      }
      if (used && placeOf[other]![design]! >= 0) rows[row + placeOf[other]![design]!] = -Infinity;
    }
    for (const other of rules[at]!.notBelow)
      if (other >= 0 && place[other] === -1)
        bar(to + other * width, designs[other]!, (one) => one < design);
    for (const other of rules[at]!.notAbove)
      if (other >= 0 && place[other] === -1)
        bar(to + other * width, designs[other]!, (one) => one > design);
  };
  const bar = (row: number, list: Int32Array, barred: (design: number) => boolean): void => {
    for (let i = 0; i < list.length; i++) if (barred(list[i]!)) rows[row + i] = -Infinity;
  };
  /** Slots with fewer hopeful designs first, and of these the one whose designs differ most. */
  const nextSlot = (depth: number, openSlots: number, sum: number): number => {
    let best = -1;
    let fewest = Infinity;
    let steepest = -1;
    for (let i = 0; i < openSlots; i++) {
      const at = open[depth * count + i]!;
      const row = depth * level + at * width;
      const top = most[depth * count + at]!;
      const needed = least + HAIR - sum + top;
      let hopeful = 0;
      let fall = 0;
      for (let cell = row; cell < row + size[at]!; cell++) {
        if (rows[cell]! <= needed) continue;
        hopeful++;
        fall += top - rows[cell]!;
      }
      if (hopeful < fewest || (hopeful === fewest && fall > steepest)) {
        best = at;
        fewest = hopeful;
        steepest = fall;
      }
    }
    return best;
  };
  /** Lists the designs of a slot above `needed`, the best first; gives their number. */
  const lineUp = (depth: number, at: number, needed: number): number => {
    const row = depth * level + at * width;
    const start = depth * width;
    let length = 0;
    for (let i = 0; i < size[at]!; i++) {
      const value = rows[row + i]!;
      if (value <= needed) continue;
      let hole = length++;
      for (; hole > 0 && rows[row + order[start + hole - 1]!]! < value; hole--)
        order[start + hole] = order[start + hole - 1]!;
      order[start + hole] = i;
    }
    return length;
  };
  const visit = (depth: number, worth: number, openSlots: number): number => {
    task.steps++;
    if (openSlots === 0) {
      task.pool.offer(settled);
      least = task.pool.least();
      return -Infinity;
    }
    if (task.steps >= end || task.spent()) stopped = true;
    let sum = worth;
    for (let i = 0; i < openSlots; i++) {
      const at = open[depth * count + i]!;
      const row = depth * level + at * width;
      let top = -Infinity;
      for (let cell = row; cell < row + size[at]!; cell++) if (rows[cell]! > top) top = rows[cell]!;
      most[depth * count + at] = top;
      sum += top;
    }
    if (sum <= least + HAIR) return -Infinity;
    if (stopped) return sum;
    const at = nextSlot(depth, openSlots, sum);
    const others = sum - most[depth * count + at]!;
    const length = lineUp(depth, at, least + HAIR - others);
    let unsearched = -Infinity;
    for (let i = 0; i < length; i++) {
      const chosen = order[depth * width + i]!;
      const own = rows[depth * level + at * width + chosen]!;
      if (others + own <= least + HAIR) break;
      if (halted()) return Math.max(unsearched, others + own);
      const lost = take(depth, at, chosen);
      if (others + own + lost > least + HAIR) {
        goDown(depth, at, openSlots);
        unsearched = Math.max(unsearched, visit(depth + 1, worth + own + lost, openSlots - 1));
      }
      giveBack(at);
    }
    return unsearched;
  };

  for (let at = 0; at < count; at++) {
    open[at] = at;
    rows.set(relaxation.unary[at]!, at * width);
  }
  return (budget, first) => {
    end = task.steps + budget;
    least = task.pool.least();
    stopped = false;
    const own = relaxation.unary[first.at]![first.place]!;
    const lost = take(0, first.at, first.place);
    goDown(0, first.at, count);
    const unsearched = visit(1, relaxation.constant + own + lost, count - 1);
    giveBack(first.at);
    return unsearched;
  };
}

function placesOf(designs: readonly Int32Array[], kinds: number): Int32Array[] {
  return designs.map((list) => {
    const places = new Int32Array(kinds).fill(-1);
    list.forEach((design, place) => (places[design] = place));
    return places;
  });
}
