import { describe, expect, test } from 'vitest';
import { checkScheme } from '../../server/cutting/check-scheme.ts';
import { piecesOf } from '../../server/cutting/pieces-of.ts';
import { usualSettings } from '../../server/cutting/settings.ts';
import { catalogue } from '../../server/layouts/catalogue.ts';
import { papersOf } from '../../server/layouts/papers-of.ts';
import { INCH, units } from '../../server/lengths/length.ts';
import type { Side } from '../../server/pad/pad.ts';
import { checkPlan } from '../../server/plan/check.ts';
import { buildWorld, freeWorld } from '../../server/plan/free/free-world.ts';
import type { FreeAsk, FreeWorld } from '../../server/plan/free/free-world.ts';
import { planFreely } from '../../server/plan/free/plan-freely.ts';
import { openCurve, sheetCurve } from '../../server/plan/free/sheet-curve.ts';
import type { FreePlan } from '../../server/plan/free/plan-freely.ts';
import { pricesFor } from '../../server/plan/free/prices.ts';
import { planCards } from '../../server/plan/plan-cards.ts';
import { cutScheme } from '../../server/cutting/cut-scheme.ts';
import { worldOf } from '../benchmark/plan-worlds.ts';

const SEEDS = [9101, 9102, 9103, 9104];
const STEPS = { steps: 400 };

describe('a plan with any piece from any sheet', () => {
  test.each(SEEDS)('holds on paper and keeps to its bound (world %i)', (seed) => {
    const ask = askOf(seed, { designs: 8, cards: 5 });
    const free = planFreely(ask);
    expect(faultsOf(ask, free)).toEqual([]);
    expect(free.plan.value).toBeLessThanOrEqual(free.plan.bound + 1e-9);
    expect(free.scheme.slots.length).toBeLessThanOrEqual(8);
  });

  test.each(SEEDS)('is worth no less than sheets filled first (world %i)', (seed) => {
    const ask = askOf(seed, { designs: 10, cards: 5 });
    const pieces = piecesOf(ask.cards).patterned;
    const scheme = cutScheme(pieces, ask.pad.sheetSize, ask.settings);
    const filled = planCards({ ...ask, scheme, limit: { steps: 20_000 } });
    const free = planFreely(ask);
    expect(free.plan.value).toBeGreaterThanOrEqual(filled.value - 1e-9);
    expect(free.plan.bound).toBeGreaterThanOrEqual(filled.value - 1e-9);
  });

  test.each(SEEDS)(
    'has a bound that no way of dealing passes, by trying all (world %i)',
    (seed) => {
      const ask = askOf(seed, { designs: 4, cards: 2 });
      const world = freeWorld(ask);
      const best = bestOfAll(world);
      const { bound } = pricesFor(world, best);
      expect(bound).toBeGreaterThanOrEqual(best - 1e-9);
      const free = planFreely(ask);
      expect(free.plan.value).toBeCloseTo(best, 6);
    },
  );

  test.each(SEEDS)(
    'bounds also the plans whose pieces are turned so that a print stands, and is worth as much (world %i)',
    (seed) => {
      const ask = sideways(askOf(seed, { designs: 5, cards: 4 }));
      const scheme = cutScheme(piecesOf(ask.cards).patterned, ask.pad.sheetSize, ask.settings);
      const filled = planCards({ ...ask, scheme, limit: { steps: 20_000 } });
      const { bound } = pricesFor(freeWorld(ask), filled.value);
      expect(bound).toBeGreaterThanOrEqual(filled.value - 1e-9);
      const free = planFreely(ask);
      expect(free.plan.value).toBeGreaterThanOrEqual(filled.value - 1e-9);
      expect(free.plan.bound).toBeGreaterThanOrEqual(filled.value - 1e-9);
      expect(faultsOf(ask, free)).toEqual([]);
    },
  );

  test.each([90, 270] as const)(
    'prints that point sideways (%i) stand on turned pieces, and the plan is worth as much as if they stood',
    (up) => {
      const ask = askOf(9109, { designs: 6, cards: 4 });
      const free = planFreely(pointing(ask, up));
      expect(faultsOf(pointing(ask, up), free)).toEqual([]);
      const oblong = free.scheme.slots
        .flatMap(({ pieces }) => pieces)
        .filter(({ piece }) => piece.size.width !== piece.size.height);
      expect(oblong.length).toBeGreaterThan(3);
      expect(oblong.every(({ turned }) => turned)).toBe(true);
      const standing = planFreely(pointing(ask, 0));
      expect(free.plan.value).toBeCloseTo(standing.plan.value, 9);
      expect(free.plan.bound).toBeCloseTo(standing.plan.bound, 9);
      const long = { width: ask.pad.sheetSize.width, height: units(9 * INCH) };
      const oblongSheets = {
        ...pointing(ask, up),
        pad: { ...pointing(ask, up).pad, sheetSize: long },
      };
      expect(faultsOf(oblongSheets, planFreely(oblongSheets))).toEqual([]);
    },
  );

  test('uses no more sheets than she gives, and says when they are too few', () => {
    const ask = askOf(9105, { designs: 8, cards: 4 });
    const { slots } = planFreely(ask).scheme;
    const fewer = planFreely({ ...ask, sheets: slots.length - 1 });
    expect(fewer.scheme.slots.length).toBeLessThan(slots.length);
    expect(faultsOf(ask, fewer)).toEqual([]);
    expect(() => planFreely({ ...ask, sheets: 1 })).toThrow(
      expect.objectContaining({ kind: 'does-not-fit', field: 'sheets' }) as Error,
    );
  });

  test('wishes that clash on the fullest sheets are met on others, or named', () => {
    const ask = askOf(9106, { designs: 8, cards: 4 });
    const papers = ask.cards.map(
      ({ layout }) => layout.layers.find(({ material }) => material === 'patterned')!.id,
    );
    const pins = papers.map((layer, at) => ({ card: at + 1, layer, sheet: `sheet-${at + 1}` }));
    const free = planFreely({ ...ask, pins });
    expect(faultsOf({ ...ask, pins }, free)).toEqual([]);
    const [layer, other] = ask.cards[0]!.layout.layers.filter(
      ({ material, paper }, at, all) =>
        material === 'patterned' && all.findIndex((one) => one.paper === paper) === at,
    );
    const twice = [layer!, other!].map(({ id }) => ({ card: 1, layer: id, sheet: 'sheet-1' }));
    expect(() => planFreely({ ...ask, pins: twice })).toThrow(
      expect.objectContaining({ kind: 'clash', received: twice }) as Error,
    );
  });

  test('one card of one paper is proven best, others only where the bound is reached', () => {
    const layout = catalogue.find((one) => papersOf(one).length === 1)!;
    const ask = {
      ...askOf(9103, { designs: 8, cards: 1 }),
      cards: [{ number: 1, layout }],
    };
    const free = planFreely(ask);
    expect(faultsOf(ask, free)).toEqual([]);
    expect(free.plan.proven).toBe(true);
    const world = freeWorld(ask);
    expect(free.plan.value).toBeCloseTo(Math.max(...world.cards[0]!.table), 9);
    const many = planFreely(askOf(9101, { designs: 6, cards: 5 }));
    expect(many.plan.proven).toBe(many.plan.value >= many.plan.bound - 1e-9);
  });

  test('cards of very many papers are refused before their tables are made', () => {
    const ask = askOf(9106, { designs: 24, cards: 2 });
    const [card] = ask.cards;
    const [piece] = card!.layout.layers.filter(({ material }) => material === 'patterned');
    const layers = Array.from({ length: 8 }, (_, at) => ({
      ...piece!,
      id: `l${at}`,
      paper: `p${at}`,
    }));
    const cards = [{ ...card!, layout: { ...card!.layout, layers } }];
    expect(() => planFreely({ ...ask, cards })).toThrow(
      expect.objectContaining({ kind: 'too-large', field: 'cards', received: 8 }) as Error,
    );
  });

  test('keeps pins and leaves sheets out', () => {
    const ask = askOf(9106, { designs: 8, cards: 4 });
    const layer = ask.cards[1]!.layout.layers.find(({ material }) => material === 'patterned')!;
    const wish = {
      ...ask,
      pins: [{ card: 2, layer: layer.id, sheet: 'sheet-3' }],
      without: ['sheet-1', 'sheet-2'],
    };
    const free = planFreely(wish);
    const chosen = free.plan.cards[1]!.layers.find(({ layer: id }) => id === layer.id)!.choice;
    expect(chosen).toMatchObject({ kind: 'paper', sheet: 'sheet-3' });
    expect(Object.values(free.plan.slots)).not.toContain('sheet-1');
    expect(Object.values(free.plan.slots)).not.toContain('sheet-2');
    expect(faultsOf(wish, free)).toEqual([]);
  });

  test('the same ask gives the same plan', () => {
    const ask = askOf(9107, { designs: 6, cards: 4 });
    expect(planFreely(ask)).toEqual(planFreely(ask));
  });
});

test('the curve rises with the sheets, each point within its bound, and ends where more do not help', () => {
  const ask = askOf(9108, { designs: 9, cards: 5 });
  const points = sheetCurve(ask, () => STEPS);
  expect(points.length).toBeGreaterThan(1);
  points.forEach((point, at) => {
    expect(point.value).toBeLessThanOrEqual(point.bound + 1e-9);
    if (at === 0) return;
    expect(point.sheets).toBeGreaterThan(points[at - 1]!.sheets);
    expect(point.value).toBeGreaterThan(points[at - 1]!.value);
  });
});

test('a curve that nobody waits for any more ends with the points it has', () => {
  const ask = askOf(9108, { designs: 9, cards: 5 });
  const parts = partsOf(ask);
  let asked = 0;
  const points = sheetCurve(ask, () => (asked++ < parts + 1 ? STEPS : { until: () => true }));
  expect(points).toHaveLength(1);
  // Once for each part of the tables, once for the point, once to be told that nobody waits.
  expect(asked).toBe(parts + 2);
});

test('the tables of a large card are written out bit by bit, so that others are planned for between', () => {
  const ask = askOf(9108, { designs: 9, cards: 5 });
  const tiles = catalogue.find(({ id }) => id === 'four-panes-us')!;
  const four = { ...ask, cards: [{ number: 1, layout: tiles }] };
  expect(papersOf(tiles)).toHaveLength(4);
  expect(partsOf(four)).toBeGreaterThan(ask.pad.sheets.length);
});

function partsOf(ask: FreeAsk): number {
  const building = buildWorld(ask);
  let parts = 1;
  while (building.next().done !== true) parts += 1;
  return parts;
}

test('a curve shows the plan that is there at once, then more bit by bit, and ends as when asked in one', () => {
  const ask = askOf(9108, { designs: 9, cards: 5 });
  const there = { sheets: 7, value: 0.5, bound: 5 };
  const curve = openCurve(ask, there);
  expect(curve.known()).toEqual({ points: [there], complete: false });
  for (let part = 0; !curve.known().complete && part < 400; part++) curve.goOn(STEPS);
  expect(curve.known()).toEqual({ points: sheetCurve(ask, () => STEPS), complete: true });
});

function askOf(seed: number, size: { designs: number; cards: number }): FreeAsk {
  const { scheme, ...ask } = worldOf(seed, { ...size, copies: 1, slots: 6 });
  return { ...ask, limit: STEPS, settings: { ...usualSettings('in'), steps: scheme.slots.length } };
}

/** The ask with one-way prints that all point one way in their swatches. */
function pointing(ask: FreeAsk, up: 0 | 90 | 270): FreeAsk {
  const turned = (side: Side | null): Side | null =>
    side && { ...side, pattern: { ...side.pattern, direction: 'one-way', up } };
  const sheets = ask.pad.sheets.map((sheet) => ({
    ...sheet,
    front: turned(sheet.front),
    back: turned(sheet.back),
  }));
  return { ...ask, pad: { ...ask.pad, sheets } };
}

/** The ask with one plain sheet, and one-way prints that all point sideways in their swatches. */
function sideways(ask: FreeAsk): FreeAsk {
  const sheets = ask.pad.sheets.map((sheet, at) => {
    const turned = (side: Side | null): Side | null =>
      side && {
        ...side,
        pattern: { ...side.pattern, direction: at === 0 ? 'none' : 'one-way', up: 90 },
      };
    return { ...sheet, front: turned(sheet.front), back: turned(sheet.back) };
  });
  return { ...ask, pad: { ...ask.pad, sheets } };
}

function faultsOf(ask: FreeAsk, { scheme, plan }: FreePlan): string[] {
  return [
    ...checkScheme(piecesOf(ask.cards).patterned, scheme),
    ...checkPlan({ ...ask, scheme }, plan),
  ];
}

/** The greatest sum over every choice of designs for every paper that comes out of one sheet each. */
function bestOfAll({ cards, fits, copies }: FreeWorld): number {
  const designs = copies.length;
  let best = -Infinity;
  const on: number[][] = copies.map(() => []);
  const tryOut = (card: number, sum: number): void => {
    if (card === cards.length) {
      best = Math.max(best, sum);
      return;
    }
    const { lots, table } = cards[card]!;
    table.forEach((worth, cell) => {
      if (worth === -Infinity) return;
      const chosen = lots.map(
        (_, at) => Math.floor(cell / designs ** (lots.length - 1 - at)) % designs,
      );
      if (new Set(chosen).size < chosen.length) return;
      if (!lots.every((lot, at) => fits([...on[chosen[at]!]!, lot], chosen[at]!))) return;
      lots.forEach((lot, at) => on[chosen[at]!]!.push(lot));
      tryOut(card + 1, sum + worth);
      lots.forEach((_, at) => on[chosen[at]!]!.pop());
    });
  };
  tryOut(0, 0);
  return best;
}
