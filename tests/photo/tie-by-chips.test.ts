import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { difference } from '../../server/colour/difference.ts';
import { labFromLinear } from '../../server/colour/spaces.ts';
import { tieByChips } from '../../server/photo/tie-by-chips.ts';
import type { Chip, Light3 } from '../../server/photo/tie-by-chips.ts';

const GREYS: Light3[] = [0.86, 0.36, 0.09, 0.03].map((y) => [y, y, y]);
const COLOURS: Light3[] = [
  [0.45, 0.06, 0.05],
  [0.05, 0.14, 0.36],
  [0.55, 0.42, 0.05],
];
const OTHERS: Light3[] = [
  [0.3, 0.2, 0.12],
  [0.12, 0.25, 0.2],
  [0.5, 0.3, 0.28],
  [0.1, 0.08, 0.2],
];

/** A second photo: other light, another exposure, a phone's tone curve, colours made livelier. */
function otherPhoto([r, g, b]: Light3): Light3 {
  const mean = (r + g + b) / 3;
  const lively = [r, g, b].map((value) => mean + 1.12 * (value - mean));
  const gains = [0.8, 0.62, 0.45];
  return lively.map((value, k) => (gains[k]! * Math.max(1e-4, value)) ** 1.12) as unknown as Light3;
}

function chipsOf(photo: (light: Light3) => Light3): Chip[] {
  return [
    ...GREYS.map((wanted) => ({ wanted, seen: photo(wanted), grey: true })),
    ...COLOURS.map((wanted) => ({ wanted, seen: photo(wanted), grey: false })),
  ];
}

function apart(p: Light3, q: Light3): number {
  const lab = ([r, g, b]: Light3): ReturnType<typeof labFromLinear> => labFromLinear({ r, g, b });
  return difference(lab(p), lab(q));
}

describe('tying photos by chips', () => {
  it('leaves a photo alone that agrees already', () => {
    const tie = tieByChips(chipsOf((light) => light));
    for (const light of OTHERS) expect(apart(tie(light), light)).toBeLessThan(0.05);
  });

  it('brings colours that are no chips close to what the first photo showed', () => {
    const tie = tieByChips(chipsOf(otherPhoto));
    for (const light of OTHERS) {
      const before = apart(otherPhoto(light), light);
      const after = apart(tie(otherPhoto(light)), light);
      expect(before).toBeGreaterThan(5);
      expect(after).toBeLessThan(1.5);
    }
  });

  it('undoes any gain of the channels exactly', () => {
    const gain = fc.double({ min: 0.3, max: 1.6, noNaN: true });
    fc.assert(
      fc.property(gain, gain, gain, (r, g, b) => {
        const photo = (light: Light3): Light3 => [r * light[0], g * light[1], b * light[2]];
        const tie = tieByChips(chipsOf(photo));
        return OTHERS.every((light) => apart(tie(photo(light)), light) < 0.1);
      }),
      { seed: 7 },
    );
  });
});
