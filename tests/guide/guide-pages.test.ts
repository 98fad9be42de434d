import { describe, expect, test } from 'vitest';
import { nameOf } from '../../server/colour/names.ts';
import { cutSteps } from '../../server/cutting/cut-steps.ts';
import { leftovers, worthKeeping } from '../../server/cutting/leftovers.ts';
import { stacksOf } from '../../server/cutting/stacks.ts';
import type { GuideAsk } from '../../server/guide/ask.ts';
import { cutLines } from '../../server/guide/cut-lines.ts';
import { guidePages } from '../../server/guide/guide-pages.ts';
import { PAGE } from '../../server/guide/page.ts';
import { faceUp, swatchPlace } from '../../server/guide/swatch-place.ts';
import { layingOf } from '../../server/guide/slot-pages.ts';
import { slotsOnScreen } from '../../server/guide/slots-on-screen.ts';
import { factsOf } from '../../server/guide/facts.ts';
import { stockNeeds } from '../../server/guide/stock-needs.ts';
import { stockSheetSaid, stockSheets } from '../../server/guide/stock-sheets.ts';
import { slotStacks } from '../../server/guide/slot-stacks.ts';
import { stepWords } from '../../server/guide/step-words.ts';
import { capital, sizeSaid } from '../../server/guide/said.ts';
import { polygonArea } from '../../server/geometry/polygon.ts';
import { INCH, toMillimetres, units } from '../../server/lengths/length.ts';
import { parseSize } from '../../server/lengths/parse-size.ts';
import type { PatternTraits } from '../../server/pattern/traits.ts';
import { Refusal } from '../../server/refusals/refusal.ts';
import { cornersOf, flat, textOf } from './flat.ts';
import { guideWorld, layoutsOf } from './world.ts';

const WORLDS = [
  ['all our US layouts', guideWorld(layoutsOf('us'), 'in')],
  ['all our A6 layouts', guideWorld(layoutsOf('a6'), 'mm')],
  ['one card', guideWorld(layoutsOf('us').slice(0, 1), 'in')],
] as const;

describe.each(WORLDS)('the guide of %s', (_, ask) => {
  const pages = guidePages(ask);
  const named = (part: string): string =>
    pages
      .filter(({ name }) => name.toLowerCase().includes(part.toLowerCase()))
      .flatMap(({ marks }) => textOf(marks))
      .join('\n');

  test('nothing stands off the page', () => {
    const off = pages.flatMap((page) =>
      flat(page.marks)
        .filter(({ clip }) => clip === null)
        .filter((mark) =>
          cornersOf(mark).some(
            ({ x, y }) => x < -0.6 || y < -0.6 || x > PAGE.width + 0.6 || y > PAGE.height + 0.6,
          ),
        )
        .map(({ mark }) => `${page.name}: ${mark.kind === 'words' ? mark.text : mark.kind}`),
    );
    expect(off).toEqual([]);
  });

  test('words do not run into each other, labels in the pictures of sheets aside', () => {
    const clashes = pages.flatMap((page) => {
      const words = flat(page.marks).filter(({ mark }) => mark.kind === 'words');
      const boxes = words.map((one) => box(cornersOf(one)));
      return words.flatMap((one, i) =>
        words.slice(i + 1).flatMap((other, k) => {
          const [a, b] = [boxes[i]!, boxes[i + 1 + k]!];
          const across = Math.min(a.right, b.right) - Math.max(a.left, b.left);
          const down = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
          const inPicture = [a, b].some(({ small }) => small);
          return across > 0.3 && down > 0.3 && !inPicture
            ? [`${page.name}: ${said(one)} over ${said(other)}`]
            : [];
        }),
      );
    });
    const ofWords = clashes.filter(
      (clash) => !/^(?:Cut the|Cardstock, sheet)/.test(clash) || /ruler|Dotted/.test(clash),
    );
    expect(ofWords).toEqual([]);
  });

  test('the cutting list names every piece with its exact size', () => {
    const list = named('Cutting list');
    for (const { layout } of ask.cards)
      for (const { id, role, box: place } of layout.layers) {
        expect(list).toContain(id.replaceAll('-', ' '));
        expect(list).toContain(sizeSaid(role === 'base' ? layout.fold.flat : place, ask.ruler));
      }
  });

  test('every sheet has its picture, a step for each cut, and the size of each piece', () => {
    ask.scheme.slots.forEach((slot, index) => {
      const text = named('Cut the').replaceAll('\n', ' ');
      const steps = stepWords(cutSteps(slot), slot, ask.ruler);
      expect(steps.length).toBeGreaterThan(0);
      expect(text).toContain(`Sheet ${index + 1}. Lay `);
      for (const { main } of steps) expect(text).toContain(main);
      for (const { piece } of slot.pieces) expect(text).toContain(sizeSaid(piece.size, ask.ruler));
    });
  });

  test('what is left of a sheet and an inch wide both ways is listed with its size', () => {
    const text = named('what is left').replaceAll('\n', ' ');
    const kept = leftovers(ask.scheme).filter(
      ({ size }) => Math.min(size.width, size.height) >= INCH,
    );
    for (const { size } of kept) expect(text).toContain(sizeSaid(size, ask.ruler));
    const onScreen = slotsOnScreen(ask).flatMap(({ left }) => left);
    expect(onScreen.length === 0).toBe(kept.length === 0);
    for (const { size } of kept)
      expect(onScreen.some((said) => said.endsWith(sizeSaid(size, ask.ruler)))).toBe(true);
  });

  test('what is stamped or cut with a die stands in the cutting list with its size', () => {
    const list = named('Cutting list');
    const elements = ask.cards.flatMap(({ layout }) => layout.elements ?? []);
    expect(elements.length > 0).toBe(ask.cards.length > 1);
    for (const { box, kind } of elements) {
      expect(list).toContain(sizeSaid(box, ask.ruler));
      expect(list).toContain(kind === 'stamp' ? 'stamped' : 'cut with its die');
    }
  });

  test('nothing of the lists is cut off with dots', () => {
    const lists = pages.filter(({ name }) => /cutting list|cardstock/i.test(name));
    const cut = lists.flatMap(({ marks }) => textOf(marks).filter((text) => text.endsWith('...')));
    expect(cut).toEqual([]);
  });

  test('a sheet of cardstock is drawn with the size that it has', () => {
    for (const sheet of stockSheets(stockNeeds(ask, factsOf(ask)), ask.cards))
      expect(named('Cardstock, sheet').replaceAll('\n', ' ')).toContain(
        // An only sheet has no number.
        `${sheet.scheme.slots.length === 1 ? sheet.stock.name : `of ${sheet.scheme.slots.length}`}, ${sizeSaid(sheet.scheme.sheet, ask.ruler)}.`,
      );
  });

  test('every card has its page and its label', () => {
    for (const { number, layout } of ask.cards) {
      const text = pages
        .filter(({ name }) => /^Cards? /.test(name) && new RegExp(`\\b${number}\\b`).test(name))
        .flatMap(({ marks }) => textOf(marks));
      expect(text).toContain(`Card ${number}: ${layout.name}`);
      expect(named('Labels').split('\n')).toContain(String(number));
    }
  });

  test('cautions stand where they belong', () => {
    expect(named('Thank-you cards')).toContain('A photo is not a measurement');
    const all = named('Before you begin').replaceAll('\n', ' ');
    for (const part of ['not a measurement', 'fresh blade', 'your local rules', 'post office'])
      expect(all).toContain(part);
    expect(named('').match(/your local/g)).toHaveLength(1);
    for (const { name, marks } of pages)
      if (/^(?:Cut the|Cardstock, sheet)/.test(name))
        expect(textOf(marks)).toContain(
          'Fingers behind the guard; blade covered when you put it down.',
        );
  });

  test('nothing is printed smaller than 9 points, the figures of fractions aside', () => {
    const small = pages.flatMap(({ name, marks }) =>
      flat(marks).flatMap(({ mark, place }) => {
        if (mark.kind !== 'words') return [];
        const [from, to] = [place({ x: 0, y: 0 }), place({ x: 0, y: mark.size })];
        const points = (Math.hypot(to.x - from.x, to.y - from.y) * 72) / 25.4;
        return points < 9 ? [`${name}: ${mark.text}, ${points.toFixed(1)}`] : [];
      }),
    );
    expect(small).toEqual([]);
  });

  test('a sheet of cardstock with at most 16 cuts has its picture and all its cuts on one page', () => {
    const texts = pages
      .filter(({ name }) => name.startsWith('Cardstock, sheet'))
      .map(({ marks }) => textOf(marks).join(' '));
    const sheets = stockSheets(stockNeeds(ask, factsOf(ask)), ask.cards);
    expect(sheets.length).toBeGreaterThan(0);
    for (const sheet of sheets.filter(({ steps }) => steps.length <= 16)) {
      const page = texts.find((text) =>
        text.includes(stockSheetSaid(sheet, ask.ruler).split('. ')[0]!),
      );
      for (const { main, number } of stepWords(sheet.steps, sheet.slot, ask.ruler))
        expect(page).toContain(`${number} ${main}`);
    }
  });

  test('sheets that are cut alike follow each other in print', () => {
    const facts = factsOf(ask);
    const titles = pages
      .filter(({ name }) => name.startsWith('Cut the papers'))
      .flatMap(({ marks }) => textOf(marks))
      .flatMap((text) => /^(Sheet \d+)\. /.exec(text)?.[1] ?? []);
    expect(titles).toEqual(
      slotStacks(ask, facts).flatMap((stack) => stack.map(({ name }) => name)),
    );
    const at = (name: string): number => titles.indexOf(name);
    for (const { slots } of stacksOf(ask.scheme, 3)) {
      const places = facts.slots
        .filter(({ slot }) => slots.includes(slot.id))
        .map(({ name }) => at(name))
        .sort((a, b) => a - b);
      expect(places.at(-1)! - places[0]!).toBe(places.length - 1);
    }
  });

  test('cards and sheets share pages where they fit', () => {
    const count = (start: RegExp): number => pages.filter(({ name }) => start.test(name)).length;
    const few = ask.cards.length === 1 ? 1 : 0.75 * ask.cards.length;
    expect(count(/^Cards? \d/)).toBeLessThanOrEqual(few);
    expect(count(/^Cut the/)).toBeLessThanOrEqual(ask.scheme.slots.length);
  });

  test('what she lacks is on the shopping list, once, for all its cards', () => {
    const list = named('shopping list');
    expect(list).toContain('Shopping list');
    const bases = stockNeeds(ask, factsOf(ask)).find(({ stock }) => !stock.toBuy)!;
    const stamped = ask.cards.some(({ layout }) =>
      layout.elements?.some(({ kind }) => kind === 'stamp'),
    );
    // She has six sheets of it.
    const short = bases.scheme!.slots.length > 6;
    const said = list.replaceAll('\n', ' ');
    const teal = nameOf({ l: 35, a: -18, b: -12 }).words;
    expect(said).toMatch(
      new RegExp(
        `${capital(teal)} cardstock \\d+ sheets? of [^.]*\\. For cards? [^.]* in all\\. Close to the ${teal} of Sheet \\d+, (?:front|back)\\.`,
      ),
    );
    // Figures once a colour, at the end: the cardstock and the ink of a stamp are one; her soot reads on every light strip.
    const more = short ? '; Shell cardstock 93, 1, 4' : '';
    expect(said).toContain(`In figures, CIELAB (D65): ${teal} 35, -18, -12${more}.`);
    expect(said.includes(`${capital(teal)} ink`)).toBe(stamped);
    const area =
      ask.ruler === 'in'
        ? /: about \d+ square inch(?:es)? in all\./
        : /: about \d+ square cm in all\./;
    expect(said).toMatch(area);
  });
});

interface Extent {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly small: boolean;
}

function box(corners: readonly { x: number; y: number }[]): Extent {
  const [xs, ys] = [corners.map(({ x }) => x), corners.map(({ y }) => y)];
  const [top, bottom] = [Math.min(...ys), Math.max(...ys)];
  return {
    left: Math.min(...xs),
    right: Math.max(...xs),
    top,
    bottom,
    small: bottom - top < 1,
  };
}

function said({ mark }: ReturnType<typeof flat>[number]): string {
  return mark.kind === 'words' ? mark.text : mark.kind;
}

describe('a guide on the other ruler', () => {
  test.each([
    ['us', 'mm', /\d in\b/, 'nearest millimetre'],
    ['a6', 'in', /\d mm\b/, 'nearest 1/16 in'],
  ] as const)(
    'of %s layouts says every length in %s, and that it rounds',
    (size, ruler, other, nearest) => {
      const text = guidePages(guideWorld(layoutsOf(size).slice(0, 6), ruler))
        .flatMap(({ marks }) => textOf(marks))
        .join('\n')
        .replaceAll(/Envelope: .*/g, '');
      expect(text).not.toMatch(other);
      expect(text.replaceAll('\n', ' ')).toContain(nearest);
    },
  );
});

describe('the cuts as drawn', () => {
  test.each(WORLDS)(
    'of %s: pieces and left-overs fill the sheet, pieces lie between cuts',
    (_, ask) => {
      const { sheet } = ask.scheme;
      for (const slot of ask.scheme.slots) {
        const { lines, rests } = cutLines(cutSteps(slot), sheet);
        const pieces = slot.pieces.reduce(
          (sum, { piece: { size }, pair }) =>
            sum +
            (toMillimetres(size.width) * toMillimetres(size.height)) / (pair === undefined ? 1 : 2),
          0,
        );
        const left = rests.reduce((sum, rest) => sum + polygonArea(rest), 0);
        const whole = toMillimetres(sheet.width) * toMillimetres(sheet.height);
        expect(pieces + left).toBeCloseTo(whole, 4);
        const xs = [0, toMillimetres(sheet.width), ...lines.map(({ from }) => from.x)];
        for (const placed of slot.pieces) {
          const width = placed.turned ? placed.piece.size.height : placed.piece.size.width;
          for (const edge of [placed.x, placed.x + width])
            expect(xs.some((x) => Math.abs(x - edge / 320) < 1e-6)).toBe(true);
        }
      }
    },
  );
});

describe('where a piece lies on its swatch', () => {
  const slot = guideWorld(layoutsOf('us').slice(0, 1)).scheme.slots[0]!;
  const piece = { ...slot.pieces[0]!.piece, size: parseSize('4 x 5 in') };
  const placed = { piece, x: units(8128), y: units(2 * 8128), turned: false };
  const sheet = parseSize('6 x 6 in');
  const pattern = (up: PatternTraits['up']): PatternTraits => ({
    repeat: null,
    scale: 5,
    direction: 'one-way',
    up,
    busyness: 0.5,
    descriptor: [],
  });

  test('mirrored, when it shows the face that lies down', () => {
    expect(swatchPlace(placed, sheet, false, null)).toMatchObject({ x: 25.4, y: 50.8 });
    expect(swatchPlace(placed, sheet, true, null)).toMatchObject({ x: 25.4, y: 50.8 });
    const aside = { ...placed, x: units(0) };
    expect(swatchPlace(aside, sheet, true, null).x).toBeCloseTo(50.8, 9);
  });

  test.each([
    [false, 0, 0],
    [false, 180, 180],
    [false, 90, 0],
    [true, 90, 90],
    [true, 270, 270],
    [true, 0, 90],
  ] as const)('turned %s, up %d: it is spun by %d so that the print stands', (turned, up, spun) => {
    expect(swatchPlace({ ...placed, turned }, sheet, false, pattern(up)).turned).toBe(spun);
  });

  test('the face that most pieces show lies up', () => {
    const three = { ...slot, pieces: [placed, placed, placed] };
    expect(faceUp(three, () => 'back')).toBe('back');
    let count = 0;
    expect(faceUp(three, () => (count++ === 0 ? 'back' : 'front'))).toBe('front');
  });
});

test('two sheets of one paper are told apart wherever they are named', () => {
  const ask = guideWorld(layoutsOf('us').slice(0, 3));
  const [first] = ask.pad.sheets;
  const slots = Object.fromEntries(ask.scheme.slots.map(({ id }) => [id, first!.id]));
  const names = factsOf({ ...ask, plan: { ...ask.plan, slots } }).slots.map(({ name }) => name);
  expect(names.slice(0, 2)).toEqual(['Sheet 1 (first)', 'Sheet 1 (second)']);
  expect(new Set(names).size).toBe(names.length);
  expect(factsOf(ask).slots[0]!.name).toBe('Sheet 1');
});

test('a plan that speaks of what is gone is refused with a mend', () => {
  const ask = guideWorld(layoutsOf('us').slice(0, 2));
  const gone = { ...ask, supplies: [] };
  expect(() => guidePages(gone)).toThrow(Refusal);
  expect(() => guidePages({ ...ask, pad: { ...ask.pad, sheets: [] } })).toThrow(/no longer there/);
});

test('a sheet whose pieces come out of kept parts is not to be opened, and leaves nothing', () => {
  const ask = guideWorld(layoutsOf('us').slice(0, 4));
  const slot = ask.scheme.slots.find((one) => worthKeeping(one).length > 0)!;
  const size = parseSize('6 x 6 in');
  const fromParts = slot.pieces.map(({ piece }) => ({ slot: slot.id, piece: piece.id, size }));
  const pages = [guidePages(ask), guidePages({ ...ask, fromParts })];
  const [without, with_] = pages.map((all) => all.flatMap(({ marks }) => textOf(marks)).join(' '));
  const name = factsOf(ask).slots.find((one) => one.slot === slot)!.name;
  expect(without).not.toContain('Open no new sheet');
  expect(with_!.match(/Open no new sheet/g)).toHaveLength(1);
  expect(with_).toContain(`${name}. Open no new sheet`);
  for (const { piece } of slot.pieces)
    expect(with_).toContain(
      `card ${piece.card} ${piece.layer.replaceAll('-', ' ')} out of 6 x 6 in`,
    );
  const listed = pages.map((all) =>
    all
      .filter((page) => /what is left/i.test(page.name))
      .flatMap(({ marks }) => textOf(marks))
      .includes(name),
  );
  expect(listed).toEqual([true, false]);
});

test('sheets are cut by their numbers, but for those that follow the first that is cut alike', () => {
  const ask = guideWorld([...layoutsOf('us').slice(0, 3), ...layoutsOf('us').slice(0, 3)]);
  const { slots } = ask.scheme;
  // The first slot is cut from the last sheet of the pad, and so on.
  const order = ask.pad.sheets.toReversed();
  const turned = { ...ask, pad: { ...ask.pad, sheets: order } };
  const numberOf = (name: string): number => order.findIndex(({ label }) => label === name);
  const shown = slotsOnScreen(turned);
  expect(shown).toHaveLength(slots.length);
  const firsts = shown.filter(({ follows }) => follows === null).map(({ name }) => numberOf(name));
  expect(firsts).toEqual(firsts.toSorted((a, b) => a - b));
  expect(firsts.length).toBeLessThan(slots.length);
  for (const [at, { follows, laying }] of shown.entries()) {
    if (follows === null) continue;
    const before = shown[at - 1]!;
    expect([before.name, before.follows]).toContain(follows);
    expect(laying).toContain('They follow each other');
    expect(laying).toContain(/\d+/.exec(follows)![0]);
  }
});

test('a sheet that stays whole lies in no stack: its block names no others, and no other names it', () => {
  const ask = guideWorld([...layoutsOf('us').slice(0, 3), ...layoutsOf('us').slice(0, 3)]);
  const facts = factsOf(ask);
  const ofSlot = (id: string) => facts.slots.find(({ slot }) => slot.id === id)!;
  const alikeIn = (whole: GuideAsk, id: string): string[] =>
    /Cut alike: ([^.]*)/.exec(layingOf(whole, facts, ofSlot(id)))?.[1]!.match(/\d+/g) ?? [];
  const numbers = (ids: readonly string[]): string[] =>
    ids.map((id) => /\d+/.exec(ofSlot(id).name)![0]);
  const stacks = stacksOf(ask.scheme, 3).filter(({ slots }) => slots.length > 1);
  expect(stacks.length).toBeGreaterThan(0);
  for (const { slots } of stacks) {
    const [spared, ...others] = slots;
    const fromParts = ofSlot(spared!).slot.pieces.map(({ piece }) => ({
      slot: spared!,
      piece: piece.id,
      size: ask.scheme.sheet,
    }));
    for (const id of slots)
      expect(alikeIn(ask, id)).toEqual(numbers(slots.filter((one) => one !== id)));
    expect(alikeIn({ ...ask, fromParts }, spared!)).toEqual([]);
    for (const id of others)
      expect(alikeIn({ ...ask, fromParts }, id)).not.toContain(numbers([spared!])[0]);
  }
});

test('the place of a sheet that stays whole in a stack is given to the next one', () => {
  const layout = layoutsOf('us')[0]!;
  const one = guideWorld([layout]);
  const slot = one.scheme.slots[0]!;
  // Five sheets of one way of cutting, of which no more than two lie on each other.
  const copies = [1, 2, 3, 4, 5].map((at) => ({ ...slot, id: `slot-${at}` }));
  const sheets = copies.map((_, at) => ({
    ...one.pad.sheets[0]!,
    id: `sheet-${at + 1}`,
    label: `Sheet ${at + 1}`,
  }));
  const ask: GuideAsk = {
    ...one,
    stack: 2,
    pad: { ...one.pad, sheets },
    scheme: { ...one.scheme, slots: copies },
    plan: {
      ...one.plan,
      slots: Object.fromEntries(copies.map(({ id }, at) => [id, `sheet-${at + 1}`])),
    },
    fromParts: slot.pieces.map(({ piece }) => ({
      slot: 'slot-2',
      piece: piece.id,
      size: one.scheme.sheet,
    })),
  };
  const facts = factsOf({
    ...ask,
    plan: {
      ...ask.plan,
      cards: ask.plan.cards.map((card) => ({
        ...card,
        layers: card.layers.map((layer) =>
          layer.choice.kind === 'paper'
            ? { ...layer, choice: { ...layer.choice, slot: 'slot-1' } }
            : layer,
        ),
      })),
    },
  });
  const alike = facts.slots.map(
    (each) => /Cut alike: ([^.]*)/.exec(layingOf(ask, facts, each))?.[1],
  );
  expect(alike).toEqual(['Sheet 3', undefined, 'Sheet 1', 'Sheet 5', 'Sheet 4']);
});
