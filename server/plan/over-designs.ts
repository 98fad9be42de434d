import type { Part } from './card-model.ts';
import { advance, stepsAlong } from './network/eliminate.ts';
import { constantFactor } from './network/factor.ts';
import type { Factor } from './network/factor.ts';

/**
 * From functions over the options of a card's papers to one over the designs in its slots: for each
 * choice of designs the best sides. Choices that the pins forbid stay -Infinity.
 *
 * @param papers numbers of the parts that are cut from slots
 */
export function overDesigns(
  parts: readonly Part[],
  papers: readonly number[],
  factors: readonly Factor[],
  designs: number,
): Factor {
  const order = [...papers].sort((a, b) => parts[a]!.slot! - parts[b]!.slot!);
  const scope = order.map((part) => parts[part]!.slot!);
  if (new Set(scope).size < scope.length)
    throw new RangeError('Expected different papers of one card in different slots');
  const out = constantFactor(
    scope,
    scope.map(() => designs),
  );
  out.data.fill(-Infinity);
  const designOf = order.map((part) =>
    parts[part]!.options.map((option) => (option.kind === 'paper' ? option.design : -1)),
  );
  const sizes = order.map((part) => parts[part]!.options.length);
  if (sizes.some((size) => size === 0)) return out;
  const steps = factors.map((factor) => stepsAlong(factor, order));
  const offsets = new Array<number>(factors.length).fill(0);
  const digits = new Array<number>(order.length).fill(0);
  const cells = sizes.reduce((product, size) => product * size, 1);
  for (let count = 0; count < cells; count++) {
    let sum = 0;
    for (let at = 0; at < factors.length; at++) sum += factors[at]!.data[offsets[at]!]!;
    let cell = 0;
    for (let at = 0; at < order.length; at++) cell = cell * designs + designOf[at]![digits[at]!]!;
    if (sum > out.data[cell]!) out.data[cell] = sum;
    advance(digits, sizes, offsets, steps);
  }
  return out;
}
