import type { Layer } from '../../server/contract/layouts.ts';
import type { Room } from '../../server/layouts/greeting-room.ts';
import { millimetres } from '../lengths/lengths.ts';
import { boxOf } from './place-layer.ts';

/** Rows in which a shape is looked at: finer than the air that is left around what is laid on it. */
const ROWS = 12;

type Span = readonly [from: number, to: number];

/** What lies within the box of a layer, but beside its shape, row by row, in mm on the card. */
export function besideShape(layer: Layer): Room[] {
  const { x, y, width, height } = boxOf(layer);
  const spanAt = spansOf(layer, width, height);
  if (spanAt === null) return [];
  return Array.from({ length: ROWS }, (_, row) => [row / ROWS, (row + 1) / ROWS] as const).flatMap(
    ([from, to]) => {
      const spans = [from, (from + to) / 2, to].map((part) => spanAt(part * height));
      const start = Math.max(...spans.map(([left]) => left));
      const end = Math.max(start, Math.min(...spans.map(([, right]) => right)));
      const band = { y: y + from * height, height: (to - from) * height };
      return [
        { ...band, x, width: start },
        { ...band, x: x + end, width: width - end },
      ].filter((one) => one.width > 0);
    },
  );
}

/** From where to where a shape reaches at a height within its box; null for one that fills its box. */
function spansOf({ shape }: Layer, width: number, height: number): ((at: number) => Span) | null {
  switch (shape.kind) {
    case 'rectangle':
      return null;
    case 'circle':
      return (at) => round(at, height / 2, width / 2, width, height);
    case 'rounded': {
      const radius = millimetres(shape.radius) ?? 0;
      return (at) => round(at, radius, radius, width, height);
    }
    case 'banner': {
      const notch = millimetres(shape.notch) ?? 0;
      return (at) => [0, width - notch * (1 - Math.abs(1 - (2 * at) / height))];
    }
    case 'corners': {
      const corners = shape.points.map((p): Span => [millimetres(p.x) ?? 0, millimetres(p.y) ?? 0]);
      return (at) => crossed(corners, at);
    }
  }
}

/** A box with corners that are quarters of an ellipse so high and so wide. */
function round(at: number, high: number, wide: number, width: number, height: number): Span {
  const off = Math.min(high, Math.max(0, high - Math.min(at, height - at)));
  const inset = high === 0 ? 0 : wide * (1 - Math.sqrt(1 - (off / high) ** 2));
  return [inset, width - inset];
}

/** Where a level line enters and leaves a shape of straight edges. */
function crossed(corners: readonly Span[], at: number): Span {
  const met = corners.flatMap(([x, y], n) => {
    const [toX, toY] = corners[(n + 1) % corners.length]!;
    if (at < Math.min(y, toY) || at > Math.max(y, toY)) return [];
    return y === toY ? [x, toX] : [x + ((at - y) / (toY - y)) * (toX - x)];
  });
  return met.length === 0 ? [0, 0] : [Math.min(...met), Math.max(...met)];
}
