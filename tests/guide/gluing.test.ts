import { describe, expect, test } from 'vitest';
import { slants } from '../../server/cutting/finishing-steps.ts';
import { gluingSaid } from '../../server/guide/gluing.ts';
import { keptCorner, squareCorner } from '../../server/guide/square-corner.ts';
import { catalogue } from '../../server/layouts/catalogue.ts';
import type { Layer, Layout } from '../../server/layouts/layout.ts';
import { INCH, units } from '../../server/lengths/length.ts';

const layoutOf = (id: string): Layout => catalogue.find((layout) => layout.id === id)!;
const layerOf = (layout: Layout, id: string): Layer => layout.layers.find((one) => one.id === id)!;

describe('a gate card stays a card that opens', () => {
  const gate = layoutOf('gate-us');

  test('the latch is glued to one flap only', () => {
    const said = gluingSaid(gate, layerOf(gate, 'tag-mat'), 'in');
    expect(said).toContain('only its left half, to the left flap');
    expect(said).toContain('right half stays loose');
  });

  test('what lies on the latch is glued to it, not to the flaps', () => {
    expect(gluingSaid(gate, layerOf(gate, 'tag'), 'in')).toContain('on the tag mat only');
  });

  test('a panel of one flap is glued as on any card', () => {
    expect(gluingSaid(gate, layerOf(gate, 'left-flap'), 'in')).not.toContain('loose');
  });
});

describe('slanted pieces', () => {
  const size = { width: units(4 * INCH), height: units(3 * INCH) };
  const zero = units(0);
  const lowerRight = {
    kind: 'corners',
    points: [
      { x: size.width, y: zero },
      { x: size.width, y: size.height },
      { x: zero, y: size.height },
    ],
  } as const;

  test('a triangle is laid by its square corner, and that part is kept', () => {
    expect(squareCorner(lowerRight, size)).toEqual({ right: true, lower: true });
    expect(keptCorner(lowerRight, size, { x: size.width, y: 0 }, { x: 0, y: size.height })).toBe(
      'lower right',
    );
  });

  test('each slant of the catalogue tells which part to keep', () => {
    const slanted = catalogue.flatMap(({ layers }) =>
      layers.filter(({ shape }) => shape.kind === 'corners'),
    );
    expect(slanted.length).toBeGreaterThan(4);
    for (const { shape, box } of slanted) {
      const cuts = slants(shape, box);
      expect(cuts.length).toBeGreaterThan(0);
    }
  });

  test('the two halves of a panel parted from corner to corner go to opposite corners of the card', () => {
    const halved = layoutOf('halved-us');
    const said = ['upper', 'lower'].map((id) => gluingSaid(halved, layerOf(halved, id), 'in'));
    expect(said.every((words) => words.includes('square'))).toBe(true);
    expect(said[0]).not.toEqual(said[1]);
  });
});
