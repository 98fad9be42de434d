import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkPlan } from '../../server/plan/check.ts';
import { valueAt } from '../../server/plan/network/factor.ts';
import type { Factor } from '../../server/plan/network/factor.ts';
import { chance } from '../../server/plan/network/local-search.ts';
import { worth } from '../../server/plan/network/network.ts';
import type { Network, Wide } from '../../server/plan/network/network.ts';
import { settle } from '../../server/plan/network/narrowed.ts';
import { relaxationOf } from '../../server/plan/network/relaxation.ts';
import type { Relaxation } from '../../server/plan/network/relaxation.ts';
import { solve } from '../../server/plan/network/solve.ts';
import { settledForm, symmetriesOf } from '../../server/plan/network/symmetry.ts';
import { tighten } from '../../server/plan/network/tighten.ts';
import { planCards } from '../../server/plan/plan-cards.ts';
import { randomWorld } from './worlds.ts';

const ENOUGH = { steps: 1e7 };
const seeds = fc.integer({ min: 1, max: 1e6 });
const few = { numRuns: 25, seed: 7 };

/** Networks of any shape: tables over one to four slots, copies that may run short, slots that refuse designs. */
const networks = fc
  .record({
    slots: fc.integer({ min: 1, max: 5 }),
    designs: fc.integer({ min: 2, max: 5 }),
    tables: fc.integer({ min: 1, max: 6 }),
  })
  .chain(({ slots, designs, tables }) => {
    const scope = fc
      .uniqueArray(fc.integer({ min: 0, max: slots - 1 }), { minLength: 1, maxLength: 4 })
      .map((list) => list.sort((a, b) => a - b));
    const factor = fc
      .record({ scope, seed: fc.integer({ min: 1, max: 1e6 }) })
      .map((one) => tableOfChance(one.scope, designs, one.seed));
    const every = Array.from({ length: designs }, (_, at) => at);
    return fc
      .record({
        allowed: fc.array(fc.subarray(every, { minLength: 1 }), {
          minLength: slots,
          maxLength: slots,
        }),
        copies: fc.array(fc.integer({ min: 1, max: 3 }), {
          minLength: designs,
          maxLength: designs,
        }),
        all: fc.array(factor, { minLength: tables, maxLength: tables }),
      })
      .map(({ allowed, copies, all }): Network => ({
        allowed,
        copies,
        factors: all.filter((one) => one.scope.length <= 3),
        wides: all.filter((one) => one.scope.length > 3).map(wideOf),
      }));
  });

/** Worth in [0, 1] without steps, so that the second best is close behind the best. */
function tableOfChance(scope: readonly number[], designs: number, seed: number): Factor {
  const random = chance(seed);
  const data = Float64Array.from({ length: designs ** scope.length }, () => random());
  return { scope, sizes: scope.map(() => designs), data };
}

/** A table over four slots as a card of many papers: an equal part of its best bounds each two slots, or three. */
function wideOf(whole: Factor): Wide {
  const { scope, data } = whole;
  const places = [...scope.keys()];
  const twos = places.flatMap((a) => places.filter((b) => b > a).map((b) => [a, b]));
  const threes = places.map((out) => places.filter((at) => at !== out));
  return {
    scope,
    upper: twos.map((two) => sharedOut(whole, two, twos.length)),
    closer: () => threes.map((three) => sharedOut(whole, three, threes.length)),
    card: whole,
    at: (choice) => valueAt(whole, choice),
    exact: () => data,
  };
}

/** The best of a table for the designs of some of its slots, divided by so many. */
function sharedOut({ scope, sizes, data }: Factor, among: readonly number[], by: number): Factor {
  const width = sizes[0]!;
  const best = new Float64Array(width ** among.length).fill(-Infinity);
  data.forEach((value, cell) => {
    const digit = (at: number): number =>
      Math.floor(cell / width ** (scope.length - 1 - at)) % width;
    const to = among.reduce((sum, at) => sum * width + digit(at), 0);
    best[to] = Math.max(best[to]!, value / by);
  });
  return { scope: among.map((at) => scope[at]!), sizes: among.map(() => width), data: best };
}

/** The worth of every possible choice, the best first; or only of those in settled form. */
function allWorths(network: Network, symmetries: readonly (readonly number[])[] = []): number[] {
  const values: number[] = [];
  const left = [...network.copies];
  const fill = (choice: readonly number[]): void => {
    if (choice.length === network.allowed.length) {
      const form = settledForm(symmetries, choice);
      if (form.every((design, slot) => design === choice[slot]))
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
        const values = allWorths(network, symmetriesOf(network));
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

test('pairs of slots that share nothing but the sheets: the best of all pairings, counted set by set', () => {
  const count = 12;
  const every = Array.from({ length: count }, (_, at) => at);
  for (const seed of [3, 4]) {
    const factors = [0, 2, 4, 6, 8, 10].map((a) => tableOfChance([a, a + 1], count, seed));
    const network = {
      allowed: every.map(() => every),
      copies: every.map(() => 1),
      factors,
      wides: [],
    };
    const best = new Float64Array(2 ** count).fill(-Infinity);
    best[0] = 0;
    for (let used = 0; used < best.length; used++) {
      const taken = every.filter((design) => (used >> design) & 1);
      const table = factors[taken.length / 2];
      if (table === undefined || best[used] === -Infinity) continue;
      const free = every.filter((design) => !taken.includes(design));
      for (const a of free)
        for (const b of free)
          if (a !== b) {
            const set = used | (1 << a) | (1 << b);
            best[set] = Math.max(best[set]!, best[used]! + table.data[a * count + b]!);
          }
    }
    const solution = solve(network, [], 1, ENOUGH);
    expect(solution.proven).toBe(true);
    expect(solution.value).toBeCloseTo(best.at(-1)!, 9);
    expect(new Set(solution.choice).size).toBe(count);
  }
});

describe('slots that are alike', () => {
  const one = tableOfChance([0, 1], 4, 11);
  const turned = Float64Array.from(one.data, (_, cell) => one.data[(cell % 4) * 4 + (cell >> 2)]!);
  const network: Network = {
    allowed: [0, 1, 2, 3].map(() => [0, 1, 2, 3]),
    copies: [1, 1, 1, 1],
    factors: [one, { ...one, scope: [2, 3], data: turned }],
    wides: [],
  };

  test('are found, also where the tables name them the other way round', () => {
    expect(symmetriesOf(network)).toContainEqual([3, 2, 1, 0]);
    const other = { ...network, factors: [one, { ...tableOfChance([2, 3], 4, 12) }] };
    expect(symmetriesOf(other)).toEqual([]);
  });

  test('exchanged, they leave the worth of every choice as it is', () => {
    fc.assert(
      fc.property(networks, (any) => {
        const { choice } = solve({ ...any, wides: [] }, [], 1, ENOUGH);
        if (choice === null) return;
        for (const swap of symmetriesOf({ ...any, wides: [] }))
          expect(
            worth(
              { ...any, wides: [] },
              swap.map((slot) => choice[slot]!),
            ),
          ).toBeCloseTo(worth({ ...any, wides: [] }, choice), 9);
      }),
      { numRuns: 200, seed: 9 },
    );
  });

  test('make no second best plan of the best', () => {
    const { best } = solve(network, [], 1, ENOUGH, 2);
    expect(best[1]!.value).toBeLessThan(best[0]!.value - 1e-6);
  });
});

describe('tightening', () => {
  const dense = fc.integer({ min: 1, max: 1e6 }).map((seed): Network => {
    const slots = [0, 1, 2, 3, 4];
    const triples = slots.flatMap((a) =>
      slots
        .slice(a + 1)
        .flatMap((b) =>
          slots.slice(b + 1).map((c) => tableOfChance([a, b, c], 5, seed + 25 * a + 5 * b + c)),
        ),
    );
    return {
      allowed: slots.map(() => slots),
      copies: slots.map((slot) => 1 + (slot % 2)),
      factors: triples,
      wides: [],
    };
  });

  test('never bounds below the best, never drops a design of it, and comes closer with every round', () => {
    fc.assert(
      fc.property(dense, (network) => {
        const best = allWorths(network)[0]!;
        const { choice } = solve(network, [], 1, ENOUGH);
        const bounds = [1, 4, 60].map((rounds) => {
          const tight = tighten(relaxationOf(network), best - 1e-6, rounds);
          tight.relaxation.designs.forEach((designs, slot) =>
            expect([...designs]).toContain(choice![slot]),
          );
          return tight.bound;
        });
        expect(bounds[2]).toBeGreaterThanOrEqual(best - 1e-9);
        expect(bounds[1]).toBeLessThanOrEqual(bounds[0]! + 1e-9);
        expect(bounds[2]).toBeLessThanOrEqual(bounds[1]! + 1e-9);
        expect(bounds[2]! - best).toBeLessThan(0.8 * (bounds[0]! - best) + 1e-9);
      }),
      { numRuns: 60, seed: 6 },
    );
  });
});

describe('a relaxation', () => {
  /** The worth of a choice as the tables of a relaxation have it. */
  const worthIn = (relaxation: Relaxation, choice: readonly number[]): number => {
    const { slots, designs, unary, pairs, triples, prices, copies } = relaxation;
    const place = slots.map((slot, at) => designs[at]!.indexOf(choice[slot]!));
    const width = designs.map((list) => list.length);
    let sum = relaxation.constant;
    copies.forEach((count, design) => (sum -= count * prices[design]!));
    slots.forEach((slot, at) => (sum += unary[at]![place[at]!]! + prices[choice[slot]!]!));
    for (const { a, b, data } of pairs) sum += data[place[a]! * width[b]! + place[b]!]!;
    for (const { a, b, c, data, passed } of triples) {
      const [ab, ac, bc] = passed;
      const [x, y, z] = [place[a]!, place[b]!, place[c]!];
      sum += data[(x * width[b]! + y) * width[c]! + z]!;
      sum -= ab[x * width[b]! + y]! + ac[x * width[c]! + z]! + bc[y * width[c]! + z]!;
    }
    return sum;
  };

  test('keeps the worth of a choice when it is tightened, cut down and settled slot by slot', () => {
    fc.assert(
      fc.property(networks, (network) => {
        const { choice } = solve({ ...network, wides: [] }, [], 1, ENOUGH);
        if (choice === null) return;
        const value = worth({ ...network, wides: [] }, choice);
        let now = relaxationOf({ ...network, wides: [] });
        expect(worthIn(now, choice)).toBeCloseTo(value, 9);
        while (now.slots.length > 0) {
          now = tighten(now, value - 1e-3, 3).relaxation;
          expect(worthIn(now, choice)).toBeCloseTo(value, 9);
          const at = now.slots.length >> 1;
          const design = choice[now.slots[at]!]!;
          const kept = now.designs.map((list) =>
            Int32Array.from(
              [...list.keys()].filter((one) => list[one] !== design || now.copies[design]! > 1),
            ),
          );
          now = settle(now, at, now.designs[at]!.indexOf(design), kept);
          expect(worthIn(now, choice)).toBeCloseTo(value, 9);
        }
        expect([...now.settled]).toEqual([...choice]);
      }),
      { numRuns: 150, seed: 8 },
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
