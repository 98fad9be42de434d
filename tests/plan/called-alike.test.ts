import { describe, expect, test } from 'vitest';
import type { Lab } from '../../server/colour/lab.ts';
import { nameOf } from '../../server/colour/names.ts';
import type { Sheet, Side } from '../../server/pad/pad.ts';
import type { Pin } from '../../server/plan/plan.ts';
import { planCards } from '../../server/plan/plan-cards.ts';
import type { Supply } from '../../server/supplies/supply.ts';
import { ask, BANDED, cardstock, sheet, side, slot } from './worlds.ts';

/** Two readings of one colour, either side of the border of two names of ISCC-NBS. */
const [YELLOW, ORANGE]: readonly [Lab, Lab] = [
  { l: 88, a: 0, b: 24 },
  { l: 88, a: 1.5, b: 24 },
];
const NAMES = [nameOf(YELLOW).words, nameOf(ORANGE).words] as const;

/** The paper with its sand, the first of its colours, read so. */
function withGround(print: Side, lab: Lab): Side {
  const [ground, ...others] = print.palette.colours;
  return { ...print, palette: { ...print.palette, colours: [{ ...ground!, lab }, ...others] } };
}

/** All that is said of a card with much of the one reading on its panel, little of the other on its strip and base. */
function saidOfCard(
  supplies: readonly Supply[],
  { pins = [], more = [] }: { pins?: readonly Pin[]; more?: readonly Sheet[] } = {},
): string {
  const panel = withGround(side('panel', { sand: 0.74, teal: 0.26 }), YELLOW);
  const strip = withGround(side('strip', { sand: 0.19, plum: 0.81 }, { scale: 25 }), ORANGE);
  const world = ask({
    sheets: [sheet('Sheet 3', panel, null), sheet('Sheet 8', strip, null), ...more],
    cards: [{ number: 1, layout: BANDED }],
    slots: [
      slot('one', [{ card: 1, layout: BANDED, paper: 'a' }]),
      slot('two', [{ card: 1, layout: BANDED, paper: 'b' }]),
    ],
    supplies,
  });
  const papers = [
    { card: 1, layer: 'panel', sheet: 'Sheet 3', side: 'panel' },
    { card: 1, layer: 'strip', sheet: 'Sheet 8', side: 'strip' },
  ];
  const { why, short, reasons } = planCards({ ...world, pins: [...papers, ...pins] }).cards[0]!;
  return [why, short, ...reasons.flatMap(({ text, short: brief }) => [text, brief])].join(' ');
}

/** How many of the two names are spoken. */
function spoken(said: string): string[] {
  return NAMES.filter((name) => new RegExp(`\\b${name}\\b`).test(said));
}

describe('one colour on one card', () => {
  test('lies either side of the border of two names in this world', () => {
    expect(NAMES).toEqual(['pale yellow', 'pale orange yellow']);
  });

  test('has one name in all that is said of the card, that of the paper that shows most of it', () => {
    const said = saidOfCard([{ ...cardstock('hers', 'sand'), lab: ORANGE }]);
    expect(said).toMatch(/share pale yellow/);
    expect(said).toMatch(/picks up the pale yellow/);
    expect(spoken(said)).toEqual(['pale yellow']);
  });

  test('has the name that stands on the shopping list where its cardstock is to buy', () => {
    const print = withGround(side('other', { sand: 0.9, kelp: 0.1 }), ORANGE);
    const said = saidOfCard([], { more: [sheet('Sheet 9', print, null)] });
    expect(said).toMatch(/Cardstock for the base is still to be bought/);
    expect(spoken(said)).toEqual(['pale orange yellow']);
  });

  test('leaves another colour its name', () => {
    const said = saidOfCard([cardstock('plum', 'plum')], {
      pins: [{ card: 1, layer: 'base', supply: 'plum' }],
    });
    expect(said).toMatch(/deep purple .*of (?:the strip|Sheet 8)/);
    expect(spoken(said)).toEqual(['pale yellow']);
  });
});
