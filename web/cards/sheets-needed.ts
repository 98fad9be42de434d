import type { Layer, LayoutListing } from '../../server/contract/layouts.ts';
import { millimetres } from '../lengths/lengths.ts';

interface Chosen {
  readonly layout: LayoutListing;
  readonly count: number;
}

/**
 * The fewest sheets that these cards can take, by area alone: a floor, not a cutting scheme. A triangle may
 * share its rectangle with another.
 * The plan says the true number; this one answers at once while she counts.
 */
export function sheetsFor(
  chosen: readonly Chosen[],
  sheet: { width: string; height: string },
): number {
  const pieces = chosen.reduce((sum, { layout, count }) => sum + count * patternedArea(layout), 0);
  const whole = area(sheet.width, sheet.height);
  return whole === 0 ? 0 : Math.ceil(pieces / whole - 1e-9);
}

function patternedArea(layout: LayoutListing): number {
  return layout.layers
    .filter((layer: Layer) => layer.material === 'patterned')
    .reduce((sum, { box, shape }) => {
      const pairs = shape.kind === 'corners' && shape.points.length === 3;
      return sum + area(box.width, box.height) / (pairs ? 2 : 1);
    }, 0);
}

function area(width: string, height: string): number {
  return (millimetres(width) ?? 0) * (millimetres(height) ?? 0);
}
