import type { Part } from './card-model.ts';
import { cutDown, undominated } from './network/dominated.ts';
import { decode, maximiseOut } from './network/eliminate.ts';
import { valueAt } from './network/factor.ts';
import type { Factor } from './network/factor.ts';
import { stockStates } from './stock-states.ts';
import type { StockStates } from './stock-states.ts';

/** A card's score without the options that something else always beats. */
export interface Slim {
  readonly papers: readonly number[];
  readonly stock: readonly number[];
  /** Numbers of the options of each part that are left. */
  readonly kept: readonly (readonly number[])[];
  /** Over the options that are left. */
  readonly factors: readonly Factor[];
}

/**
 * Leaves out the cardstock and the sides that something else always beats. A side is only compared with
 * the other side of its design. Papers stand in the order of their slots.
 */
export function withoutDominated(parts: readonly Part[], whole: readonly Factor[]): Slim {
  let factors = [...whole];
  const kept = parts.map((part, at) => {
    const designOf = (option: number): number => {
      const one = part.options[option]!;
      return one.kind === 'paper' ? one.design : -1;
    };
    const left = undominated(
      factors,
      at,
      part.options.length,
      (a, b) => designOf(a) === designOf(b),
    );
    factors = factors.map((factor) => cutDown(factor, at, left));
    return left;
  });
  const numbers = parts.map((_, at) => at);
  return {
    papers: numbers
      .filter((at) => parts[at]!.slot !== null)
      .sort((a, b) => parts[a]!.slot! - parts[b]!.slot!),
    stock: numbers.filter((at) => parts[at]!.slot === null),
    kept,
    factors,
  };
}

/** Maximises out the cardstock that touches one paper at most; joins the rest into states. */
export function statesOf(slim: Slim): StockStates {
  const sizeOf = (part: number): number => slim.kept[part]!.length;
  let factors = slim.factors;
  const stock: number[] = [];
  for (const part of slim.stock) {
    const near = factors.filter((factor) => factor.scope.includes(part));
    const papers = new Set(
      near.flatMap((factor) => factor.scope.filter((other) => slim.papers.includes(other))),
    );
    if (papers.size <= 1) ({ factors } = maximiseOut(factors, [part], sizeOf));
    else stock.push(part);
  }
  return stockStates(factors, slim.papers, stock, sizeOf);
}

/** For each design the places, among the kept options, of those that show it. */
export function optionsByDesign(part: Part, kept: readonly number[], designs: number): number[][] {
  const shows = Array.from({ length: designs }, (): number[] => []);
  kept.forEach((option, place) => {
    const chosen = part.options[option]!;
    if (chosen.kind === 'paper') shows[chosen.design]!.push(place);
  });
  return shows;
}

/** The best sides for given designs, by trying all; cardstock maximised out exactly for each. */
export function bestOptions(
  parts: readonly Part[],
  slim: Slim,
  designs: readonly number[],
): number[] {
  const choice = parts.map(() => 0);
  let best = [...choice];
  let most = -Infinity;
  const fixed: number[] = parts.map(() => -1);
  const tryOut = (at: number): void => {
    if (at === slim.papers.length) {
      const narrow = slim.papers.reduce<readonly Factor[]>(
        (factors, part) => factors.map((factor) => cutDown(factor, part, [fixed[part]!])),
        slim.factors,
      );
      const { factors, buckets } = maximiseOut(
        narrow,
        slim.stock,
        (part) => slim.kept[part]!.length,
      );
      const zero = parts.map(() => 0);
      const sum = factors.reduce((total, factor) => total + valueAt(factor, zero), 0);
      if (sum <= most) return;
      most = sum;
      decode(buckets, zero);
      best = zero.map((value, part) => (fixed[part] === -1 ? value : fixed[part]!));
      return;
    }
    const part = slim.papers[at]!;
    slim.kept[part]!.forEach((number, place) => {
      const option = parts[part]!.options[number]!;
      if (option.kind !== 'paper' || option.design !== designs[parts[part]!.slot!]) return;
      fixed[part] = place;
      tryOut(at + 1);
    });
  };
  tryOut(0);
  return best.map((place, part) => slim.kept[part]![place]!);
}
