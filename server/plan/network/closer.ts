import { count } from './factor.ts';
import type { Network, Wide } from './network.ts';

/** A wide card is bounded by tables over three slots up to so many cells each; those of three slots always. */
const MOST_CELLS = 20_000;

/**
 * The network with its wide cards bounded by tables over three slots at a time: cards of three slots become tables of
 * their own, exact; cards of more keep a bound that is much closer than that of pairs.
 */
export function closerNetwork(network: Network): Network {
  return {
    ...network,
    factors: [
      ...network.factors,
      ...network.wides.filter(isThree).flatMap((wide) => wide.closer()),
    ],
    wides: network.wides
      .filter((wide) => !isThree(wide))
      .map((wide) => (mayBeCloser(wide) ? { ...wide, upper: wide.closer() } : wide)),
  };
}

/** How many cells the closer tables take in the making: cards that are alike share them. */
export function cellsOfCloser({ wides }: Network): number {
  const cards = new Map(wides.map((wide) => [wide.card, wide]));
  return [...cards.values()].reduce((sum, wide) => {
    const k = wide.scope.length;
    const tables = (k * (k - 1) * (k - 2)) / 6;
    return isThree(wide) || mayBeCloser(wide) ? sum + tables * cellsOfThree(wide) : sum;
  }, 0);
}

function isThree({ scope }: Wide): boolean {
  return scope.length === 3;
}

function mayBeCloser(wide: Wide): boolean {
  return cellsOfThree(wide) <= MOST_CELLS;
}

function cellsOfThree({ upper }: Wide): number {
  const [width = 0] = upper[0]?.sizes ?? [];
  return count([width, width, width]);
}
