import type { Layer } from '../../server/contract/layouts.ts';
import { millimetres } from '../lengths/lengths.ts';
import { boxOf } from './place-layer.ts';

/** The outline of a layer as the path of an SVG drawing in mm. */
export function layerPath(layer: Layer): string {
  const { x, y, width: w, height: h } = boxOf(layer);
  const { shape } = layer;
  const round = (points: readonly (readonly [number, number])[]): string =>
    `M${points.map(([px, py]) => `${x + px} ${y + py}`).join('L')}Z`;
  switch (shape.kind) {
    case 'circle':
      return `M${x} ${y + h / 2}a${w / 2} ${h / 2} 0 1 1 ${w} 0a${w / 2} ${h / 2} 0 1 1 ${-w} 0Z`;
    case 'banner': {
      const notch = millimetres(shape.notch) ?? 0;
      return round([
        [0, 0],
        [w, 0],
        [w - notch, h / 2],
        [w, h],
        [0, h],
      ]);
    }
    case 'corners':
      return round(
        shape.points.map((p) => [millimetres(p.x) ?? 0, millimetres(p.y) ?? 0] as const),
      );
    case 'rounded': {
      const r = millimetres(shape.radius) ?? 0;
      const turn = (dx: number, dy: number): string => `a${r} ${r} 0 0 1 ${dx} ${dy}`;
      return `M${x + r} ${y}h${w - 2 * r}${turn(r, r)}v${h - 2 * r}${turn(-r, r)}h${2 * r - w}${turn(-r, -r)}v${2 * r - h}${turn(r, -r)}Z`;
    }
    default:
      return round([
        [0, 0],
        [w, 0],
        [w, h],
        [0, h],
      ]);
  }
}
