import { describe, expect, test } from 'vitest';
import { difference } from '../../server/colour/difference.ts';
import { checkPlan } from '../../server/plan/check.ts';
import { planCards } from '../../server/plan/plan-cards.ts';
import type { PlanAsk } from '../../server/plan/ask.ts';
import type { Supply } from '../../server/supplies/supply.ts';
import { ask, cardstock, COLOURS, layer, layout, sheet, side, slot } from './worlds.ts';
import type { Named } from './worlds.ts';

/** A base or mat of the colour that most of a print has leaves it without an edge. Common practice, no source. */

/** One paper on a base. */
const ON_BASE = layout('on base', [
  layer('base', 'base', [0, 0, 4.25, 5.5], 'stock-1'),
  layer('panel', 'panel', [0.125, 0.125, 4, 5.25], 'a'),
]);

/** A card of one paper: a busy print of so much of each colour. */
function oneCard(print: Partial<Record<Named, number>>, supplies: readonly Supply[]): PlanAsk {
  return ask({
    sheets: [sheet('s', side('print', print, { busyness: 0.6 }), null)],
    cards: [{ number: 1, layout: ON_BASE }],
    slots: [slot('slot', [{ card: 1, layout: ON_BASE, paper: 'a' }])],
    supplies,
  });
}

const KELP_WITH_CORAL = { kelp: 0.7, coral: 0.3 };

function baseOf(world: PlanAsk): ReturnType<typeof planCards>['cards'][number]['layers'][number] {
  const plan = planCards(world);
  expect(checkPlan(world, plan)).toEqual([]);
  return plan.cards[0]!.layers.find(({ layer: id }) => id === 'base')!;
}

describe('a base under a print', () => {
  test('takes the colour of its motifs, not that of the ground that meets it', () => {
    const world = oneCard(KELP_WITH_CORAL, [
      cardstock('kelp', 'kelp'),
      cardstock('coral', 'coral'),
    ]);
    expect(baseOf(world).choice).toEqual({ kind: 'supply', supply: 'coral' });
  });

  test('that is to be bought is not proposed in the colour of the ground either', () => {
    const { choice } = baseOf(oneCard(KELP_WITH_CORAL, []));
    expect(choice.kind).toBe('wanted');
    if (choice.kind !== 'wanted') return;
    expect(difference(choice.lab, COLOURS.kelp)).toBeGreaterThan(10);
  });

  test('keeps the colour of the ground where all else costs much, and the reason says so', () => {
    const world = oneCard(KELP_WITH_CORAL, [
      cardstock('kelp', 'kelp'),
      cardstock('violet', 'violet'),
    ]);
    const plan = planCards(world);
    expect(plan.cards[0]!.layers[0]!.choice).toEqual({ kind: 'supply', supply: 'kelp' });
    expect(plan.cards[0]!.reasons[0]!.text).toMatch(
      /The base picks up .* of the panel\. .*The base is hard to tell from the .*green of the panel where they meet\./,
    );
  });

  test('is told from a print of many colours though one of them is its own', () => {
    const world = oneCard({ white: 0.5, coral: 0.3, teal: 0.2 }, [cardstock('coral', 'coral')]);
    for (const { text } of planCards(world).cards[0]!.reasons)
      expect(text).not.toMatch(/hard to tell/);
  });

  test('that is hard to tell from its print is not said to set it off', () => {
    const world = oneCard({ red: 0.9, white: 0.1 }, [cardstock('near', 'nearlyRed')]);
    const pinned = { ...world, pins: [{ card: 1, layer: 'base', supply: 'near' }] };
    const { why, reasons } = planCards(pinned).cards[0]!;
    expect(reasons[0]!.text).toMatch(/hard to tell/);
    expect(`${why} ${reasons[0]!.text}`).not.toMatch(/sets .* off/);
  });
});
