import { describe, expect, test } from 'vitest';
import { offLine, printedPart } from '../../server/colour/company.ts';
import type { Lab } from '../../server/colour/lab.ts';
import type { Labels } from '../../server/colour/label-pixels.ts';

/** A lies at one end, B at the other, M just between; C is somewhere else. */
const A: Lab = { l: 90, a: 10, b: 0 };
const M: Lab = { l: 60, a: 10, b: 20 };
const B: Lab = { l: 30, a: 10, b: 40 };
const C: Lab = { l: 50, a: 20, b: -30 };
const COLOURS = [A, M, B, C];
const NEAR = 9;

/** A picture whose rows are all alike: one letter a pixel. */
function woven(row: string, rows = 12): Labels {
  const one = Array.from(row, (letter) => 'AMBC'.indexOf(letter));
  return {
    width: one.length,
    height: rows,
    of: Uint8Array.from({ length: one.length * rows }, (_, at) => one[at % one.length]!),
  };
}

describe('whether a colour between two others is printed or mixed', () => {
  test.each([
    ['the soft border of A and B', 'AAAAAMBBBBB', 0],
    ['a wider one, of a soft picture', 'AAAAMMMBBBB', 0],
    ['a stroke of B on A too thin to be seen pure', 'AAAAAMAAAAA', 0],
    ['a stroke on C, of which and of nothing M can be mixed', 'CCCCCMCCCCC', 1],
    ['a border of A and C, where M has no place', 'AAAAAMCCCCC', 1],
    ['a broad stroke on A', 'AAAAMMMMAAAA', 1],
    ['a stripe between A and B', 'AAAAMMMMMBBBB', 1],
  ])('%s', (_name, row, part) => {
    expect(printedPart(woven(row), COLOURS, 1, NEAR)).toBe(part);
  });

  test('strokes that look alike on both colours that they may be mixed of are printed', () => {
    expect(printedPart(woven('AAAAMAAAABBBBMBBBB'), COLOURS, 1, NEAR)).toBe(1);
  });

  test('half of it in either place is half printed', () => {
    expect(printedPart(woven('AAAAMBBBBBCCCCCMCCCCC'), COLOURS, 1, NEAR)).toBe(0.5);
  });

  test('a colour that shows nowhere is printed nowhere', () => {
    expect(printedPart(woven('AAAABBBB'), COLOURS, 1, NEAR)).toBe(0);
  });
});

test('a colour half way lies on the line, one beside it off it by its distance, one beyond by that to the end', () => {
  expect(offLine(M, A, B)).toBeCloseTo(0, 9);
  expect(offLine({ ...M, a: 14 }, A, B)).toBeCloseTo(4, 9);
  expect(offLine({ ...A, l: 90 + 3, b: -2 }, A, B)).toBeCloseTo(Math.hypot(3, 2), 9);
  expect(offLine(C, A, A)).toBeCloseTo(Math.hypot(40, 10, 30), 9);
});
