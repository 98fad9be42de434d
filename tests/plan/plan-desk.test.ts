import { describe, expect, test } from 'vitest';
import { checkPlan } from '../../server/plan/check.ts';
import { instanceOf } from '../../server/plan/instance.ts';
import { worth } from '../../server/plan/network/network.ts';
import { layOut, nextBest, planWith } from '../../server/plan/plan-desk.ts';
import { planCards } from '../../server/plan/plan-cards.ts';
import type { PlanAsk } from '../../server/plan/ask.ts';
import { weakestCard } from '../../server/plan/weakest.ts';
import { ask, cardstock, FRAMED, randomWorld, sheet, side, slot } from './worlds.ts';

describe('changes on the table', () => {
  test('a changed pin, or a sheet left out, gives what planning anew gives', () => {
    for (let seed = 41; seed <= 44; seed++) {
      const world = randomWorld(seed, { designs: 8, copies: 1, slots: 4, cards: 6 });
      const desk = layOut(world);
      const paper = world.cards[0]!.layout.layers.find((one) => one.material === 'patterned')!;
      const pins = [{ card: 1, layer: paper.id, sheet: `s${seed % 8}` }];
      const without = [Object.values(desk.plan.slots).find((id) => id !== `s${seed % 8}`)!];
      const changed = desk.change({ pins }).change({ without });
      const anew = { ...world, pins, without };
      expect(changed.plan.value).toBeCloseTo(planCards(anew).value, 9);
      expect(changed.plan.proven).toBe(true);
      expect(checkPlan(anew, changed.plan)).toEqual([]);
      expect(desk.change({ pins: [] }).plan.value).toBeCloseTo(desk.plan.value, 9);
    }
  });

  test('a pin of what lies there already keeps the plan and its proof', () => {
    for (let seed = 61; seed <= 64; seed++) {
      const world = randomWorld(seed, { designs: 8, copies: 1, slots: 4, cards: 6 });
      const desk = layOut(world);
      const lying = desk.plan.cards.flatMap(({ number, layers }) =>
        layers.flatMap(({ layer, choice }) =>
          choice.kind === 'paper' ? [{ card: number, layer, side: choice.side }] : [],
        ),
      );
      const pins = [lying[0]!, lying.at(-1)!];
      const kept = desk.change({ pins: [pins[0]!] }).change({ pins });
      expect(kept.plan.slots).toEqual(desk.plan.slots);
      expect(kept.plan.proven).toBe(true);
      expect(kept.plan.value).toBeCloseTo(planCards({ ...world, pins }).value, 9);
      expect(checkPlan({ ...world, pins }, kept.plan)).toEqual([]);
      // Where the plan has to change, or pins are taken back, all that is possible is searched.
      const anew = { ...world, without: [desk.plan.slots.slot1!] };
      const changed = kept.change({ pins: [], without: anew.without });
      expect(changed.plan.value).toBeCloseTo(planCards(anew).value, 9);
      expect(checkPlan(anew, changed.plan)).toEqual([]);
      expect(changed.change({ without: [] }).plan.value).toBeCloseTo(desk.plan.value, 9);
    }
  });

  test('the next best plans are the next best of all choices, each different, with what they change', () => {
    const world = randomWorld(51, { designs: 6, copies: 1, slots: 4, cards: 6 });
    const plan = planCards(world);
    const { network } = instanceOf(world);
    const values: number[] = [];
    const fill = (choice: number[]): void => {
      if (choice.length === 4) {
        values.push(worth(network, choice));
        return;
      }
      for (let design = 0; design < 6; design++)
        if (!choice.includes(design)) fill([...choice, design]);
    };
    fill([]);
    values.sort((a, b) => b - a);
    const next = nextBest(world, plan, 3);
    expect(next).toHaveLength(3);
    next.forEach((other, at) => {
      expect(other.plan.value).toBeCloseTo(values[at + 1]!, 9);
      expect(checkPlan(world, other.plan)).toEqual([]);
      expect(other.plan.slots).not.toEqual(plan.slots);
      expect(other.changes[0]).toMatch(/ instead of .* for cards? /);
    });
  });
});

test('cards that are alike, exchanged, make no other plan; another plan changes no more than it must', () => {
  const grounds = ['teal', 'coral', 'kelp', 'plum'] as const;
  const world = ask({
    sheets: grounds.map((name) => sheet(name, side(name, { [name]: 0.7, white: 0.3 }), null)),
    cards: [1, 2, 3].map((number) => ({ number, layout: FRAMED })),
    slots: [1, 2, 3].map((card) => slot(`slot${card}`, [{ card, layout: FRAMED, paper: 'a' }])),
    supplies: [cardstock('white', 'white'), cardstock('teal', 'teal')],
  });
  const best = planCards(world);
  const [one, two, three] = ['slot1', 'slot2', 'slot3'].map((id) => best.slots[id]!);
  for (const slots of [
    { slot1: one!, slot2: two!, slot3: three! },
    { slot1: three!, slot2: one!, slot3: two! },
    { slot1: two!, slot2: one!, slot3: three! },
  ]) {
    const plan = planWith(world, best, slots);
    expect(plan.value).toBeCloseTo(best.value, 9);
    const others = nextBest(world, plan, 3);
    expect(others).toHaveLength(3);
    for (const { plan: other, swaps } of others) {
      expect(other.value).toBeLessThan(plan.value - 1e-9);
      expect(swaps).toHaveLength(1);
      expect(checkPlan(world, other)).toEqual([]);
    }
  }
});

describe('other cardstock under the papers as they lie', () => {
  const front = side('teal print', { white: 0.6, teal: 0.4 });
  const back = side('coral print', { white: 0.6, coral: 0.4 });
  const world = ask({
    sheets: [sheet('Both', front, back)],
    cards: [{ number: 1, layout: FRAMED }],
    slots: [slot('slot', [{ card: 1, layout: FRAMED, paper: 'a' }])],
    supplies: [cardstock('teal', 'teal')],
  });
  const plan = planCards(world);
  const since = { ...world, supplies: [cardstock('coral', 'coral')] };
  const shownIn = ({ cards }: typeof plan): unknown =>
    cards[0]!.layers.find(({ layer }) => layer === 'panel')!.choice;
  const best = { bound: 1, proven: false };

  test('turns no sheet, though its other side would go better with it', () => {
    expect(shownIn(plan)).toMatchObject({ side: 'teal print' });
    expect(shownIn(planWith(since, best, plan.slots))).toMatchObject({ side: 'coral print' });
    const left = planWith(since, best, plan.slots, plan);
    expect(shownIn(left)).toEqual(shownIn(plan));
    expect(left.value).toBeLessThan(planWith(since, best, plan.slots).value);
    expect(checkPlan(since, left)).toEqual([]);
  });

  test('shows the side that is best where another sheet comes into the slot', () => {
    const two = {
      ...since,
      pad: {
        ...since.pad,
        sheets: [...since.pad.sheets, sheet('Two', side('t', { white: 1 }), back)],
      },
    };
    const other = planWith(two, best, { slot: 'Two' }, plan);
    expect(shownIn(other)).toMatchObject({ sheet: 'Two', side: 'coral print' });
  });
});

describe('the weakest card', () => {
  test('is named with the sheet and the cardstock that would mend it', () => {
    const clash = side('clash', { lemon: 0.6, violet: 0.4 }, { busyness: 0.9 });
    const calm = side('calm', { white: 0.6, teal: 0.4 }, { busyness: 0.3 });
    const world = ask({
      sheets: [sheet('Loud', clash, null), sheet('Calm', calm, null, 2)],
      cards: [1, 2].map((number) => ({ number, layout: FRAMED })),
      slots: [1, 2].map((card) => slot(`slot${card}`, [{ card, layout: FRAMED, paper: 'a' }])),
      supplies: [cardstock('white', 'white'), cardstock('teal', 'teal')],
    });
    const pinned = { ...world, pins: [{ card: 1, layer: 'panel', sheet: 'Loud' }] };
    const plan = planCards(pinned);
    const weak = weakestCard(pinned, plan)!;
    expect(weak.number).toBe(1);
    const bought = weak.mends.filter(({ wanted }) => wanted !== undefined);
    expect(bought.length).toBeGreaterThan(0);
    for (const { text, wanted } of bought) {
      expect(wanted!.layers.length).toBeGreaterThan(0);
      for (const layer of wanted!.layers) expect(['base', 'mat']).toContain(layer);
      expect(text).toMatch(/^[a-z ]+ cardstock, to buy, for the (?:base|mat|base and the mat)$/);
    }
    for (const mend of weak.mends) expect(mend.card).toBeGreaterThan(0);
    const other = weakestCard(world, plan)!.mends.find(({ text }) =>
      text.includes('in the place of'),
    );
    expect(other?.text).toBe('Calm in the place of Loud');
    expect(other?.plan).toBeCloseTo(planCards(world).value - plan.value, 9);
  });

  test('a better sheet that another card has is told as taken, not as if there were none', () => {
    const clash = side('clash', { lemon: 0.6, violet: 0.4 }, { busyness: 0.9 });
    const calm = side('calm', { white: 0.6, teal: 0.4 }, { busyness: 0.3 });
    const worldOf = (copies: number, other = calm): PlanAsk =>
      ask({
        sheets: [sheet('Loud', clash, null), sheet('Calm', other, null, copies)],
        cards: [1, 2].map((number) => ({ number, layout: FRAMED })),
        slots: [1, 2].map((card) => slot(`slot${card}`, [{ card, layout: FRAMED, paper: 'a' }])),
        supplies: [cardstock('white', 'white'), cardstock('teal', 'teal')],
      });
    const one = worldOf(1);
    const weak = weakestCard(one, planCards(one))!;
    expect(weak.mends.every(({ swap }) => swap === undefined)).toBe(true);
    expect(weak.taken).toBe(true);
    // The only other sheet is as loud: nothing that lies anywhere would better it.
    const loud = worldOf(1, side('clash too', { lemon: 0.6, violet: 0.4 }, { busyness: 0.9 }));
    expect(weakestCard(loud, planCards(loud))!.taken).toBe(false);
  });
});
