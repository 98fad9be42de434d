import type { Layout, NewLayout } from '../../server/contract/layouts.ts';
import { millimetres, written, type Ruler } from '../lengths/lengths.ts';
import { boxOf, easyMarkOf, moved, rulerOf, stepOf, type Measure } from './place-layer.ts';

/** What is stamped on a layer, or cut by a die and glued onto it. */
export type Element = NonNullable<Layout['elements']>[number];

export const elementKinds = ['stamp', 'die-cut'] as const;

/** As many as the service takes. */
export const MOST_ELEMENTS = 16;

export function elementsOf({ elements = [] }: NewLayout): readonly Element[] {
  return elements;
}

/** Another one in the middle of a layer, about half as large as it, but for the base: that takes it on its top layer. */
export function withMore(layout: NewLayout, kind: Element['kind'], chosen: number): NewLayout {
  const layer = layout.layers[chosen > 0 ? chosen : layout.layers.length - 1]!;
  const { x, y, width, height } = boxOf(layer);
  const ruler = rulerOf(layout.card);
  const [wide, high] = [halfOf(width, ruler), halfOf(height, ruler)];
  const step = stepOf(ruler);
  const at = (mm: number): string => written(Math.round(mm / step) * step, ruler);
  const box = {
    x: at(x + (width - wide) / 2),
    y: at(y + (height - high) / 2),
    width: at(wide),
    height: at(high),
  };
  const element = { id: freeName(layout, kind), kind, layer: layer.id, box };
  return { ...layout, elements: [...elementsOf(layout), element] };
}

/** Air that is left around what lies on a narrow layer, and the size below which it would be lost (mm). */
const [AIR, LEAST] = [25.4 / 8, 25.4 * 0.75];

/** Half of a layer's length; on a narrow one as much as leaves it air. */
function halfOf(length: number, ruler: Ruler): number {
  const wished = Math.max(length / 2, Math.min(LEAST, length - 2 * AIR));
  const mark = easyMarkOf(ruler);
  return Math.max(stepOf(ruler), Math.floor(wished / mark + 1e-6) * mark);
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

function freeName(layout: NewLayout, kind: Element['kind']): string {
  const taken = elementsOf(layout).map(({ id }) => id);
  let number = 1;
  while (taken.includes(`${kind}-${number}`)) number += 1;
  return `${kind}-${number}`;
}
