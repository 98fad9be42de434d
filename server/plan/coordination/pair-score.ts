import type { Taste } from '../plan.ts';
import { TASTE_WEIGHT, TERM_FLOOR, TERM_WEIGHTS } from '../weights.ts';
import { contrast } from './contrast.ts';
import { grounds } from './grounds.ts';
import type { ColourTable, Look } from './look.ts';
import { busynessMix, directionMix, scaleMix } from './mix.ts';
import { misses, nearMissTerm } from './near-misses.ts';
import { sharedAccents, sharedColours } from './shared-accents.ts';
import { activity, boldness, liveliness } from './taste.ts';

export type TermName = keyof typeof TERM_WEIGHTS | 'lively' | 'busy' | 'bold';

/** One term of a pair's score, in [0, 1], with the weight it was given; the weights add up to 1. */
export interface Term {
  readonly name: TermName;
  readonly value: number;
  readonly weight: number;
}

/** The terms of two looks side by side; `touching` when they share a border on the card. */
export function termsOf(
  a: Look,
  b: Look,
  table: ColourTable,
  taste: Taste,
  touching: boolean,
): Term[] {
  const plain: [keyof typeof TERM_WEIGHTS, number][] = [
    ['accents', sharedAccents(sharedColours(a, b, table), a, b)],
    ['nearMisses', nearMissTerm(misses(a, b, table))],
    ['grounds', grounds(a, b, table)],
    ['contrast', touching ? contrast(a, b) : 1],
    ['scale', scaleMix(a, b)],
    ['busyness', busynessMix(a, b)],
    ['direction', directionMix(a, b)],
  ];
  const wishes: [TermName, number, number][] = [
    ['lively', taste.contrast, liveliness(a, b)],
    ['busy', taste.busy, activity(a, b)],
    ['bold', taste.bold, boldness(a, b)],
  ];
  const all = [
    ...plain.map(([name, value]) => ({
      name,
      value,
      weight: TERM_WEIGHTS[name],
    })),
    ...wishes
      .filter(([, wish]) => wish !== 0)
      .map(([name, wish, value]) => ({
        name,
        value: wish > 0 ? value : 1 - value,
        weight: Math.abs(wish) * TASTE_WEIGHT,
      })),
  ];
  const total = all.reduce((sum, term) => sum + term.weight, 0);
  return all.map((term) => ({ ...term, weight: term.weight / total }));
}

/**
 * The terms drawn together: their weighted geometric mean, in (0, 1]. A chain is as good as its weak
 * links, so one bad term cannot be bought back by many good ones.
 */
export function combine(terms: readonly Term[]): number {
  return Math.exp(
    terms.reduce((sum, term) => sum + term.weight * Math.log(Math.max(TERM_FLOOR, term.value)), 0),
  );
}

export function pairScore(
  a: Look,
  b: Look,
  table: ColourTable,
  taste: Taste,
  touching: boolean,
): number {
  return combine(termsOf(a, b, table, taste, touching));
}
