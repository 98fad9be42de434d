import type { FreeWorld } from './free-world.ts';
import type { Wanted } from './wanted.ts';

/** Which lots are cut from which sheet: one entry for each sheet that is used. */
export interface Deal {
  readonly sheets: readonly { readonly design: number; readonly lots: readonly number[] }[];
  readonly value: number;
}

/** A card that is not dealt weighs more than any worth. */
const UNDEALT = 4;

/** Where a card's lots lie, and what the card is worth so; null when it could not be dealt. */
type Place = { readonly sheets: readonly number[]; readonly worth: number } | null;

/** The sheets on the table with the lots dealt to them. */
export class SheetsOnTable {
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
    const free = this.#ofDesign.map((own) => [...own]);
    const sheetOf = new Map<number, number>();
    for (const { design, lots } of sheets) {
      const sheet = free[design]!.shift()!;
      if (!this.#world.fits(lots, design)) continue;
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
    const { area, fits } = this.#world;
    if (this.#fill[sheet]! + area[lot]! > 1 + 1e-9) return false;
    return fits([...this.#lots[sheet]!, lot], this.#design[sheet]!);
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
