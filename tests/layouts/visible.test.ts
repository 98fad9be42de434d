import { describe, expect, it } from 'vitest';
import { borders } from '../../server/layouts/borders.ts';
import { catalogue } from '../../server/layouts/catalogue.ts';
import { outline } from '../../server/layouts/outline.ts';
import { visibleLayers } from '../../server/layouts/visible-layers.ts';
import { polygonArea } from '../../server/geometry/polygon.ts';
import { card, corners, layer } from './worlds.ts';

describe('what is seen of each layer', () => {
  it('leaves a ring of the mat and all of the panel on it', () => {
    const layout = card('100 x 100 mm', [
      layer('mat', '10 mm, 10 mm, 80 mm, 80 mm'),
      layer('panel', '20 mm, 20 mm, 60 mm, 60 mm'),
    ]);
    const [base, mat, panel] = visibleLayers(layout);
    expect([base!.area, mat!.area, panel!.area]).toEqual([3600, 2800, 3600]);
    expect(mat!.share).toBeCloseTo(0.28, 12);
    expect(mat!.parts).toHaveLength(1);
    expect(mat!.parts[0]!.holes).toHaveLength(1);
  });

  it('sees a panel in two parts when a strip crosses it', () => {
    const layout = card('100 x 100 mm', [
      layer('panel', '10 mm, 10 mm, 80 mm, 80 mm'),
      layer('strip', '0 mm, 40 mm, 100 mm, 20 mm'),
    ]);
    expect(visibleLayers(layout)[1]!.parts.map((part) => polygonArea(part.outer))).toEqual([
      2400, 2400,
    ]);
  });

  it('takes a circle for its area within 0.2 % (64 corners)', () => {
    const disc = layer('disc', '10 mm, 10 mm, 80 mm, 80 mm', { shape: { kind: 'circle' } });
    expect(polygonArea(outline(disc)) / (Math.PI * 40 ** 2)).toBeCloseTo(0.9984, 3);
  });

  it.each(catalogue.map((layout) => [layout.id, layout] as const))(
    'covers the whole front of %s: shares add up to 1',
    (_, layout) => {
      const total = visibleLayers(layout).reduce((sum, visible) => sum + visible.share, 0);
      expect(total).toBeCloseTo(1, 4);
    },
  );
});

describe('who borders whom', () => {
  it('measures a panel on its mat by its outline, and the mat on the base by its own', () => {
    const layout = card('100 x 100 mm', [
      layer('mat', '10 mm, 10 mm, 80 mm, 80 mm'),
      layer('panel', '20 mm, 20 mm, 60 mm, 60 mm'),
    ]);
    expect(borders(layout)).toEqual([
      { a: 'base', b: 'mat', length: 320 },
      { a: 'mat', b: 'panel', length: 240 },
    ]);
  });

  it('counts the seam of two panels side by side, less what a strip hides', () => {
    const layout = card('100 x 100 mm', [
      layer('left', '0 mm, 0 mm, 50 mm, 100 mm'),
      layer('right', '50 mm, 0 mm, 50 mm, 100 mm'),
      layer('strip', '20 mm, 40 mm, 60 mm, 20 mm'),
    ]);
    const found = borders(layout);
    const of = (a: string, b: string): number =>
      found.find((border) => border.a === a && border.b === b)?.length ?? 0;
    expect(of('left', 'right')).toBeCloseTo(80, 9);
    expect(of('left', 'strip')).toBeCloseTo(20 + 2 * 30, 9);
    expect(of('right', 'strip')).toBeCloseTo(20 + 2 * 30, 9);
  });

  it('follows a slant: the halves of a 30 x 40 panel meet along 50', () => {
    const at = '0 mm, 0 mm, 30 mm, 40 mm';
    const layout = card('30 x 40 mm', [
      layer('upper', at, { shape: corners([0, 0], [30, 0], [0, 40]) }),
      layer('lower', at, { shape: corners([30, 0], [30, 40], [0, 40]) }),
    ]);
    const found = borders(layout);
    expect(found.map(({ a, b }) => `${a}-${b}`)).toEqual(['upper-lower']);
    expect(found[0]!.length).toBeCloseTo(50, 9);
  });

  it('does not take a touch at a corner for a border', () => {
    const layout = card('100 x 100 mm', [
      layer('a', '0 mm, 0 mm, 50 mm, 50 mm'),
      layer('b', '50 mm, 50 mm, 50 mm, 50 mm'),
    ]);
    expect(borders(layout).some((border) => border.a === 'a' && border.b === 'b')).toBe(false);
  });
});
