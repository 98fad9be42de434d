import { chance } from '../network/local-search.ts';
import type { Limit } from '../network/network.ts';
import type { FreeWorld } from './free-world.ts';
import type { Wanted } from './wanted.ts';

/** Which lots are cut from which sheet: one entry for each sheet that is used. */
export interface Deal {
  readonly sheets: readonly { readonly design: number; readonly lots: readonly number[] }[];
  readonly value: number;
}

/**
 * Deals papers to the cards, each card as near to its wishes as what is left on the sheets allows; then takes
 * back a few cards again and again and deals them anew, and keeps what is better.
 *
 * Takes       the world, what each card wants, a seed, a limit (`steps`: how often cards are taken back), and a deal
 *             to start from, if there is one.
 * Gives       the best deal found, every sheet of it proven to hold what it must; null when not every card could
 *             be dealt.
 * Method      ruin and recreate with a falling threshold. Schrimpf et al. (2000), J. Comput. Phys. 159, 139-171,
 *             doi:10.1006/jcph.1999.6413.
 */
export function deal(
  world: FreeWorld,
  wanted: readonly Wanted[],
  seed: number,
  limit: Limit,
  start: Deal | null = null,
): Deal | null {
  const random = chance(seed);
  const table = new Table(world, wanted);
  if (start === null) for (const card of byNeed(world)) table.give(card);
  else {
    table.lay(start);
    for (const card of byNeed(world)) if (!table.has(card)) table.give(card);
  }
  let best: Deal | null = null;
  let bestScore = -Infinity;
  const most = 'steps' in limit ? limit.steps : Infinity;
  for (let step = 0; step < most; step++) {
    if (table.score > bestScore + 1e-9) {
      bestScore = table.score;
      if (table.complete) best = table.asDeal();
    }
    if ('until' in limit && step % 32 === 0 && limit.until()) break;
    const before = table.score;
    const part = 'steps' in limit ? step / most : (step % 4000) / 4000;
    const taken = chosen(world, table, random);
    const was = taken.map((card) => table.take(card));
    for (const card of shuffled(taken, random)) table.give(card);
    const slack = SLACK * (1 - part) ** 2 * random();
    if (table.score >= before - slack) continue;
    for (const card of taken) table.take(card);
    taken.forEach((card, at) => table.putBack(card, was[at]!));
  }
  return best;
}

/** A new deal may be worth this much less at first. */
const SLACK = 0.06;

/** Cards that ask for much paper are dealt first. */
function byNeed({ cards, area }: FreeWorld): number[] {
  const need = cards.map(({ lots }) => lots.reduce((sum, lot) => sum + area[lot]!, 0));
  return [...cards.keys()].sort((p, q) => need[q]! - need[p]!);
}

/** One to four cards at random, or all that have a piece of one sheet. */
function chosen({ cards }: FreeWorld, table: Table, random: () => number): number[] {
  if (random() < 0.3) {
    const together = table.onOneSheet(random());
    if (together.length > 0 && together.length <= 6) return together;
  }
  const count = 1 + Math.floor(4 * random() * random());
  const found = new Set<number>();
  while (found.size < Math.min(count, cards.length)) found.add(Math.floor(random() * cards.length));
  return [...found];
}

function shuffled(list: readonly number[], random: () => number): number[] {
  const out = [...list];
  for (let at = out.length - 1; at > 0; at--) {
    const other = Math.floor(random() * (at + 1));
    [out[at], out[other]] = [out[other]!, out[at]!];
  }
  return out;
}

/** Where a card's lots lie, and what the card is worth so; null when it could not be dealt. */
type Place = { readonly sheets: readonly number[]; readonly worth: number } | null;

/** The sheets on the table with the lots dealt to them. */
class Table {
  score = 0;
  readonly #world: FreeWorld;
  readonly #wanted: readonly Wanted[];
  readonly #design: number[];
  readonly #lots: number[][];
  readonly #fill: number[];
  readonly #ofDesign: number[][];
  readonly #places: Place[];
  #open = 0;

  constructor(world: FreeWorld, wanted: readonly Wanted[]) {
    this.#world = world;
    this.#wanted = wanted;
    this.#design = world.copies.flatMap((count, design) => new Array<number>(count).fill(design));
    this.#lots = this.#design.map(() => []);
    this.#fill = this.#design.map(() => 0);
    this.#ofDesign = world.copies.map((_, design) =>
      [...this.#design.keys()].filter((sheet) => this.#design[sheet] === design),
    );
    this.#places = world.cards.map(() => null);
    this.score = -UNDEALT * world.cards.length;
  }

  get complete(): boolean {
    return this.#places.every((place) => place !== null);
  }

  has(card: number): boolean {
    return this.#places[card] !== null;
  }

  /** Deals a card the most wanted choice that can be cut. */
  give(card: number): void {
    const { cells, worth } = this.#wanted[card]!;
    for (let at = 0; at < cells.length; at++) {
      const sheets = this.#sheetsFor(card, cells[at]!);
      if (sheets === null) continue;
      this.putBack(card, { sheets, worth: worth[at]! });
      return;
    }
    this.putBack(card, this.#anywhere(card));
  }

  /** Lays out a deal on the empty table, but for sheets on which a print would have to lie. */
  lay({ sheets }: Deal): void {
    const { room, upright } = this.#world;
    const free = this.#ofDesign.map((own) => [...own]);
    const sheetOf = new Map<number, number>();
    for (const { design, lots } of sheets) {
      const sheet = free[design]!.shift()!;
      if (!room.fits(lots, upright[design]!)) continue;
      for (const lot of lots) sheetOf.set(lot, sheet);
    }
    this.#world.cards.forEach(({ lots, table }, card) => {
      if (lots.some((lot) => !sheetOf.has(lot))) return;
      const own = lots.map((lot) => sheetOf.get(lot)!);
      const cell = own.reduce((at, sheet) => at * free.length + this.#design[sheet]!, 0);
      if (table[cell]! > -Infinity) this.putBack(card, { sheets: own, worth: table[cell]! });
    });
  }

  take(card: number): Place {
    const place = this.#places[card] ?? null;
    if (place === null) return null;
    this.#world.cards[card]!.lots.forEach((lot, at) => this.#lift(lot, place.sheets[at]!));
    this.#places[card] = null;
    this.score -= place.worth + UNDEALT;
    return place;
  }

  putBack(card: number, place: Place): void {
    if (place === null) return;
    this.#world.cards[card]!.lots.forEach((lot, at) => this.#lay(lot, place.sheets[at]!));
    this.#places[card] = place;
    this.score += place.worth + UNDEALT;
  }

  /** The cards with a piece of one of the sheets in use; `where` in [0, 1) chooses it. */
  onOneSheet(where: number): number[] {
    const used = [...this.#lots.keys()].filter((sheet) => this.#lots[sheet]!.length > 0);
    const sheet = used[Math.floor(where * used.length)];
    if (sheet === undefined) return [];
    return [...this.#places.keys()].filter((card) => this.#places[card]?.sheets.includes(sheet));
  }

  asDeal(): Deal {
    const sheets = this.#lots.flatMap((lots, sheet) =>
      lots.length === 0 ? [] : [{ design: this.#design[sheet]!, lots: [...lots] }],
    );
    return { sheets, value: this.#places.reduce((sum, place) => sum + place!.worth, 0) };
  }

  /** The best place among all sheets that have room, wanted or not; null when there is none. */
  #anywhere(card: number): Place {
    const { cards, copies, most } = this.#world;
    const { lots, table } = cards[card]!;
    const roomy = lots.map((lot) =>
      this.#firstOfEach((sheet) => this.#holds(sheet, lot)).sort(
        (p, q) => this.#lots[q]!.length - this.#lots[p]!.length,
      ),
    );
    let best: Place = null;
    const sheets: number[] = [];
    const tryOut = (at: number, cell: number, opened: number): void => {
      if (at === lots.length) {
        const worth = table[cell]!;
        if (worth > (best?.worth ?? -Infinity)) best = { sheets: [...sheets], worth };
        return;
      }
      for (const sheet of roomy[at]!) {
        const fresh = this.#lots[sheet]!.length === 0 ? 1 : 0;
        if (sheets.includes(sheet) || this.#open + opened + fresh > most) continue;
        sheets.push(sheet);
        tryOut(at + 1, cell * copies.length + this.#design[sheet]!, opened + fresh);
        sheets.pop();
      }
    };
    tryOut(0, 0, 0);
    return best;
  }

  /** Sheets of which something is true; of those that are empty one of each design is enough. */
  #firstOfEach(isTrue: (sheet: number) => boolean): number[] {
    return this.#ofDesign.flatMap((own) => {
      const used = own.filter((sheet) => this.#lots[sheet]!.length > 0);
      const fresh = own.find((sheet) => this.#lots[sheet]!.length === 0);
      return [...used, ...(fresh === undefined ? [] : [fresh])].filter(isTrue);
    });
  }

  /** A sheet for each lot of a card that takes these designs; null when one has no room. */
  #sheetsFor(card: number, designs: readonly number[]): number[] | null {
    const { lots } = this.#world.cards[card]!;
    const sheets: number[] = [];
    let opened = 0;
    for (let at = 0; at < lots.length; at++) {
      const sheet = this.#ofDesign[designs[at]!]!.find(
        (one) =>
          !sheets.includes(one) &&
          (this.#lots[one]!.length > 0 || this.#open + opened < this.#world.most) &&
          this.#holds(one, lots[at]!),
      );
      if (sheet === undefined) return null;
      if (this.#lots[sheet]!.length === 0) opened++;
      sheets.push(sheet);
    }
    return sheets;
  }

  #holds(sheet: number, lot: number): boolean {
    const { area, room, upright } = this.#world;
    if (this.#fill[sheet]! + area[lot]! > 1 + 1e-9) return false;
    return room.fits([...this.#lots[sheet]!, lot], upright[this.#design[sheet]!]!);
  }

  #lay(lot: number, sheet: number): void {
    if (this.#lots[sheet]!.length === 0) this.#open++;
    this.#lots[sheet]!.push(lot);
    this.#fill[sheet]! += this.#world.area[lot]!;
  }

  #lift(lot: number, sheet: number): void {
    const lots = this.#lots[sheet]!;
    lots.splice(lots.indexOf(lot), 1);
    this.#fill[sheet]! -= this.#world.area[lot]!;
    if (lots.length === 0) this.#open--;
  }
}

/** A card that is not dealt weighs more than any worth. */
const UNDEALT = 4;
