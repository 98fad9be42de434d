import { crowding } from '../layouts/check-elements.ts';
import type { Layout } from '../layouts/layout.ts';
import type { Ruler } from '../lengths/length.ts';
import { layerSaid, lengthSaid, sizeSaid } from './said.ts';

/** Something stamped on a card or glued onto it: what and how large, and where. */
export interface ElementWords {
  readonly main: string;
  readonly small: string;
}

/** What is stamped and what is cut by a die, in words; nothing for most layouts. */
export function elementWords(layout: Layout, ruler: Ruler): ElementWords[] {
  const crowded = crowding(layout);
  return (layout.elements ?? []).map((element) => {
    const { id, kind, layer, box } = element;
    const stamp = kind === 'stamp';
    const place = `${lengthSaid(box.x, ruler)} from the left and ${lengthSaid(box.y, ruler)} from the top of the card`;
    const done = stamp ? 'Stamp it on' : 'Cut it with its die and glue it on';
    const dry = stamp ? ' Let it dry before you glue.' : '';
    const near = crowded.includes(element)
      ? ' It fits, but stands near to an edge or to another layer: try it first.'
      : '';
    return {
      main: `${stamp ? 'Stamp' : 'Die cut'}: ${layerSaid(id)}, ${sizeSaid(box, ruler)}`,
      small: `${done} the ${layerSaid(layer)}, ${place}.${dry}${near}`,
    };
  });
}
