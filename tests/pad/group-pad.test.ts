import { describe, expect, test } from 'vitest';
import { difference } from '../../server/colour/difference.ts';
import { hexFromLab, labFromHex } from '../../server/colour/spaces.ts';
import { leadOf } from '../../server/pad/families.ts';
import { groupPad } from '../../server/pad/group-pad.ts';
import { sheetOf, sideOf } from './sides.ts';

const [KELP, CORAL, TEAL, SAND, SHELL] = ['#5c6a32', '#e8735a', '#0f5c63', '#d8c096', '#f4ecdf'];

/** Five sheets: two patterns in two colourways each, one sheet with everything on it. */
const pad = [
  sheetOf(
    'one',
    sideOf(
      'one-front',
      [
        [SHELL, 0.7],
        [CORAL, 0.3],
      ],
      1,
    ),
    sideOf('one-back', [[TEAL, 1]], 2),
  ),
  sheetOf(
    'two',
    sideOf(
      'two-front',
      [
        [SHELL, 0.6],
        [TEAL, 0.4],
      ],
      1,
    ),
    sideOf('two-back', [[CORAL, 1]], 3),
  ),
  sheetOf(
    'three',
    sideOf(
      'three-front',
      [
        [SAND, 0.8],
        [KELP, 0.2],
      ],
      4,
    ),
    null,
  ),
  sheetOf(
    'four',
    sideOf(
      'four-front',
      [
        [KELP, 0.9],
        [SAND, 0.1],
      ],
      4,
    ),
    sideOf('four-back', [[SHELL, 1]], 5),
  ),
  sheetOf(
    'five',
    sideOf(
      'five-front',
      [
        [SHELL, 0.4],
        [CORAL, 0.2],
        [TEAL, 0.2],
        [KELP, 0.1],
        [SAND, 0.1],
      ],
      6,
    ),
    sideOf('five-back', [[SAND, 1]], 7),
  ),
];
const grouping = groupPad(pad);

describe('the colour story', () => {
  test('holds the five colours that return, with the sides that carry them', () => {
    expect(grouping.story).toHaveLength(5);
    for (const hex of [KELP, CORAL, TEAL, SAND, SHELL])
      expect(grouping.story.some(({ lab }) => difference(lab, labFromHex(hex)) < 2)).toBe(true);
    const coral = grouping.story.find(({ lab }) => difference(lab, labFromHex(CORAL)) < 2);
    expect([...coral!.sides].sort()).toEqual(['five-front', 'one-front', 'two-back']);
  });

  test('shares are of the whole pad, largest first, and copies count', () => {
    const shares = grouping.story.map(({ share }) => share);
    expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
    expect([...shares].sort((p, q) => q - p)).toEqual(shares);
    const copied = groupPad(
      pad.map((sheet) => (sheet.id === 'two' ? { ...sheet, copies: 10 } : sheet)),
    );
    expect(difference(copied.story[0]!.lab, labFromHex(CORAL))).toBeLessThan(2);
  });

  test('a colour that stands on one side only is no story', () => {
    const stray = sheetOf('six', sideOf('six-front', [['#7a2a8c', 1]], 9), null);
    expect(groupPad([...pad, stray]).story).toHaveLength(5);
  });
});

describe('families', () => {
  test('every side stands in exactly one', () => {
    const all = pad.flatMap(({ front, back }) => [front, back]).filter((side) => side !== null);
    const named = grouping.families.flatMap(({ sides }) => sides);
    expect([...named].sort()).toEqual(all.map(({ id }) => id).sort());
    expect(new Set(grouping.families.map(({ name }) => name)).size).toBe(grouping.families.length);
  });

  test('a neutral ground does not lead when it carries a clear colour', () => {
    expect(difference(leadOf(pad[0]!.front!).lab, labFromHex(CORAL))).toBe(0);
    expect(difference(leadOf(pad[3]!.back!).lab, labFromHex(SHELL))).toBe(0);
    expect(difference(leadOf(pad[3]!.front!).lab, labFromHex(KELP))).toBe(0);
  });

  test('a grayish blue ground leads, a bluish gray one only carries', () => {
    const led = (ground: string): string => {
      const { lab } = leadOf(
        sideOf(
          'side',
          [
            [ground, 0.8],
            [CORAL, 0.2],
          ],
          3,
        ),
      );
      return hexFromLab(lab);
    };
    expect(led('#5e7080')).toBe('#5e7080');
    expect(led('#7a8288')).toBe(CORAL);
  });

  test('sides led by one colour share a family', () => {
    const coral = grouping.families.find(({ sides }) => sides.includes('one-front'));
    expect(coral!.sides).toContain('two-back');
    expect(coral!.sides).not.toContain('two-front');
  });
});

describe('pattern sets', () => {
  test('one drawing in two colourways is a set; lone drawings are none', () => {
    expect(grouping.patternSets.map((set) => [...set].sort())).toEqual([
      ['one-front', 'two-front'],
      ['four-front', 'three-front'],
    ]);
  });
});

describe('bridges', () => {
  test('only the sheet that carries most of the story', () => {
    expect(grouping.bridges).toEqual(['five']);
  });

  test('the strongest first', () => {
    const four = sheetOf(
      'six',
      sideOf(
        'six-front',
        [
          [SHELL, 0.5],
          [CORAL, 0.2],
          [TEAL, 0.2],
          [KELP, 0.1],
        ],
        8,
      ),
      null,
    );
    expect(groupPad([four, ...pad]).bridges).toEqual(['five', 'six']);
  });
});

test('an empty pad and a pad without sides have nothing to group', () => {
  const nothing = { story: [], families: [], patternSets: [], bridges: [] };
  expect(groupPad([])).toEqual(nothing);
  expect(groupPad([sheetOf('bare', null, null)])).toEqual(nothing);
});
