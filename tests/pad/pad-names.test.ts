import { describe, expect, test } from 'vitest';
import type { Lab } from '../../server/colour/lab.ts';
import { nameOf } from '../../server/colour/names.ts';
import { padNames, withNames } from '../../server/pad/pad-names.ts';
import { sideOf } from '../supplies/sides.ts';

// Readings of one coral ink on sides of the sample pad, on both sides of a border between two names.
const CORALS: readonly Lab[] = [
  { l: 61, a: 41, b: 33 },
  { l: 60, a: 41, b: 32 },
  { l: 63, a: 42, b: 31 },
];
const SHELL: Lab = { l: 93, a: 1, b: 6 };

describe('names in a pad', () => {
  test('one ink that is read differently has one name, the commonest of its readings', () => {
    const plain = new Set(CORALS.map((lab) => nameOf(lab).words));
    expect([...plain].sort()).toEqual(['reddish orange', 'yellowish pink']);
    const sides = withNames(CORALS.map((coral) => sideOf([SHELL, coral])));
    const named = sides.map(({ palette }) => nameOf(palette.colours[1]!.lab).words);
    expect(new Set(named)).toEqual(new Set(['reddish orange']));
  });

  test('a colour keeps its figures, and one that is not of the pad its own name', () => {
    const named = padNames([sideOf([SHELL, CORALS[0]!])]);
    expect(named(CORALS[2]!)).toEqual({ ...CORALS[2]!, called: 'reddish orange' });
    const teal: Lab = { l: 35, a: -18, b: -12 };
    expect(named(teal)).toEqual(teal);
  });
});
