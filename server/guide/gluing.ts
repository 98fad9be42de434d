import type { Layer, Layout } from '../layouts/layout.ts';
import type { Length, Ruler, Size } from '../lengths/length.ts';
import { layerOf, lengthSaid } from './said.ts';
import { squareCorner } from './square-corner.ts';

/** Where a layer is glued, measured from the card's edges: 'glue it 1/8 in from the left and 1 in from the top'. */
export function gluingSaid(layout: Layout, layer: Layer, ruler: Ruler): string {
  if (layer.role === 'base') return '';
  return (
    latchSaid(layout, layer, ruler) ??
    bySquareCorner(layout.card, layer, ruler) ??
    byBox(layout.card, layer, ruler)
  );
}

/**
 * A layer across the line where the two flaps of a gate meet, or over the free edge of a single flap, would
 * glue the card shut: it is glued to one flap, and what lies on it to it.
 */
function latchSaid(layout: Layout, layer: Layer, ruler: Ruler): string | null {
  if (layout.fold.kind !== 'gate' && layout.fold.kind !== 'flap') return null;
  const sideways = layout.fold.scoreFrom === 'left';
  const latch = layout.layers.find((one) => one.role !== 'base' && spans(layout, one));
  if (latch === undefined || !spans(layout, layer)) return null;
  if (latch !== layer) {
    const name = layerOf(layout, latch.id);
    return `${byBox(latch.box, within(layer, latch), ruler, ` of the ${name}`)}, on the ${name} only`;
  }
  const place = sideways
    ? `${lengthSaid(layer.box.x, ruler)} from the left edge of the card`
    : `${lengthSaid(layer.box.y, ruler)} from the top edge of the card`;
  const [half, rest] = sideways ? ['left', 'right'] : ['upper', 'lower'];
  return `glue only its ${half} half, to the ${half} flap, ${place}; the ${rest} half stays loose, or the card cannot open`;
}

/** Whether a layer lies across the line where a flap ends, in the middle of the card. */
function spans({ card, fold }: Layout, { box }: Layer): boolean {
  const [from, size, whole] =
    fold.scoreFrom === 'left' ? [box.x, box.width, card.width] : [box.y, box.height, card.height];
  return 2 * from < whole && 2 * (from + size) > whole;
}

/** A layer measured from the corner of the one that it lies on. */
function within({ box }: Layer, { box: under }: Layer): Pick<Layer, 'box'> {
  return { box: { ...box, x: (box.x - under.x) as Length, y: (box.y - under.y) as Length } };
}

/** A slanted piece has no middle to go by; the corner of it that is square is laid to the card's edges. */
function bySquareCorner(card: Size, layer: Layer, ruler: Ruler): string | null {
  const corner = squareCorner(layer.shape, layer.box);
  if (corner === null) return null;
  const { x, y, width, height } = layer.box;
  const [across, side] = corner.right ? [(card.width - x - width) as Length, 'right'] : [x, 'left'];
  const [down, end] = corner.lower ? [(card.height - y - height) as Length, 'bottom'] : [y, 'top'];
  return `glue it with its square ${corner.lower ? 'lower' : 'upper'} ${side} corner ${lengthSaid(across, ruler)} from the ${side} and ${lengthSaid(down, ruler)} from the ${end}`;
}

function byBox(
  whole: Size,
  { box }: Pick<Layer, 'box'>,
  ruler: Ruler,
  of = ' of the card',
): string {
  const { x, y, width, height } = box;
  const across = 2 * x + width === whole.width;
  const down = 2 * y + height === whole.height;
  if (across && down) return `glue it in the middle${of}`;
  const left = `${lengthSaid(x, ruler)} from the left`;
  const top = `${lengthSaid(y, ruler)} from the top`;
  if (across) return `glue it ${top}, in the middle across`;
  if (down) return `glue it ${left}, in the middle of the height`;
  return `glue it ${left} and ${top}`;
}
