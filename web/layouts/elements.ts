import type { Layout, NewLayout } from '../../server/contract/layouts.ts';
import { millimetres, written } from '../lengths/lengths.ts';
import { boxOf, moved, rulerOf, stepOf, type Measure } from './place-layer.ts';

/** What is stamped on a layer, or cut by a die and glued onto it. */
export type Element = NonNullable<Layout['elements']>[number];

export const elementKinds = ['stamp', 'die-cut'] as const;

/** As many as the service takes. */
export const MOST_ELEMENTS = 16;

export function elementsOf({ elements = [] }: NewLayout): readonly Element[] {
  return elements;
}

export function withElement(layout: NewLayout, at: number, element: Element): NewLayout {
  return { ...layout, elements: elementsOf(layout).map((one, n) => (n === at ? element : one)) };
}

export function withoutElement(layout: NewLayout, at: number): NewLayout {
  return { ...layout, elements: elementsOf(layout).filter((_, n) => n !== at) };
}

/** The layout with an element pulled by so many mm, on a step of the ruler and on the card; it lies on the layer that it was pulled onto. */
export function pulledElement(layout: NewLayout, at: number, byX: number, byY: number): NewLayout {
  const before = elementsOf(layout)[at]!;
  const after = moved(before, layout.card, byX, byY);
  const still = after.box.x === before.box.x && after.box.y === before.box.y;
  return withElement(layout, at, still ? before : { ...after, layer: layerUnder(layout, after) });
}

/** The uppermost layer that an element lies on whole. */
function layerUnder({ layers }: NewLayout, element: Element): string {
  const { x, y, width, height } = boxOf(element);
  const holds = layers.filter((layer) => {
    const around = boxOf(layer);
    return (
      around.x <= x + SLACK &&
      around.y <= y + SLACK &&
      x + width <= around.x + around.width + SLACK &&
      y + height <= around.y + around.height + SLACK
    );
  });
  return holds.at(-1)?.id ?? element.layer;
}

/** Of rounding, in mm. */
const SLACK = 0.01;

/** The element with a length as she typed it, or null where it cannot be read. */
export function typedElement(
  element: Element,
  card: Layout['card'],
  what: Measure,
  text: string,
): Element | null {
  const ruler = rulerOf(card);
  const mm = millimetres(text, ruler);
  const size = what === 'width' || what === 'height';
  if (mm === null || (size && mm < stepOf(ruler) - 1e-6)) return null;
  return { ...element, box: { ...element.box, [what]: written(mm, ruler) } };
}

/** The place in the list of the element that a problem names (`elements[0].box`), or null. */
export function faultyElement(field: string | undefined): number | null {
  const place = /^elements\[(\d+)\]/.exec(field ?? '');
  return place ? Number(place[1]) : null;
}
