import fc from 'fast-check';
import type { Lab } from '../../server/colour/lab.ts';

/** Any colour that print could show, roughly. */
export function anyLab(): fc.Arbitrary<Lab> {
  return fc.record({
    l: fc.double({ min: 0, max: 100, noNaN: true }),
    a: fc.double({ min: -80, max: 80, noNaN: true }),
    b: fc.double({ min: -80, max: 80, noNaN: true }),
  });
}
