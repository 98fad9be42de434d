import { converter } from 'culori';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ISCC_NBS } from '../../server/colour/iscc-nbs.ts';
import type { Lab } from '../../server/colour/lab.ts';
import { nameOf } from '../../server/colour/names.ts';
import { labFromHex } from '../../server/colour/spaces.ts';
import { anyLab } from './any-lab.ts';

const NEUTRAL = ['white', 'gray', 'black'];

/**
 * Published averages of a 24-patch colour target (CIELAB, D50, made after November 2014), as given with the
 * open photo set JTvD/arcu_colorchecker, with the patch names that hold a word of the 13 groups and that group.
 */
const TARGET = [
  ['blue sky', 'blue', 49.32, -3.82, -22.54],
  ['blue flower', 'blue', 54.94, 9.61, -24.79],
  ['bluish green', 'green', 70.48, -32.26, -0.37],
  ['orange', 'orange', 62.73, 35.83, 56.5],
  ['purplish blue', 'blue', 39.43, 10.75, -45.17],
  ['moderate red', 'red', 50.57, 48.64, 16.67],
  ['purple', 'purple', 30.1, 22.54, -20.87],
  ['yellow green', 'yellow green', 71.77, -24.13, 58.19],
  ['orange yellow', 'yellow', 71.51, 18.24, 67.37],
  ['blue', 'blue', 28.37, 15.42, -49.8],
  ['green', 'green', 54.38, -39.72, 32.27],
  ['red', 'red', 42.43, 51.05, 28.62],
  ['yellow', 'yellow', 81.8, 2.67, 80.41],
  ['white', 'white', 95.19, -1.03, 2.93],
  ['black', 'black', 20.64, 0.07, -0.46],
] as const;

const GREYS = [
  ['neutral 8', 81.29, -0.57, 0.44],
  ['neutral 6.5', 66.89, -0.75, -0.06],
  ['neutral 5', 50.76, -0.13, 0.14],
  ['neutral 3.5', 35.63, -0.46, -0.48],
] as const;

/** culori adapts D50 to D65 by Bradford's method. */
const underD65 = converter('lab65');
const adapted = (l: number, a: number, b: number): Lab => {
  const lab = underD65({ mode: 'lab', l, a, b });
  return { l: lab.l, a: lab.a, b: lab.b };
};

describe('ISCC-NBS names', () => {
  // Kelly, Judd (1976), NBS Special Publication 440: the numbers of names on its three levels.
  test('the system is whole: 13 groups, 29 middle names, 267 fine names', () => {
    expect(new Set(ISCC_NBS.map(([group]) => group)).size).toBe(13);
    expect(new Set(ISCC_NBS.map(([, middle]) => middle)).size).toBe(29);
    expect(new Set(ISCC_NBS.flatMap(([, , fine]) => fine.map(([name]) => name))).size).toBe(267);
  });

  test.each(GREYS)('the published grey %s is a grey at every level', (_name, l, a, b) => {
    const name = nameOf(adapted(l, a, b));
    expect(name.group).toBe('gray');
    expect(name.middle).toBe('gray');
    expect(name.fine).toMatch(/^(?:light|medium|dark) gray$/);
    expect(name.words).toMatch(/gray$/);
  });

  test('exact greys are neutral from black to white', () => {
    for (let l = 0; l <= 100; l += 0.5) expect(NEUTRAL).toContain(nameOf({ l, a: 0, b: 0 }).group);
  });

  test('the patch names of a published colour target agree at 13 groups, 9 of 10 at least', () => {
    const right = TARGET.filter(([, group, l, a, b]) => nameOf(adapted(l, a, b)).group === group);
    expect(right.length).toBeGreaterThanOrEqual(Math.ceil(0.9 * TARGET.length));
  });

  test('each centroid carries its own name', () => {
    for (const [group, middle, fine] of ISCC_NBS)
      for (const [name, hex] of fine) {
        const found = nameOf(labFromHex(hex));
        expect(found).toMatchObject({
          group: group.toLowerCase(),
          middle: middle.toLowerCase(),
          fine: name.toLowerCase(),
        });
      }
  });

  test.each([
    ['#66ada4', 'light bluish green'],
    ['#3e1d1e', 'dark reddish brown'],
    ['#e25822', 'reddish orange'],
    ['#317873', 'bluish green'],
    ['#848482', 'gray'],
    ['#f0ead6', 'yellowish white'],
  ])('%s is shown as %s', (hex, words) => {
    expect(nameOf(labFromHex(hex)).words).toBe(words);
  });

  test('a name does not depend on what was asked before', () => {
    fc.assert(
      fc.property(anyLab(), anyLab(), (lab, other) => {
        const first = nameOf(lab);
        nameOf(other);
        expect(nameOf({ ...lab })).toEqual(first);
      }),
      { seed: 1, numRuns: 50 },
    );
  });
});
