import { expect, test } from 'vitest';
import { DEAR } from '../../server/plan/as-it-lies.ts';
import { checkPlan } from '../../server/plan/check.ts';
import { layOut } from '../../server/plan/plan-desk.ts';
import { planCards } from '../../server/plan/plan-cards.ts';
import type { Plan, Pin } from '../../server/plan/plan.ts';
import { ask, cardstock, FRAMED, randomWorld, sheet, side, slot } from './worlds.ts';

function changed(before: Plan, after: Plan): number[] {
  return after.cards
    .filter(({ layers }, n) => JSON.stringify(layers) !== JSON.stringify(before.cards[n]!.layers))
    .map(({ number }) => number);
}

/** Six cards on six of eight sheets; each pin asks for a paper that lies nowhere, or elsewhere. */
function wishes(seed: number): { world: ReturnType<typeof randomWorld>; pins: Pin[][] } {
  const world = randomWorld(seed, { designs: 8, copies: 1, slots: 6, cards: 6 });
  const pins = world.cards.slice(0, 3).flatMap(({ number, layout }) => {
    const layer = layout.layers.find((one) => one.material === 'patterned')!.id;
    return ['s0', 's3', 's5', 's7'].map((id) => [{ card: number, layer, side: `${id}f` }]);
  });
  return { world, pins };
}

test('a wish leaves other cards as they lie only where that costs little, changes fewer, and names the better plan', () => {
  let kept = 0;
  let anew = 0;
  for (let seed = 301; seed <= 303; seed++) {
    const { world, pins } = wishes(seed);
    const desk = layOut(world);
    for (const wish of pins) {
      const next = desk.change({ pins: wish });
      const plan = next.asItLies({ plan: desk.plan, pins: [] });
      const asked = { ...world, pins: wish };
      expect(checkPlan(asked, plan)).toEqual([]);
      expect(next.plan.value).toBeCloseTo(planCards(asked).value, 9);
      if (plan.otherwise === undefined) {
        expect(plan.value).toBeCloseTo(next.plan.value, 9);
        if (changed(desk.plan, plan).length > 3) anew++;
        continue;
      }
      kept++;
      expect(plan.value).toBeGreaterThanOrEqual(next.plan.value - DEAR * plan.cards.length);
      expect(changed(desk.plan, plan).length).toBeLessThan(changed(desk.plan, next.plan).length);
      expect(plan.otherwise).toEqual({
        slots: next.plan.slots,
        value: next.plan.value,
        cards: changed(plan, next.plan),
      });
      expect(plan.bound).toBeGreaterThanOrEqual(next.plan.value - 1e-9);
    }
  }
  expect(kept).toBeGreaterThan(0);
  expect(anew).toBeGreaterThan(0);
});

test('two papers change over, and what lies elsewhere stays, also where a third way is a hair better', () => {
  const grounds = ['teal', 'coral', 'kelp', 'slate'] as const;
  const world = ask({
    sheets: grounds.map((name) => sheet(name, side(name, { [name]: 0.7, white: 0.3 }), null)),
    cards: [1, 2, 3, 4].map((number) => ({ number, layout: FRAMED })),
    slots: [1, 2, 3, 4].map((card) => slot(`slot${card}`, [{ card, layout: FRAMED, paper: 'a' }])),
    supplies: [cardstock('white', 'white'), cardstock('teal', 'teal')],
  });
  const desk = layOut(world);
  const [first, second] = ['slot1', 'slot2'].map((id) => desk.plan.slots[id]!);
  const pin = (card: number, name: string): Pin => ({ card, layer: 'panel', side: name });
  const sideOf = (id: string): string => world.pad.sheets.find((one) => one.id === id)!.front!.id;
  const pins = [pin(1, sideOf(second!)), pin(2, sideOf(first!))];
  const plan = desk.change({ pins }).asItLies({ plan: desk.plan, pins: [] });
  expect(plan.slots).toEqual({ ...desk.plan.slots, slot1: second, slot2: first });
  expect(changed(desk.plan, plan)).toEqual([1, 2]);
});

test('a pin of what lies there changes no card of a plan that was kept so, and the better plan can be had', () => {
  for (let seed = 301; seed <= 306; seed++) {
    const { world, pins } = wishes(seed);
    const desk = layOut(world);
    for (const wish of pins) {
      const next = desk.change({ pins: wish });
      const kept = next.asItLies({ plan: desk.plan, pins: [] });
      if (kept.otherwise === undefined) continue;
      const lying = kept.cards.flatMap(({ number, layers }) =>
        layers.flatMap(({ layer, choice }) =>
          choice.kind === 'paper' && number > 3 ? [{ card: number, layer, side: choice.side }] : [],
        ),
      );
      const more = [...wish, lying[0]!];
      const again = next.change({ pins: more }).asItLies({ plan: kept, pins: wish });
      expect(changed(kept, again)).toEqual([]);
      return;
    }
  }
  expect.fail('No wish of these worlds keeps other cards as they lie.');
});
