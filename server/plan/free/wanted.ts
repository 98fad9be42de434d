import type { FreeCard, FreeWorld } from './free-world.ts';
import { walkRows } from './rows.ts';

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

interface Bought {
  readonly cell: number;
  /** Its worth after paying for the paper. */
  readonly gain: number;
}

function wantedBy(
  { table, tops }: FreeCard,
  area: readonly number[],
  price: Float64Array,
  designs: number,
  most: number,
): Wanted {
  const bought = foremost(most);
  if (area.length === 0) bought.offer({ cell: 0, gain: table[0]! });
  else {
    const last = area.at(-1)!;
    walkRows(area, price, (row, paid) => {
      if (tops[row]! - paid <= bought.level()) return;
      for (let design = 0, cell = row * designs; design < designs; design++, cell++)
        bought.offer({ cell, gain: table[cell]! - paid - last * price[design]! });
    });
  }
  const cells = bought.all().map(({ cell }) => cell);
  return {
    cells: cells.map((cell) => designsOf(cell, area.length, designs)),
    worth: cells.map((cell) => table[cell]!),
  };
}

/** Keeps the best of what is offered, so many; of equals those that were offered first. */
function foremost(most: number): {
  offer(one: Bought): void;
  /** What is worth no more than this is not kept. */
  level(): number;
  all(): readonly Bought[];
} {
  let kept: Bought[] = [];
  let level = -Infinity;
  const sift = (): Bought[] => {
    kept = kept.sort((p, q) => q.gain - p.gain || p.cell - q.cell).slice(0, most);
    if (kept.length === most) level = kept.at(-1)!.gain;
    return kept;
  };
  return {
    offer: (one) => {
      if (one.gain <= level) return;
      kept.push(one);
      if (kept.length >= 2 * most) sift();
    },
    level: () => level,
    all: sift,
  };
}

function designsOf(cell: number, papers: number, designs: number): number[] {
  const choice = new Array<number>(papers);
  for (let at = papers - 1, rest = cell; at >= 0; at--) {
    choice[at] = rest % designs;
    rest = Math.floor(rest / designs);
  }
  return choice;
}
