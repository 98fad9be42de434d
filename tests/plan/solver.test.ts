import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkPlan } from '../../server/plan/check.ts';
import { worth } from '../../server/plan/network/network.ts';
import type { Network } from '../../server/plan/network/network.ts';
import { solve } from '../../server/plan/network/solve.ts';
import { planCards } from '../../server/plan/plan-cards.ts';
import { randomWorld } from './worlds.ts';

const ENOUGH = { steps: 1e7 };
const seeds = fc.integer({ min: 1, max: 1e6 });
const few = { numRuns: 25, seed: 7 };

/** Networks of any shape: one to three slots a table, copies that may run short, slots that refuse designs. */
const networks = fc
  .record({
    slots: fc.integer({ min: 1, max: 5 }),
    designs: fc.integer({ min: 2, max: 5 }),
    tables: fc.integer({ min: 1, max: 6 }),
  })
  .chain(({ slots, designs, tables }) => {
    const scope = fc
      .uniqueArray(fc.integer({ min: 0, max: slots - 1 }), { minLength: 1, maxLength: 3 })
      .map((list) => list.sort((a, b) => a - b));
    const factor = scope.chain((list) => {
      const cells = designs ** list.length;
      return fc
        .array(fc.integer({ min: 0, max: 40 }), { minLength: cells, maxLength: cells })
        .map((data) => ({
          scope: list,
          sizes: list.map(() => designs),
          data: Float64Array.from(data, (value) => value / 8),
        }));
    });
    const every = Array.from({ length: designs }, (_, at) => at);
    return fc.record({
      allowed: fc.array(fc.subarray(every, { minLength: 1 }), {
        minLength: slots,
        maxLength: slots,
      }),
      copies: fc.array(fc.integer({ min: 1, max: 3 }), { minLength: designs, maxLength: designs }),
      factors: fc.array(factor, { minLength: tables, maxLength: tables }),
      wides: fc.constant([]),
    });
  });

/** The worth of every possible choice, the best first. */
function allWorths(network: Network): number[] {
  const values: number[] = [];
  const left = [...network.copies];
  const fill = (choice: readonly number[]): void => {
    if (choice.length === network.allowed.length) {
      values.push(worth(network, choice));
      return;
    }
    for (const design of network.allowed[choice.length]!) {
      if (left[design] === 0) continue;
      left[design]!--;
      fill([...choice, design]);
      left[design]!++;
    }
  };
  fill([]);
  return values.sort((a, b) => b - a);
}

describe('the solver on networks of any shape', () => {
  test('finds the best of all choices, or says that there is none', () => {
    fc.assert(
      fc.property(networks, (network) => {
        const best = allWorths(network)[0];
        const solution = solve(network, [], 1, ENOUGH);
        if (best === undefined) return solution.choice === null;
        expect(solution.proven).toBe(true);
        expect(solution.value).toBeCloseTo(best, 9);
        expect(worth(network, solution.choice!)).toBeCloseTo(best, 9);
      }),
      { numRuns: 300, seed: 3 },
    );
  });

  test('cut short anywhere, the best of all choices lies between its value and its bound', () => {
    fc.assert(
      fc.property(networks, fc.integer({ min: 1, max: 12 }), (network, steps) => {
        const best = allWorths(network)[0];
        const solution = solve(network, [], 1, { steps });
        if (best === undefined) return;
        expect(solution.value).toBeLessThanOrEqual(best + 1e-9);
        expect(solution.bound).toBeGreaterThanOrEqual(best - 1e-9);
      }),
      { numRuns: 300, seed: 4 },
    );
  });

  test('keeps the three best choices when three are asked for', () => {
    fc.assert(
      fc.property(networks, (network) => {
        const values = allWorths(network);
        const { best } = solve(network, [], 1, ENOUGH, 3);
        expect(best.map(({ value }) => value.toFixed(9))).toEqual(
          values.slice(0, 3).map((value) => value.toFixed(9)),
        );
        expect(new Set(best.map(({ choice }) => choice.join(' '))).size).toBe(best.length);
      }),
      { numRuns: 150, seed: 5 },
    );
  });
});

describe('plans of worlds of chance', () => {
  const size = { designs: 7, copies: 1, slots: 4, cards: 5 };

  test('the checker agrees with every plan, whole or cut short', () => {
    fc.assert(
      fc.property(seeds, fc.integer({ min: 1, max: 40 }), (seed, steps) => {
        const world = randomWorld(seed, { ...size, copies: 1 + (seed % 2) });
        expect(checkPlan(world, planCards(world))).toEqual([]);
        const short = { ...world, limit: { steps } };
        expect(checkPlan(short, planCards(short))).toEqual([]);
      }),
      few,
    );
  });

  test('a pin never raises the value, and a second pin never raises it again', () => {
    fc.assert(
      fc.property(seeds, fc.nat(6), fc.nat(6), (seed, one, other) => {
        const world = randomWorld(seed, size);
        const paper = (card: number): string =>
          world.cards[card - 1]!.layout.layers.find(({ material }) => material === 'patterned')!.id;
        const first = { card: 1, layer: paper(1), sheet: `s${one}` };
        const second = { card: 2, layer: 'base', supply: other % 2 === 0 ? 'teal' : 'white' };
        const free = planCards(world).value;
        const pinned = planCards({ ...world, pins: [first] }).value;
        const both = planCards({ ...world, pins: [first, second] }).value;
        expect(pinned).toBeLessThanOrEqual(free + 1e-9);
        expect(both).toBeLessThanOrEqual(pinned + 1e-9);
      }),
      few,
    );
  });

  test('other names and another order of the sheets leave the value as it is', () => {
    fc.assert(
      fc.property(seeds, fc.integer({ min: 1, max: 6 }), (seed, turn) => {
        const world = randomWorld(seed, size);
        const { sheets } = world.pad;
        const moved = [...sheets.slice(turn), ...sheets.slice(0, turn)].map((one, at) => ({
          ...one,
          id: `moved ${at}`,
          label: `Moved ${at}`,
        }));
        const other = planCards({ ...world, pad: { ...world.pad, sheets: moved } });
        expect(other.value).toBeCloseTo(planCards(world).value, 9);
      }),
      few,
    );
  });

  test('a sheet more in the pad never lowers the value where no print lies', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const world = randomWorld(seed, size);
        const sheets = world.pad.sheets.map((sheet) => ({
          ...sheet,
          front: sheet.front && {
            ...sheet.front,
            pattern: { ...sheet.front.pattern, direction: 'none' as const },
          },
          back: sheet.back && {
            ...sheet.back,
            pattern: { ...sheet.back.pattern, direction: 'none' as const },
          },
        }));
        const whole = planCards({ ...world, pad: { ...world.pad, sheets } });
        const less = planCards({
          ...world,
          pad: { ...world.pad, sheets },
          without: ['s6'],
        });
        expect(whole.value).toBeGreaterThanOrEqual(less.value - 1e-9);
      }),
      few,
    );
  });
});
