import type { Layer, Layout } from '../../server/contract/layouts.ts';
import { millimetres, written, type Ruler } from '../lengths/lengths.ts';

type Card = Layout['card'];
export type Measure = keyof Layer['box'];
type Boxed = Pick<Layer, 'box'>;

/** The unit in which a card is drawn is that in which its size is written. */
export function rulerOf(card: Card): Ruler {
  return card.width.trim().endsWith('mm') ? 'mm' : 'in';
}

/** A step of the ruler in mm: 1 mm, or 1/16 in. */
export function stepOf(ruler: Ruler): number {
  return ruler === 'mm' ? 1 : 25.4 / 16;
}

/** The marks that are easy to find on a trimmer, in mm: every millimetre, or eighths of an inch. */
export function easyMarkOf(ruler: Ruler): number {
  return ruler === 'mm' ? 1 : 25.4 / 8;
}

/** A length that a new layer begins with, on such a mark. */
export function onEasyMark(mm: number, ruler: Ruler): number {
  return Math.round(mm / easyMarkOf(ruler)) * easyMarkOf(ruler);
}

/** The narrowest piece that a trimmer holds, in whole steps: 3 mm, or 1/8 in. */
function narrowest(ruler: Ruler): number {
  return ruler === 'mm' ? 3 : 25.4 / 8;
}

export function boxOf({ box }: Boxed): Record<Measure, number> {
  const mm = (text: string): number => millimetres(text) ?? 0;
  return { x: mm(box.x), y: mm(box.y), width: mm(box.width), height: mm(box.height) };
}

/** A layer, or an element on one, moved by so many mm, on a step of the ruler and on the card. */
export function moved<T extends Boxed>(layer: T, card: Card, byX: number, byY: number): T {
  const ruler = rulerOf(card);
  const { x, y, width, height } = boxOf(layer);
  const box = { ...layer.box };
  if (byX !== 0) box.x = snapped(x + byX, 0, (millimetres(card.width) ?? 0) - width, ruler);
  if (byY !== 0) box.y = snapped(y + byY, 0, (millimetres(card.height) ?? 0) - height, ruler);
  return { ...layer, box };
}

/** The layer made larger by so many mm to the right and down; its other corner stays. */
export function grown(layer: Layer, card: Card, byX: number, byY: number): Layer {
  const ruler = rulerOf(card);
  const { x, y, width, height } = boxOf(layer);
  const least = narrowest(ruler);
  const box = { ...layer.box };
  if (byX !== 0) box.width = snapped(width + byX, least, (millimetres(card.width) ?? 0) - x, ruler);
  if (byY !== 0)
    box.height = snapped(height + byY, least, (millimetres(card.height) ?? 0) - y, ruler);
  return withShape(layer, box, ruler);
}

/** The layer with a length as she typed it, or null where it cannot be read. It is not held on the card: the service says where it leaves it. */
export function typed(layer: Layer, card: Card, what: Measure, text: string): Layer | null {
  const ruler = rulerOf(card);
  const mm = millimetres(text, ruler);
  if (mm === null || ((what === 'width' || what === 'height') && mm < narrowest(ruler) - 1e-6))
    return null;
  return withShape(layer, { ...layer.box, [what]: written(mm, ruler) }, ruler);
}

/** The nearest step of the ruler between two lengths; the upper one is never passed. */
function snapped(mm: number, least: number, most: number, ruler: Ruler): string {
  const step = stepOf(ruler);
  const steps = Math.min(Math.round(mm / step), Math.floor(most / step + 1e-6));
  return written(Math.max(Math.round(least / step), steps) * step, ruler);
}

/** Slanted corners keep their places within the box; a notch or rounding never outgrows it. */
function withShape(layer: Layer, box: Layer['box'], ruler: Ruler): Layer {
  const { shape } = layer;
  const before = boxOf(layer);
  const after = boxOf({ ...layer, box });
  const scaled = (text: string, side: 'width' | 'height'): string =>
    written(((millimetres(text) ?? 0) / before[side]) * after[side], ruler);
  const within = (text: string, most: number): string =>
    (millimetres(text) ?? 0) <= most
      ? text
      : written(Math.max(1, Math.floor(most / stepOf(ruler) + 1e-6)) * stepOf(ruler), ruler);
  switch (shape.kind) {
    case 'corners': {
      const points = shape.points.map(({ x, y }) => ({
        x: scaled(x, 'width'),
        y: scaled(y, 'height'),
      }));
      return { ...layer, box, shape: { kind: 'corners', points } };
    }
    case 'banner':
      return {
        ...layer,
        box,
        shape: { kind: 'banner', notch: within(shape.notch, after.width / 2) },
      };
    case 'rounded': {
      const radius = within(shape.radius, Math.min(after.width, after.height) / 2);
      return { ...layer, box, shape: { kind: 'rounded', radius } };
    }
    default:
      return { ...layer, box };
  }
}
