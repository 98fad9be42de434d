import type { Chance } from '../chance.ts';

export type Direction = 'none' | 'two-way' | 'one-way';

/**
 * A print as it is drawn, without its colours: a tile in millimetres that repeats across and down.
 * `tile` gets the paint of each slot; slot 0 is the ground, already laid down.
 */
export interface Drawing {
  readonly name: string;
  /** How many colours it takes, the ground among them. */
  readonly slots: number;
  readonly direction: Direction;
  /** Side of the tile in millimetres: the smallest and the largest that look right. */
  readonly repeat: readonly [least: number, most: number];
  /** How many times it repeats within its tile along the way where it repeats soonest; 1 if not told. */
  readonly within?: number;
  tile(side: number, paint: readonly string[], chance: Chance): string;
}
