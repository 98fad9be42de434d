import { expect, test } from 'vitest';
import { planOnTable } from '../../server/batches-on-table.ts';
import { checkScheme } from '../../server/cutting/check-scheme.ts';
import { piecesOf } from '../../server/cutting/pieces-of.ts';
import { usualSettings } from '../../server/cutting/settings.ts';
import { layBatch, SEED } from '../../server/from-photo-to-guide.ts';
import type { PlannedBatch } from '../../server/from-photo-to-guide.ts';
import { catalogue } from '../../server/layouts/catalogue.ts';
import { DEAR } from '../../server/plan/as-it-lies.ts';
import { checkPlan } from '../../server/plan/check.ts';
import { upOf } from '../../server/plan/faces-up.ts';
import type { Pin } from '../../server/plan/plan.ts';
import { worldOf } from '../benchmark/plan-worlds.ts';

const settings = usualSettings('in');
const wishes = ['one-paper-us', 'waistband-us', 'wide-third-us', 'framed-us', 'split-low-us'].map(
  (id) => ({ layout: catalogue.find((layout) => layout.id === id)!, count: 1 }),
);

function changed(before: PlannedBatch, after: PlannedBatch): number[] {
  return after.plan.cards
    .filter(
      ({ layers }, n) => JSON.stringify(layers) !== JSON.stringify(before.plan.cards[n]!.layers),
    )
    .map(({ number }) => number);
}

test('papers change over, or come to a card, by moving only pieces concerned where sheets have room', () => {
  const { pad, supplies, taste } = worldOf(7, { designs: 8, copies: 1, slots: 4, cards: 5 });
  const ask = { pad, supplies, taste, pins: [], without: [], limit: { steps: 1e7 } };
  const first = planOnTable({ wishes, ask, settings });
  const before = { plan: first.plan, scheme: first.scheme, pins: [] };
  const papers = first.plan.cards.flatMap(({ number, layers }) =>
    layers.flatMap(({ layer, choice }) =>
      choice.kind === 'paper' ? [{ card: number, layer, side: choice.side }] : [],
    ),
  );
  const asked = papers.flatMap((one): Pin[][] =>
    papers
      .filter(({ card, side }) => card > one.card && side !== one.side)
      .flatMap((other) => [
        [
          { ...one, side: other.side },
          { ...other, side: one.side },
        ],
        [{ ...one, side: other.side }],
      ]),
  );
  const old = layBatch(wishes, ask, settings);
  let [moved, fewer] = [0, 0];
  for (const pins of asked.filter((_, at) => at % 4 < 2)) {
    const batch = planOnTable({ wishes, ask: { ...ask, pins }, settings, before });
    const { cards, scheme, plan } = batch;
    const said = { ...ask, pins, cards, scheme, seed: SEED, ...upOf(plan) };
    expect(checkPlan(said, plan)).toEqual([]);
    if (JSON.stringify(scheme) === JSON.stringify(first.scheme)) continue;
    moved++;
    expect(checkScheme(piecesOf(cards).patterned, scheme, settings)).toEqual([]);
    expect(plan.slots).toEqual(first.plan.slots);
    const best = plan.otherwise?.value ?? plan.value;
    expect(plan.value).toBeGreaterThanOrEqual(best - DEAR * cards.length - 1e-9);
    expect(plan.bound).toBeGreaterThanOrEqual(best - 1e-9);
    // Whole sheets that change over take other cards with them.
    const whole = old.again({ pins }).asItLies(before);
    expect(changed(first, batch).length).toBeLessThanOrEqual(4);
    if (changed(first, batch).length < changed(first, whole).length) fewer++;
    // What is wished next goes on from the cuts as they lie.
    const kept = papers.find(({ card }) => pins.every((pin) => pin.card !== card))!;
    const lies = plan.cards[kept.card - 1]!.layers.find(({ layer }) => layer === kept.layer)!;
    const more = [...pins, { ...kept, side: lies.choice.kind === 'paper' ? lies.choice.side : '' }];
    const again = planOnTable({
      wishes,
      ask: { ...ask, pins: more },
      settings,
      before: { plan, scheme, pins },
    });
    expect(changed(batch, again)).toEqual([]);
  }
  expect(moved).toBeGreaterThan(2);
  expect(fewer).toBeGreaterThan(2);
});
