import { foldOf } from '../../server/layouts/folds.ts';
import type { Fold, Layer, Layout, Shape } from '../../server/layouts/layout.ts';
import { units } from '../../server/lengths/length.ts';
import { parsePosition } from '../../server/lengths/parse-length.ts';
import { parseSize } from '../../server/lengths/parse-size.ts';

/** A layer in a few words: its box as `x, y, width, height` with units. */
export function layer(id: string, at: string, more: Partial<Layer> = {}): Layer {
  const [x, y, width, height] = at.split(',').map((text) => parsePosition(text.trim()));
  const box = { x: x!, y: y!, width: width!, height: height! };
  const plain = { role: 'panel', material: 'patterned', paper: id } as const;
  return { id, box, shape: { kind: 'rectangle' }, ...plain, ...more };
}

/** A small card for tests: base and the given layers on it. */
export function card(size: string, layers: readonly Layer[], fold: Fold['kind'] = 'none'): Layout {
  const whole = parseSize(size);
  const base: Layer = {
    id: 'base',
    role: 'base',
    material: 'cardstock',
    paper: 'base',
    shape: { kind: 'rectangle' },
    box: { x: units(0), y: units(0), ...whole },
  };
  return {
    id: 'small',
    name: 'Small',
    card: whole,
    fold: foldOf(fold, whole),
    layers: [base, ...layers],
  };
}

/** Corners in millimetres from the box's upper left. */
export function corners(...points: readonly (readonly [number, number])[]): Shape {
  return {
    kind: 'corners',
    points: points.map(([x, y]) => ({
      x: units(Math.round(x * 320)),
      y: units(Math.round(y * 320)),
    })),
  };
}
