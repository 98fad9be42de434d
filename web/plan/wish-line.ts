import type { Plan } from '../../server/contract/plans.ts';

/** Something that she wishes of the plan on the table. */
export interface Wished {
  /** Has the plan that it makes of the one on the table. */
  readonly make: (from: Plan) => Promise<Plan>;
}

/** What the line knows of the table, and what it tells it. */
export interface Table<W extends Wished> {
  readonly shown: () => Plan;
  readonly arrived: (made: Plan, from: Plan, wish: W) => void;
  readonly refused: (fault: unknown) => void;
  /** All wishes that are under way or wait. */
  readonly waiting: (wishes: readonly W[]) => void;
}

/**
 * Wishes stand in line: each is planned from the plan that the one before has made. So two quick wishes are two
 * steps that can be taken back one by one, and no answer that comes late takes the place of a newer one.
 */
export class WishLine<W extends Wished> {
  readonly #table: Table<W>;
  #waiting: readonly W[] = [];
  #working = false;

  constructor(table: Table<W>) {
    this.#table = table;
  }

  wish(wish: W): void {
    this.#set([...this.#waiting, wish]);
    void this.#work();
  }

  /** Takes the last wish that is not planned yet back; false where none is. */
  takeBack(): boolean {
    if (this.#waiting.length === 0) return false;
    this.#set(this.#waiting.slice(0, -1));
    return true;
  }

  /** Takes all of them back: she has gone to another plan. */
  clear(): void {
    if (this.#waiting.length > 0) this.#set([]);
  }

  async #work(): Promise<void> {
    if (this.#working) return;
    this.#working = true;
    let from: Plan | null = null;
    for (let wish = this.#waiting[0]; wish !== undefined; wish = this.#waiting[0]) {
      from ??= this.#table.shown();
      try {
        const made = await wish.make(from);
        // Taken back meanwhile: the plan that it made can be had by redo, and is not shown by itself.
        if (this.#waiting[0] !== wish) {
          from = null;
          continue;
        }
        this.#table.arrived(made, from, wish);
        from = made;
      } catch (fault) {
        if (this.#waiting[0] !== wish) {
          from = null;
          continue;
        }
        this.#table.refused(fault);
      }
      this.#set(this.#waiting.slice(1));
    }
    this.#working = false;
  }

  #set(waiting: readonly W[]): void {
    this.#waiting = waiting;
    this.#table.waiting(waiting);
  }
}
