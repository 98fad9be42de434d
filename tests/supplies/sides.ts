import type { Lab } from '../../server/colour/lab.ts';
import type { PaletteColour } from '../../server/colour/palette.ts';
import type { Side } from '../../server/pad/pad.ts';
import type { Supply } from '../../server/supplies/supply.ts';

/** Hand-made colours: deep teal, coral, sand, shell. */
export const TEAL: Lab = { l: 35, a: -18, b: -12 };
export const CORAL: Lab = { l: 60, a: 40, b: 28 };
export const SAND: Lab = { l: 78, a: 3, b: 20 };
export const SHELL: Lab = { l: 93, a: 1, b: 4 };

export function sideOf(
  colours: readonly Lab[],
  { uncertainty = 0.2, photo = 'papers' }: { uncertainty?: number; photo?: string } = {},
): Side {
  const palette = colours.map((lab, index): PaletteColour => ({
    lab,
    share: 1 / colours.length,
    role: index === 0 ? 'ground' : 'accent',
    uncertainty,
  }));
  return {
    id: 'side',
    photo,
    corners: [
      { x: 0, y: 0 },
      { x: 1, y: 0 },
      { x: 1, y: 1 },
      { x: 0, y: 1 },
    ],
    palette: { colours: palette, tonal: false },
    pattern: { repeat: null, scale: 8, direction: 'none', up: 0, busyness: 0.4, descriptor: [] },
    confidence: 1,
    notes: [],
  };
}

export function supplyOf(lab: Lab, more: Partial<Supply> = {}): Supply {
  return {
    id: 'supply',
    kind: 'cardstock',
    name: 'Teal cardstock',
    lab,
    uncertainty: 0.2,
    photo: 'papers',
    sheets: null,
    ...more,
  };
}
