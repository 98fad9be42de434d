import { INCH, units } from '../lengths/length.ts';
import type { Size } from '../lengths/length.ts';
import type { Box, Layer, Layout } from './layout.ts';

/** What of a layer no one sees and no glue needs. */
export interface SpareMiddle {
  readonly layer: string;
  /** The layer that hides it. */
  readonly under: string;
  readonly window: Size;
}

/** Paper that stays under the layer above, so that there is something to glue to (common practice, no source). */
const RIM = INCH / 2;
/** Smaller than this it is a scrap (common practice, no source). */
const WORTH_CUTTING = INCH;

/**
 * Layers of which the middle can be cut out for other pieces before they are glued.
 *
 *     ┌──────────────┐   the layer: a mat, say
 *     │ ┌──────────┐ │   the layer that hides its middle
 *     │ │ ┌──────┐ │ │
 *     │ │ │window│ │ │   half an inch inside the hiding layer
 *     │ │ └──────┘ │ │
 *     │ └──────────┘ │
 *     └──────────────┘
 *
 * Gives  the window, for layers whose middle lies under one rectangle that stays inside them; never the
 *        base, which is written in. A window is at least an inch wide both ways. A layer that itself
 *        gives up its middle hides nothing there.
 */
export function spareMiddles(layout: Layout): SpareMiddle[] {
  const { layers } = layout;
  return layers.flatMap((layer, index) => {
    if (layer.role === 'base') return [];
    const windows = layers.slice(index + 1).flatMap((above): SpareMiddle[] => {
      const hides = above.shape.kind === 'rectangle' && fillsItsBox(layer);
      if (!hides || !inside(above.box, layer.box)) return [];
      const window = {
        width: units(Math.max(0, above.box.width - 2 * RIM)),
        height: units(Math.max(0, above.box.height - 2 * RIM)),
      };
      const worth = Math.min(window.width, window.height) >= WORTH_CUTTING;
      return worth ? [{ layer: layer.id, under: above.id, window }] : [];
    });
    windows.sort((a, b) => area(b.window) - area(a.window));
    return windows.slice(0, 1);
  });
}

function fillsItsBox({ shape, box }: Layer): boolean {
  if (shape.kind === 'rectangle') return true;
  return shape.kind === 'rounded' && 4 * shape.radius <= Math.min(box.width, box.height);
}

function inside(inner: Box, outer: Box): boolean {
  return (
    inner.x >= outer.x &&
    inner.y >= outer.y &&
    inner.x + inner.width <= outer.x + outer.width &&
    inner.y + inner.height <= outer.y + outer.height
  );
}

function area({ width, height }: Size): number {
  return width * height;
}
