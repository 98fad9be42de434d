import type { FreeCard, FreeWorld } from './free-world.ts';

/** Choices of designs for one card, the most wanted at given prices first. */
export interface Wanted {
  readonly cells: readonly (readonly number[])[];
  readonly worth: readonly number[];
}

/** The choices that each card wants most at these prices; so many for each card. */
export function wantedAt(world: FreeWorld, price: Float64Array, most: number): Wanted[] {
  const designs = world.copies.length;
  const known = new Map<string, Wanted>();
  return world.cards.map((card) => {
    const area = card.lots.map((lot) => world.area[lot]!);
    const key = `${tableNumber(world, card)} ${area.join(' ')}`;
    const found = known.get(key) ?? wantedBy(card, area, price, designs, most);
    known.set(key, found);
    return found;
  });
}

function tableNumber({ cards }: FreeWorld, { table }: FreeCard): number {
  return cards.findIndex((card) => card.table === table);
}

function wantedBy(
  { table }: FreeCard,
  area: readonly number[],
  price: Float64Array,
  designs: number,
  most: number,
): Wanted {
  const gain = table.map((worth, cell) => {
    let paid = 0;
    for (let at = area.length - 1, rest = cell; at >= 0; at--) {
      paid += area[at]! * price[rest % designs]!;
      rest = Math.floor(rest / designs);
    }
    return worth - paid;
  });
  const level = levelOf(gain, most);
  const cells: number[] = [];
  gain.forEach((value, cell) => {
    if (value >= level && value > -Infinity) cells.push(cell);
  });
  cells.sort((p, q) => gain[q]! - gain[p]!);
  return {
    cells: cells.slice(0, most).map((cell) => designsOf(cell, area.length, designs)),
    worth: cells.slice(0, most).map((cell) => table[cell]!),
  };
}

/** A value that about `most` of the gains reach. */
function levelOf(gain: Float64Array, most: number): number {
  if (gain.length <= most) return -Infinity;
  const sorted = gain.slice().sort();
  return sorted[sorted.length - most]!;
}

function designsOf(cell: number, papers: number, designs: number): number[] {
  const choice = new Array<number>(papers);
  for (let at = papers - 1, rest = cell; at >= 0; at--) {
    choice[at] = rest % designs;
    rest = Math.floor(rest / designs);
  }
  return choice;
}
