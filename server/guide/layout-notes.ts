import { crowding, elementSaid } from '../layouts/check-elements.ts';
import type { Layout } from '../layouts/layout.ts';
import { spareMiddles } from '../layouts/spare-middle.ts';
import type { Ruler } from '../lengths/length.ts';
import { layerOf, lengthSaid, sizeSaid } from './said.ts';
import { INCH, units } from '../lengths/length.ts';

/** What is worth knowing of a layout before it is cut, as sentences; none for most. */
export function layoutNotes(layout: Layout, ruler: Ruler): string[] {
  const air = lengthSaid(units(INCH / 8), 'in');
  return [
    ...crowding(layout).map(
      (element) =>
        `It fits, but ${elementSaid(element, ruler)} crowds the ${layerOf(layout, element.layer)}: less than ${air} is left beside it.`,
    ),
    ...spareMiddles(layout).map(
      ({ layer, under, window }) =>
        `The middle of the ${layerOf(layout, layer)}, ${sizeSaid(window, ruler)}, is hidden under the ${layerOf(layout, under)}: cut it out with a knife before gluing, and use it for other pieces. Mind the blade.`,
    ),
  ];
}
