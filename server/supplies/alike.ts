import { difference } from '../colour/difference.ts';
import type { Supply } from './supply.ts';
import { LIMITS } from './verdict.ts';

/**
 * Whether two supplies of one kind can hardly be told apart: the same card that was photographed twice, most likely.
 *
 * In one picture the light is shared, and what most eyes see is another colour; between two pictures, or where a
 * colour was typed, what half of the observers accept as the same. A glossy one is told from none.
 *
 * Source      see LIMITS.
 */
export function hardlyToldApart(one: Supply, other: Supply): boolean {
  if (one.kind !== other.kind || one.glossy === true || other.glossy === true) return false;
  const together = one.photo !== null && one.photo === other.photo;
  return difference(one.lab, other.lab) <= (together ? LIMITS.perceived : LIMITS.accepted);
}

/** A supply with one that was there before it. */
export interface Twins {
  readonly first: Supply;
  readonly again: Supply;
}

/**
 * The supplies that can hardly be told from one that was there before, each with the first of those.
 *
 * Takes       her supplies, in the order in which they came.
 */
export function twinsAmong(supplies: readonly Supply[]): Twins[] {
  const firsts: Supply[] = [];
  return supplies.flatMap((again) => {
    const first = firsts.find((one) => hardlyToldApart(one, again));
    if (first !== undefined) return [{ first, again }];
    firsts.push(again);
    return [];
  });
}
