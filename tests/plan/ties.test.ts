import { describe, expect, it } from 'vitest';
import { cutScheme } from '../../server/cutting/cut-scheme.ts';
import { isTied } from '../../server/cutting/pairs-across.ts';
import { piecesOf } from '../../server/cutting/pieces-of.ts';
import { usualSettings } from '../../server/cutting/settings.ts';
import type { PlanAsk } from '../../server/plan/ask.ts';
import { checkPlan } from '../../server/plan/check.ts';
import { planBatch } from '../../server/from-photo-to-guide.ts';
import { choicesOf } from '../../server/other-plans.ts';
import { catalogue } from '../../server/layouts/catalogue.ts';
import { planCards } from '../../server/plan/plan-cards.ts';
import { layOut } from '../../server/plan/plan-desk.ts';
import type { Pin, Plan } from '../../server/plan/plan.ts';
import { Refusal } from '../../server/refusals/refusal.ts';
import { randomWorld, sheet, side } from './worlds.ts';

const HALVED = catalogue.find(({ id }) => id === 'halved-us')!;

/** Cards halved from corner to corner, their triangles cut by twos from one rectangle, and a pad of chance. */
function halvedWorld(cards: number, seed: number): PlanAsk {
  const { pad, ...rest } = randomWorld(seed, { designs: 9, copies: 1, slots: 3, cards: 1 });
  const both = pad.sheets.map((one) =>
    sheet(one.id, one.front, one.back ?? side(`${one.id}b`, { teal: 0.6, coral: 0.4 })),
  );
  const batch = Array.from({ length: cards }, (_, at) => ({ number: at + 1, layout: HALVED }));
  const { patterned } = piecesOf(batch);
  const settings = { ...usualSettings('in'), pairAcross: true };
  const scheme = cutScheme(patterned, pad.sheetSize, settings);
  return { ...rest, pad: { ...pad, sheets: both }, cards: batch, scheme };
}

function sideOf(plan: Plan, card: number, layer: string): string {
  const choice = plan.cards
    .find(({ number }) => number === card)!
    .layers.find((one) => one.layer === layer)!.choice;
  return choice.kind === 'paper' ? choice.side : '';
}

/** A triangle of card 1, and the one that it is cut with. */
function tiedPair({ scheme }: PlanAsk): [Pin, Pin] {
  const slot = scheme.slots.find((one) => isTied(one, 1, 'upper'))!;
  const own = slot.pieces.find(({ piece }) => piece.card === 1 && piece.layer === 'upper')!;
  const mate = slot.pieces.find(({ piece }) => piece.id === own.pair!.with)!;
  return [
    { card: 1, layer: 'upper' },
    { card: mate.piece.card, layer: mate.piece.layer },
  ];
}

describe('triangles of two cards that share a rectangle', () => {
  it('take half the sheets', () => {
    const ask = halvedWorld(4, 1);
    expect(ask.scheme.slots.length).toBeLessThan(8);
    const apart = cutScheme(piecesOf(ask.cards).patterned, ask.pad.sheetSize, usualSettings('in'));
    expect(ask.scheme.slots.length).toBeLessThan(apart.slots.length);
  });

  it.each([1, 2, 3, 4, 5, 6])('show one side of it, in world %i of chance', (seed) => {
    const ask = halvedWorld(3, seed);
    const plan = planCards(ask);
    expect(checkPlan(ask, plan)).toEqual([]);
    const [one, other] = tiedPair(ask);
    expect(sideOf(plan, one.card, one.layer)).toBe(sideOf(plan, other.card, other.layer));
  });

  it('show the side that a pin asks of one of them, on a new plan and on one that is changed', () => {
    const ask = halvedWorld(2, 3);
    const [one, other] = tiedPair(ask);
    const desk = layOut(ask);
    for (const face of ['front', 'back'] as const)
      for (const { id, ...faces } of ask.pad.sheets.slice(0, 3)) {
        const pins = [{ ...one, side: faces[face]!.id }];
        for (const plan of [planCards({ ...ask, pins }), desk.change({ pins }).plan]) {
          expect(checkPlan({ ...ask, pins }, plan)).toEqual([]);
          expect(sideOf(plan, other.card, other.layer), id).toBe(faces[face]!.id);
        }
      }
  });

  it('cannot be pinned to both sides of a sheet', () => {
    const ask = halvedWorld(2, 4);
    const [one, other] = tiedPair(ask);
    const { front, back } = ask.pad.sheets[0]!;
    const pins = [
      { ...one, side: front!.id },
      { ...other, side: back!.id },
    ];
    expect(() => planCards({ ...ask, pins })).toThrow(Refusal);
    expect(() => layOut(ask).change({ pins })).toThrow(/cannot all hold/);
  });

  it('is seen by the checker where they do not', () => {
    const ask = halvedWorld(2, 5);
    const plan = planCards(ask);
    const [one] = tiedPair(ask);
    const { front, back } = ask.pad.sheets.find((each) =>
      [each.front?.id, each.back?.id].includes(sideOf(plan, one.card, one.layer)),
    )!;
    const other = sideOf(plan, one.card, one.layer) === front!.id ? back!.id : front!.id;
    const cards = plan.cards.map((card) => ({
      ...card,
      layers: card.layers.map((each) =>
        card.number === one.card && each.layer === one.layer && each.choice.kind === 'paper'
          ? { ...each, choice: { ...each.choice, side: other } }
          : each,
      ),
    }));
    expect(checkPlan(ask, { ...plan, cards }).join()).toContain('which it is cut with');
  });

  it('stay apart on a pad of which some back is not known', () => {
    const { pad, supplies, pins, without, taste, limit } = halvedWorld(2, 6);
    const wish = [{ layout: HALVED, count: 2 }];
    const rest = { supplies, pins, without, taste, limit };
    const whole = planBatch(wish, { pad, ...rest }, usualSettings('in'));
    const [first, ...others] = pad.sheets;
    const half = { ...pad, sheets: [{ ...first!, back: null }, ...others] };
    const torn = planBatch(wish, { pad: half, ...rest }, usualSettings('in'));
    expect(whole.scheme.slots.length).toBeLessThan(torn.scheme.slots.length);
    // What could lie there is asked of such a plan like of any other.
    const choices = choicesOf(
      { batch: whole, ask: { pad, ...rest } },
      { card: 1, layer: 'upper', free: false },
    );
    expect(choices.filter(({ now }) => now)).toHaveLength(1);
  });
});
