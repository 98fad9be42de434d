import type { Layer, Layout } from '../layouts/layout.ts';
import type { Length, Ruler } from '../lengths/length.ts';
import { layerOf, lengthSaid } from './said.ts';

/**
 * How much of a mat or base shows round the layer that lies on it: 'shows 1/8 in all round the panel'.
 * Null when no layer lies wholly on it.
 */
export function revealSaid(layout: Layout, layer: Layer, ruler: Ruler): string | null {
  const above = layout.layers.slice(layout.layers.indexOf(layer) + 1);
  const upper = above.find((one) => liesOn(one, layer));
  if (upper === undefined) return null;
  const sides = revealOf(layer, upper);
  const name = layerOf(layout, upper.id);
  const { left, top, right, bottom } = sides;
  const said = (length: Length): string => lengthSaid(length, ruler);
  if (left === top && top === right && right === bottom)
    return left === 0 ? null : `shows ${said(left)} all round the ${name}`;
  if (left === right && top === bottom && left === 0)
    return `shows ${said(top)} above and below the ${name}`;
  if (left === right && top === bottom && top === 0)
    return `shows ${said(left)} left and right of the ${name}`;
  return null;
}

interface Reveal {
  readonly left: Length;
  readonly top: Length;
  readonly right: Length;
  readonly bottom: Length;
}

function liesOn({ box: upper }: Layer, { box: lower }: Layer): boolean {
  return (
    upper.x >= lower.x &&
    upper.y >= lower.y &&
    upper.x + upper.width <= lower.x + lower.width &&
    upper.y + upper.height <= lower.y + lower.height
  );
}

function revealOf({ box: lower }: Layer, { box: upper }: Layer): Reveal {
  return {
    left: (upper.x - lower.x) as Length,
    top: (upper.y - lower.y) as Length,
    right: (lower.x + lower.width - upper.x - upper.width) as Length,
    bottom: (lower.y + lower.height - upper.y - upper.height) as Length,
  };
}
