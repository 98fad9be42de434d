import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rectangleQuad } from '../../server/geometry/quad.ts';
import type { Settled } from '../../server/photo/settled.ts';
import { surenessOf } from '../../server/photo/sureness.ts';

/** An outline of which all four sides were seen, with table beside them, of the right size and without a rival. */
const CLEAR: Settled = {
  corners: rectangleQuad<'photo'>(0, 0, 100, 100),
  borne: [1, 1, 1, 1],
  outside: [1, 1, 1, 1],
  offSize: 0,
  lead: 3,
};

const part = fc.double({ min: 0, max: 1, noNaN: true });
const four = fc.tuple(part, part, part, part);
const settled = fc
  .record({
    borne: four,
    outside: four,
    offSize: fc.double({ min: 0, max: 0.2, noNaN: true }),
    lead: fc.double({ min: 0, max: 3, noNaN: true }),
  })
  .map((some): Settled => ({ ...CLEAR, ...some }));

describe('how sure the corners of a sheet are', () => {
  it('is all sure where everything was seen', () => {
    expect(surenessOf(CLEAR, false)).toBe(1);
  });

  it.each([
    ['the sides are off a sheet’s size by 2 %', { offSize: 0.02 }],
    ['no edge was seen at all', { borne: [0, 0, 0, 0] }],
    [
      'every side has an edge, no table was seen beside it, and other edges fit as well',
      { outside: [0, 0, 0, 0], lead: 0 },
    ],
  ] as readonly (readonly [string, Partial<Settled>])[])(
    'asks her to look where %s, and where two smaller doubts meet',
    (_, change) => {
      const doubts = { borne: [1, 1, 1, 0], outside: [1, 1, 0, 0], lead: 0 };
      for (const doubt of [change, doubts])
        expect(surenessOf({ ...CLEAR, ...doubt }, false)).toBeLessThan(0.5);
    },
  );

  it.each([
    ['one side has no edge', { borne: [1, 1, 1, 0] }],
    [
      'no table was seen beside it, but no other edges fit so well',
      { outside: [0, 0, 0, 0], lead: 0.15 },
    ],
  ] as readonly (readonly [string, Partial<Settled>])[])(
    'is in doubt, but does not ask, where %s',
    (_, change) => {
      const sure = surenessOf({ ...CLEAR, ...change }, false);
      expect(sure).toBeGreaterThanOrEqual(0.5);
      expect(sure).toBeLessThan(0.75);
    },
  );

  it('is less sure of a sheet told by its motifs', () => {
    expect(surenessOf(CLEAR, true)).toBeLessThan(surenessOf(CLEAR, false));
  });

  it('trusts the place where a sheet’s size fits, as far as it fits nowhere else', () => {
    const told = { ...CLEAR, outside: [0, 0, 0, 0], lead: 0 };
    const [alone, rival, none] = [0.1, 0.01, undefined].map((leadBySize) =>
      surenessOf({ ...told, ...(leadBySize === undefined ? {} : { leadBySize }) }, true),
    );
    expect(alone).toBe(1);
    expect(rival).toBeLessThan(0.5);
    expect(none).toBeLessThan(0.5);
  });

  it('asks her to look where the outline may lie beside its sheet', () => {
    expect(surenessOf({ ...CLEAR, isBeside: true }, false)).toBeLessThan(0.5);
  });

  it('lies between 0 and 1, and never grows when less was seen', () => {
    fc.assert(
      fc.property(settled, fc.boolean(), fc.nat(3), part, (one, byMotifs, side, less) => {
        const sure = surenessOf(one, byMotifs);
        expect(sure).toBeGreaterThanOrEqual(0);
        expect(sure).toBeLessThanOrEqual(1);
        const worse = (of: readonly number[]): number[] =>
          of.map((value, at) => (at === side ? value * less : value));
        for (const weaker of [
          { ...one, borne: worse(one.borne) },
          { ...one, outside: worse(one.outside) },
          { ...one, lead: one.lead * less },
          { ...one, offSize: one.offSize + less },
        ])
          expect(surenessOf(weaker, byMotifs)).toBeLessThanOrEqual(sure + 1e-9);
      }),
    );
  });
});
