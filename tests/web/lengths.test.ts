import { expect, test } from 'vitest';
import { millimetres, written } from '../../web/lengths/lengths.ts';

// One inch is 25.4 mm exactly: NIST Special Publication 811 (2008), appendix B.8.
test.each([
  ['4 1/4', 107.95],
  ['4-1/4 in', 107.95],
  ['5¾"', 146.05],
  ['13/16', 20.6375],
  ['15/16 in', 23.8125],
  ['11/2', 139.7],
  ['10 15/16', 277.8125],
  ['4in', 101.6],
  ['14,6 cm', 146],
  ['0.8', 20.32],
  ['148 mm', 148],
])('%s is read as %d mm', (text, mm) => {
  expect(millimetres(text)).toBeCloseTo(mm, 6);
});

test.each(['', 'in', '4 1/0', '4 feet', '1/2/3', '4..5', '-2'])('%s is no length', (text) => {
  expect(millimetres(text)).toBeNull();
});

test('every sixteenth of an inch that is written is read as the same length', () => {
  for (let sixteenths = 1; sixteenths <= 12 * 16; sixteenths += 1) {
    const mm = (sixteenths * 25.4) / 16;
    expect([written(mm, 'in'), millimetres(written(mm, 'in'))]).toEqual([
      written(mm, 'in'),
      expect.closeTo(mm, 6),
    ]);
  }
});
