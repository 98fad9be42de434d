import { describe, expect, test } from 'vitest';
import type { Side } from '../../server/pad/pad.ts';
import type { PlanAsk } from '../../server/plan/ask.ts';
import { checkPlan } from '../../server/plan/check.ts';
import { upOf } from '../../server/plan/faces-up.ts';
import { planCards } from '../../server/plan/plan-cards.ts';
import type { Plan } from '../../server/plan/plan.ts';
import { Refusal } from '../../server/refusals/refusal.ts';
import { bestByTryingAll } from './brute-force.ts';
import {
  ask,
  BANDED,
  cardstock,
  EDGED,
  FRAMED,
  QUILT,
  randomWorld,
  sheet,
  side,
  slot,
  STACKED,
} from './worlds.ts';

function refusal(run: () => unknown): Refusal {
  try {
    run();
  } catch (error) {
    if (error instanceof Refusal) return error;
    throw error;
  }
  throw new Error('Expected a refusal');
}

const tiny = { designs: 4, copies: 1, slots: 3, cards: 2 };

describe('the plan', () => {
  test('equals the best of all choices of sheets, sides and cardstock in small worlds', () => {
    for (let seed = 1; seed <= 6; seed++) {
      const world = randomWorld(seed, { ...tiny, copies: 1 + (seed % 2) });
      const plan = planCards(world);
      expect(plan.proven).toBe(true);
      expect(plan.value).toBeCloseTo(bestByTryingAll(world), 9);
      expect(checkPlan(world, plan)).toEqual([]);
    }
  });

  test('does not depend on the order or the names of the sheets', () => {
    const world = randomWorld(11, { designs: 8, copies: 1, slots: 4, cards: 6 });
    const turned = [...world.pad.sheets].reverse().map((one) => ({ ...one, id: `x${one.id}` }));
    const other = planCards({ ...world, pad: { ...world.pad, sheets: turned } });
    expect(other.value).toBeCloseTo(planCards(world).value, 9);
  });

  test('keeps its pins, and a pin never raises the value', () => {
    for (let seed = 21; seed <= 26; seed++) {
      const world = randomWorld(seed, { designs: 8, copies: 1, slots: 4, cards: 6 });
      const free = planCards(world);
      const card = world.cards[0]!;
      const paper = card.layout.layers.find((one) => one.material === 'patterned')!;
      const pinned = {
        ...world,
        pins: [
          { card: 1, layer: paper.id, side: world.pad.sheets[seed % 8]!.front!.id },
          { card: 2, layer: 'base', supply: 'teal' },
        ],
      };
      const plan = planCards(pinned);
      expect(checkPlan(pinned, plan)).toEqual([]);
      expect(plan.value).toBeLessThanOrEqual(free.value + 1e-9);
    }
  });

  test('a bound holds when the search is cut short', () => {
    const world = randomWorld(31, { designs: 12, copies: 1, slots: 6, cards: 12 });
    const short = planCards({ ...world, limit: { steps: 1 } });
    const full = planCards(world);
    expect(full.proven).toBe(true);
    expect(short.bound).toBeGreaterThanOrEqual(full.value - 1e-9);
    expect(short.value).toBeLessThanOrEqual(full.value + 1e-9);
    expect(checkPlan(world, short)).toEqual([]);
  });

  test('a plan is given also when all time is over before the search begins', () => {
    const world = randomWorld(31, { designs: 12, copies: 1, slots: 6, cards: 12 });
    const late = { ...world, limit: { until: () => true } };
    expect(checkPlan(late, planCards(late))).toEqual([]);
  });

  test('every design is used at most as often as it has copies', () => {
    const plain = side('a', { white: 0.7, teal: 0.3 }, { busyness: 0.1 });
    const world = ask({
      sheets: [sheet('A', plain, null, 2), sheet('B', side('b', { lemon: 1 }), null)],
      cards: [1, 2, 3].map((number) => ({ number, layout: FRAMED })),
      slots: [1, 2, 3].map((card) => slot(`s${card}`, [{ card, layout: FRAMED, paper: 'a' }])),
    });
    const used = Object.values(planCards(world).slots).sort();
    expect(used).toEqual(['A', 'A', 'B']);
  });

  test('a one-way print keeps its up where it can', () => {
    const trees = side('trees', { white: 0.6, kelp: 0.4 }, { direction: 'one-way', up: 0 });
    const lying = side('lying', { white: 0.6, kelp: 0.4 }, { direction: 'one-way', up: 90 });
    const world = ask({
      sheets: [sheet('A', trees, lying)],
      cards: [{ number: 1, layout: FRAMED }],
      slots: [slot('s', [{ card: 1, layout: FRAMED, paper: 'a' }])],
    });
    const sideOf = (plan: Plan): unknown =>
      plan.cards[0]!.layers.find((l) => l.layer === 'panel')!.choice;
    expect(sideOf(planCards(world))).toMatchObject({ side: 'trees' });
    expect(planCards(world).cards[0]!.reasons.map(({ short }) => short)).toContain(
      'The print of the panel stands upright.',
    );
    const turned = {
      ...world,
      scheme: {
        ...world.scheme,
        slots: [slot('s', [{ card: 1, layout: FRAMED, paper: 'a' }], ['1-panel'])],
      },
    };
    expect(sideOf(planCards(turned))).toMatchObject({ side: 'lying' });
  });

  test('a sheet that stands on neither side is kept out while another can fill the slot', () => {
    const print = (id: string, up: 0 | 90): ReturnType<typeof side> =>
      side(id, { white: 0.6, kelp: 0.4 }, { direction: 'one-way', up });
    const plain = side('plain', { lemon: 0.5, violet: 0.5 });
    const alone = ask({
      sheets: [sheet('Lying', print('a', 90), print('b', 90))],
      cards: [{ number: 1, layout: FRAMED }],
      slots: [slot('s', [{ card: 1, layout: FRAMED, paper: 'a' }])],
    });
    const both = {
      ...alone,
      pad: { ...alone.pad, sheets: [...alone.pad.sheets, sheet('Plain', plain, null)] },
    };
    expect(planCards(both).slots).toEqual({ s: 'Plain' });
    const forced = planCards(alone);
    expect(checkPlan(alone, forced)).toEqual([]);
    const up = (plan: Plan): Plan['cards'][number]['reasons'][number] =>
      plan.cards[0]!.reasons.find(({ layers }) => layers.join() === 'panel')!;
    expect(up(forced).text).toMatch(
      /^The print of the panel has to lie on its side: its piece is /,
    );
    expect(up(forced).text).toMatch(/no sheet that stands there was left/);
    expect(forced.cards[0]!.reasons[0]!.score).toBe(up(forced).score);
    expect(forced.cards[0]!.short).toMatch(/lies on its side/);
    expect(checkPlan(both, forced).join()).toMatch(/though all could stand/);
    const pinned = { ...both, pins: [{ card: 1, layer: 'panel', sheet: 'Lying' }] };
    expect(planCards(pinned).slots).toEqual({ s: 'Lying' });
    expect(up(planCards(pinned)).text).toMatch(/lie on its side: you chose this paper for it/);
    expect(checkPlan(pinned, planCards(pinned))).toEqual([]);
  });

  test('a lying print is left out even where it would be worth more than the one that stands', () => {
    const lovely = side('lovely', { white: 0.5, teal: 0.5 }, { direction: 'one-way', scale: 30 });
    const drab = side('drab', { nearlyRed: 0.5, violet: 0.5 }, { busyness: 0.9 });
    const partner = side('partner', { white: 0.6, teal: 0.4 }, { busyness: 0.2, scale: 5 });
    const world = (
      sheets: Parameters<typeof ask>[0]['sheets'],
    ): Parameters<typeof planCards>[0] => ({
      ...ask({
        sheets: [...sheets, sheet('P', partner, null)],
        cards: [{ number: 1, layout: EDGED }],
        slots: [
          slot('s', [{ card: 1, layout: EDGED, paper: 'a' }], ['1-tab']),
          slot('t', [{ card: 1, layout: EDGED, paper: 'b' }]),
        ],
      }),
      pins: [{ card: 1, layer: 'band', sheet: 'P' }],
    });
    const oneSheet = world([sheet('A', lovely, drab)]);
    const twoSheets = world([sheet('A', lovely, null), sheet('B', drab, null)]);
    for (const one of [oneSheet, twoSheets]) {
      const plan = planCards(one);
      expect(checkPlan(one, plan)).toEqual([]);
      expect(plan.cards[0]!.layers.find(({ layer }) => layer === 'panel')!.choice).toMatchObject({
        side: 'drab',
      });
    }
    const forced = planCards(world([sheet('A', lovely, null)]));
    expect(forced.value).toBeGreaterThan(planCards(oneSheet).value);
  });

  test('cards of four papers: equals the best of all choices', () => {
    for (let seed = 61; seed <= 63; seed++) {
      const { pad } = randomWorld(seed, { designs: 5, copies: 1, slots: 3, cards: 1 });
      const world = ask({
        sheets: pad.sheets,
        cards: [1, 2].map((number) => ({ number, layout: QUILT })),
        slots: ['a', 'b', 'c', 'd'].map((paper, at) =>
          slot(paper, [
            { card: 1, layout: QUILT, paper },
            { card: 2, layout: QUILT, paper: 'abcd'.charAt((at + seed) % 4) },
          ]),
        ),
      });
      const plan = planCards(world);
      expect(plan.proven).toBe(true);
      expect(plan.value).toBeCloseTo(bestByTryingAll(world), 9);
      expect(checkPlan(world, plan)).toEqual([]);
    }
  });

  test('a narrow strip of a big print shows its ground more than its accents', () => {
    const bouquet = (scale: number): ReturnType<typeof side> =>
      side('bouquet', { white: 0.6, coral: 0.4 }, { scale, busyness: 0.5 });
    const coral = side('coral', { coral: 0.9, white: 0.1 }, { busyness: 0.05 });
    const strip = (scale: number): string => {
      const world = ask({
        sheets: [sheet('A', coral, null), sheet('B', bouquet(scale), null)],
        cards: [{ number: 1, layout: BANDED }],
        slots: [
          slot('s', [{ card: 1, layout: BANDED, paper: 'a' }]),
          slot('t', [{ card: 1, layout: BANDED, paper: 'b' }]),
        ],
      });
      const pins = [{ card: 1, layer: 'strip', sheet: 'B' }];
      const plan = planCards({ ...world, pins });
      expect(checkPlan({ ...world, pins }, plan)).toEqual([]);
      return plan.cards[0]!.reasons.find(({ layers }) => layers.join() === 'panel,strip')!.text;
    };
    expect(strip(8)).toContain('(90 % and 40 %)');
    expect(strip(80)).toContain('(90 % and 20 %)');
  });

  test('what a piece shows at its place counts before the side as a whole', () => {
    const world = ask({
      sheets: [
        sheet('A', side('a', { white: 0.5, coral: 0.5 }), null),
        sheet('B', side('b', { teal: 0.5, coral: 0.5 }, { scale: 2 }), null),
      ],
      cards: [{ number: 1, layout: BANDED }],
      slots: [
        slot('s', [{ card: 1, layout: BANDED, paper: 'a' }]),
        slot('t', [{ card: 1, layout: BANDED, paper: 'b' }]),
      ],
    });
    const pins = [{ card: 1, layer: 'panel', side: 'a' }];
    const plan = planCards({ ...world, pins });
    const between = (one: Plan): string =>
      one.cards[0]!.reasons.find(({ layers }) => layers.join() === 'panel,strip')!.text;
    expect(between(plan)).toMatch(/ share .*\(50 % and 50 %\)/);
    // White where the panel lies, the coral beside it: on the right of the sheet and below.
    const placed = { ...halves(world, 'a', 4 / 6, 5.25 / 6), pins };
    const bare = planCards(placed);
    expect(checkPlan(placed, bare)).toEqual([]);
    expect(between(bare)).toMatch(/have no colour in common/);
    expect(bare.up).toEqual({ s: 'front', t: 'front' });
    expect(bare.value).not.toBeCloseTo(plan.value, 3);
  });

  test('a back that lies down is cut mirrored; where most pieces show it, it lies up', () => {
    const worldWith = (back: Side): PlanAsk =>
      ask({
        sheets: [sheet('A', side('front', { violet: 1 }), back)],
        cards: [1, 2, 3].map((number) => ({ number, layout: FRAMED })),
        slots: [
          slot(
            's',
            [1, 2, 3].map((card) => ({ card, layout: FRAMED, paper: 'a' })),
          ),
        ],
        supplies: [cardstock('white', 'white'), cardstock('coral', 'coral')],
      });
    const stock = [1, 2, 3].flatMap((card) => [
      { card, layer: 'base', supply: 'white' },
      { card, layer: 'mat', supply: 'coral' },
    ]);
    const showing = (world: PlanAsk, backs: readonly number[]): PlanAsk => ({
      ...world,
      pins: [1, 2, 3]
        .map((card): PlanAsk['pins'][number] => ({
          card,
          layer: 'panel',
          side: backs.includes(card) ? 'back' : 'front',
        }))
        .concat(stock),
    });
    // White up to the right edge of what is left when 3 3/4 in are cut from the other end, coral beyond.
    const back = side('back', { white: 0.375, coral: 0.625 });
    const placed = halves(worldWith(back), 'back', 2.25 / 6, 1);
    const coral = planCards(showing(worldWith(side('back', { coral: 1 })), [1])).cards[0]!.score;
    const few = planCards(showing(placed, [1]));
    expect(few.up).toEqual({ s: 'front' });
    expect(few.cards[0]!.score).toBeCloseTo(coral, 9);
    const most = planCards(showing(placed, [1, 2]));
    expect(most.up).toEqual({ s: 'back' });
    expect(Math.abs(most.cards[0]!.score - coral)).toBeGreaterThan(0.01);
    expect(checkPlan(showing(placed, [1]), few)).toEqual([]);
    expect(checkPlan(showing(placed, [1, 2]), most)).toEqual([]);
    expect(checkPlan(showing(placed, [1, 2]), { ...most, up: { s: 'front' } }).join()).toMatch(
      /worked out again/,
    );
  });

  test('with places known the plan equals the best of all choices with the same faces up', () => {
    for (let seed = 71; seed <= 74; seed++) {
      const plain = randomWorld(seed, { designs: 5, copies: 1, slots: 3, cards: 3 });
      const world = plain.pad.sheets
        .flatMap(({ front, back }) => [front, back])
        .reduce(
          (one, printed, at) =>
            printed === null ? one : halves(one, printed.id, 0.2 + 0.07 * at, 0.9 - 0.07 * at),
          plain,
        );
      const plan = planCards(world);
      expect(plan.proven).toBe(true);
      expect(checkPlan(world, plan)).toEqual([]);
      expect(plan.value).toBeCloseTo(bestByTryingAll({ ...world, ...upOf(plan) }), 9);
    }
  });

  test('says first what makes a card good, and of a good pair without a common colour what ties it', () => {
    const flaws =
      /almost|both busy|quarrel|in common|hard to tell|two kinds|of one size|still to be bought/;
    let good = 0;
    let apart = 0;
    for (let seed = 1; seed <= 12; seed++) {
      const world = randomWorld(seed, { designs: 6, copies: 1, slots: 3, cards: 4 });
      for (const { score, short, reasons } of planCards(world).cards) {
        if (score >= 0.7) {
          expect(short).not.toMatch(flaws);
          good++;
        }
        for (const { score: worth, text } of reasons) {
          if (!text.includes('no colour in common')) continue;
          expect(text).toMatch(/leaves the colours to|stands against|sets .* off|are of one depth/);
          expect(/^The .* have no colour in common/.test(text) && worth >= 0.6).toBe(false);
          apart++;
        }
      }
    }
    expect(good).toBeGreaterThan(4);
    expect(apart).toBeGreaterThan(0);
  });

  test('gives a reason for every border, a sentence for every card, and what to buy', () => {
    const world = randomWorld(3, { designs: 6, copies: 1, slots: 3, cards: 4 });
    const plan = planCards({ ...world, supplies: [] });
    for (const card of plan.cards) {
      expect(card.why).toMatch(/^[A-Z].*\.$/);
      expect(card.reasons.length).toBeGreaterThan(1);
      for (const reason of card.reasons) {
        expect(reason.text).toMatch(/^(The|One paper) .*\.$/);
        expect(reason.short).toMatch(/^(The|One paper) .{10,90}\.$/);
      }
      const scores = card.reasons.map(({ score }) => score);
      expect(scores).toEqual([...scores].sort((a, b) => a - b));
      expect(card.short!.length).toBeLessThan(100);
      expect(card.why).toContain(card.short!.slice(0, 12));
      expect(card.layers.some(({ choice }) => choice.kind === 'wanted')).toBe(true);
    }
    expect(plan.notes.some((note) => note.startsWith('Cardstock to buy: '))).toBe(true);
  });

  test('a greeting strip of cardstock is light enough to read', () => {
    const world = randomWorld(5, { designs: 5, copies: 1, slots: 3, cards: 1 });
    const three = ask({
      sheets: world.pad.sheets,
      cards: [{ number: 1, layout: STACKED }],
      slots: ['a', 'b', 'c'].map((paper) => slot(paper, [{ card: 1, layout: STACKED, paper }])),
    });
    const plan = planCards(three);
    const greeting = plan.cards[0]!.reasons.find(({ layers }) => layers.join() === 'greeting');
    expect(greeting?.score).toBeGreaterThan(0.7);
    expect(greeting?.text).toMatch(/light and calm enough/);
  });
});

/** The world with the first colour of a side in its upper left part, so wide and so high, and the last one elsewhere. */
function halves(world: PlanAsk, id: string, width: number, height: number): PlanAsk {
  const printed = (one: Side | null): Side | null => {
    if (one?.id !== id) return one;
    const last = 'abcdefgh'.charAt(one.palette.colours.length - 1);
    const of = Array.from({ length: 60 * 60 }, (_, cell) =>
      (cell % 60) + 0.5 < 60 * width && Math.floor(cell / 60) + 0.5 < 60 * height ? 'a' : last,
    ).join('');
    return { ...one, palette: { ...one.palette, where: { width: 60, height: 60, of } } };
  };
  const sheets = world.pad.sheets.map((one) => ({
    ...one,
    front: printed(one.front),
    back: printed(one.back),
  }));
  return { ...world, pad: { ...world.pad, sheets } };
}

describe('what cannot be met', () => {
  test('fewer sheets than slots: says how many are missing', () => {
    const world = randomWorld(1, { designs: 2, copies: 1, slots: 4, cards: 4 });
    const said = refusal(() => planCards(world));
    expect(said.kind).toBe('does-not-fit');
    expect(said.message).toMatch(/2 sheets are missing/);
    expect(said.mend).toMatch(/^Photograph 2 sheets more, or say how many copies/);
    const left = randomWorld(1, { designs: 4, copies: 1, slots: 4, cards: 4 });
    expect(refusal(() => planCards({ ...left, without: ['s0'] })).field).toBe('without');
  });

  test('fewer sheets than slots: says which cards to take off, and without them there is a plan', () => {
    const pad = randomWorld(2, { designs: 3, copies: 1, slots: 3, cards: 1 }).pad;
    const takes = (card: number, layout: typeof FRAMED, paper = 'a') => ({ card, layout, paper });
    const world = ask({
      sheets: pad.sheets,
      cards: [BANDED, FRAMED, FRAMED, BANDED].map((layout, at) => ({ number: at + 1, layout })),
      slots: [
        slot('p', [takes(1, BANDED), takes(2, FRAMED)]),
        slot('q', [takes(1, BANDED, 'b'), takes(4, BANDED)]),
        slot('r', [takes(3, FRAMED)]),
        slot('s', [takes(4, BANDED, 'b')]),
      ],
    });
    const said = refusal(() => planCards(world));
    expect(said.message).toMatch(/^These cards take 4 sheets, and 3 are there: 1 sheet is missing/);
    expect(said.mend).toContain("take off 1 card of 'framed' (card 3): the other 3 then have");
    const fewer = {
      ...world,
      cards: world.cards.filter(({ number }) => number !== 3),
      scheme: { ...world.scheme, slots: world.scheme.slots.filter(({ id }) => id !== 'r') },
    };
    expect(checkPlan(fewer, planCards(fewer))).toEqual([]);
  });

  test('pins that clash: names the smallest set and nothing else', () => {
    const world = ask({
      sheets: [1, 2, 3].map((n) =>
        sheet(`S${n}`, side(`f${n}`, { white: 1 }), side(`b${n}`, { teal: 1 })),
      ),
      cards: [1, 2].map((number) => ({ number, layout: FRAMED })),
      slots: [
        slot('s', [
          { card: 1, layout: FRAMED, paper: 'a' },
          { card: 2, layout: FRAMED, paper: 'a' },
        ]),
      ],
    });
    const pins = [
      { card: 1, layer: 'panel', side: 'f1' },
      { card: 1, layer: 'base', supply: 'teal' },
      { card: 2, layer: 'panel', sheet: 'S2' },
    ];
    const said = refusal(() => planCards({ ...world, pins }));
    expect(said.kind).toBe('clash');
    expect(said.received).toEqual([pins[0], pins[2]]);
    expect(said.message).toContain('the front of S1 on the panel of card 1');
    expect(said.mend).toContain('allow more sheets');
    const without = refusal(() => planCards({ ...world, pins: [pins[0]!], without: ['S1'] }));
    expect(without.received).toEqual([pins[0], { without: 'S1' }]);
  });

  test('among many pins the four that clash are named, and no other', () => {
    const sheets = [1, 2].map((n) => sheet(`S${n}`, side(`f${n}`, { white: 1 }), null, 3));
    const cards = Array.from({ length: 60 }, (_, at) => ({ number: at + 1, layout: FRAMED }));
    const takes = (cards: readonly number[]): Parameters<typeof slot>[1] =>
      cards.map((card) => ({ card, layout: FRAMED, paper: 'a' }));
    const numbers = cards.map(({ number }) => number);
    const slots = [0, 1, 2, 3].map((at) =>
      slot(`s${at}`, takes(numbers.filter((card) => card % 4 === at))),
    );
    const clash = [57, 58, 59, 60].map((card) => ({ card, layer: 'panel', sheet: 'S1' }));
    const others = numbers.map((card) => ({ card, layer: 'base', supply: 'teal' }));
    const pins = [...others, ...others, ...clash, ...others, ...others];
    const said = refusal(() => planCards({ ...ask({ sheets, cards, slots }), pins }));
    expect(said.kind).toBe('clash');
    expect(said.received).toEqual(clash);
  });

  test('a pin on something that is not there names its field', () => {
    const world = randomWorld(1, tiny);
    const said = refusal(() => planCards({ ...world, pins: [{ card: 9, layer: 'panel' }] }));
    expect([said.kind, said.field]).toEqual(['not-found', 'pins[0].card']);
  });
});

describe('the checker finds planted faults', () => {
  const world = randomWorld(7, { designs: 6, copies: 1, slots: 4, cards: 4 });
  const plan = planCards(world);
  const [first, ...rest] = plan.cards;

  test('a raised score, a raised value, a bound below the value', () => {
    expect(
      checkPlan(world, { ...plan, cards: [{ ...first!, score: 0.999 }, ...rest] }),
    ).not.toEqual([]);
    expect(checkPlan(world, { ...plan, value: plan.value + 0.01 })).not.toEqual([]);
    expect(checkPlan(world, { ...plan, bound: plan.value - 0.01 })).not.toEqual([]);
  });

  test('a sheet used beyond its copies, a sheet left out, a missing card', () => {
    const slots = Object.fromEntries(Object.keys(plan.slots).map((id) => [id, 's0']));
    expect(checkPlan(world, { ...plan, slots }).join()).toMatch(/4 times and has 1/);
    const out = { ...world, without: [Object.values(plan.slots)[0]!] };
    expect(checkPlan(out, plan).join()).toMatch(/left out/);
    expect(checkPlan(world, { ...plan, cards: rest }).join()).toMatch(/missing/);
  });

  test('a print that lies although the other side of its sheet would stand', () => {
    const print = (id: string, up: 0 | 90): ReturnType<typeof side> =>
      side(id, { white: 0.6, kelp: 0.4 }, { direction: 'one-way', up });
    const forest = ask({
      sheets: [sheet('A', print('stands', 0), print('lies', 90))],
      cards: [{ number: 1, layout: FRAMED }],
      slots: [slot('s', [{ card: 1, layout: FRAMED, paper: 'a' }])],
    });
    const good = planCards(forest);
    expect(checkPlan(forest, good)).toEqual([]);
    const layers = good.cards[0]!.layers.map((one) =>
      one.choice.kind === 'paper' ? { ...one, choice: { ...one.choice, side: 'lies' } } : one,
    );
    const bad = { ...good, cards: [{ ...good.cards[0]!, layers }] };
    expect(checkPlan(forest, bad).join()).toMatch(/the other side of A would stand/);
  });

  test('another side, another cardstock, a broken pin', () => {
    const swapped = first!.layers.map((one) =>
      one.choice.kind === 'paper'
        ? { ...one, choice: { ...one.choice, side: 's5f', sheet: 's5' } }
        : one,
    );
    expect(
      checkPlan(world, { ...plan, cards: [{ ...first!, layers: swapped }, ...rest] }),
    ).not.toEqual([]);
    const dyed = first!.layers.map((one) =>
      one.role === 'base' ? { ...one, choice: { kind: 'supply' as const, supply: 'nobody' } } : one,
    );
    expect(
      checkPlan(world, { ...plan, cards: [{ ...first!, layers: dyed }, ...rest] }),
    ).not.toEqual([]);
    const paper = first!.layers.find(({ choice }) => choice.kind === 'paper')!;
    const pins = [{ card: 1, layer: paper.layer, sheet: 'nobody' }];
    expect(checkPlan({ ...world, pins }, plan).join()).toMatch(/pin/);
  });
});
