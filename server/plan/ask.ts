import type { CuttingScheme } from '../cutting/piece.ts';
import type { BatchCard } from '../cutting/pieces-of.ts';
import type { Pad } from '../pad/pad.ts';
import type { Supply } from '../supplies/supply.ts';
import type { Limit } from './network/network.ts';
import type { FacesUp, Pin, Taste } from './plan.ts';

/** All that a plan is made from. */
export interface PlanAsk {
  readonly pad: Pad;
  readonly cards: readonly BatchCard[];
  readonly scheme: CuttingScheme;
  readonly supplies: readonly Supply[];
  readonly pins: readonly Pin[];
  /** Ids of sheets that must not be used. */
  readonly without: readonly string[];
  readonly taste: Taste;
  readonly seed: number;
  readonly limit: Limit;
  /** Which face lies up while a slot is cut, by its id; the front where nothing is said. */
  readonly up?: FacesUp;
}
