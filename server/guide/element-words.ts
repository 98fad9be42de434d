import { crowding } from '../layouts/check-elements.ts';
import { nameAmong } from '../layouts/layer-names.ts';
import type { Element, Layout } from '../layouts/layout.ts';
import type { Length, Ruler } from '../lengths/length.ts';
import { layerOf, lengthSaid, sizeSaid } from './said.ts';

/** Something stamped on a card or glued onto it: what and how large, and where. */
export interface ElementWords {
  readonly element: string;
  readonly kind: Element['kind'];
  readonly main: string;
  readonly small: string;
  /** The layer before whose gluing it is done: a stamp wants a flat piece; null for what is glued on last. */
  readonly before: string | null;
}

/** What is stamped and what is cut by a die, in words; nothing for most layouts. */
export function elementWords(layout: Layout, ruler: Ruler): ElementWords[] {
  const crowded = crowding(layout);
  return (layout.elements ?? []).map((element) => {
    const { id, kind, layer, box } = element;
    const stamp = kind === 'stamp';
    // A stamp is set while its piece lies loose, so it is measured on the piece; the base is the card itself.
    const on = layout.layers.findIndex(({ id: name }) => name === layer);
    const loose = stamp && on > 0 ? layout.layers[on]! : null;
    const x = (box.x - (loose?.box.x ?? 0)) as Length;
    const y = (box.y - (loose?.box.y ?? 0)) as Length;
    const whole = loose === null ? 'card' : layerOf(layout, layer);
    const place = `${lengthSaid(x, ruler)} from the left and ${lengthSaid(y, ruler)} from the top of the ${whole}`;
    const done = stamp
      ? 'Stamp it on'
      : 'Cut it with its die out of a scrap of any cardstock that stands out there, and glue it on';
    const dry = stamp ? ' Let it dry before you glue.' : '';
    const near = crowded.includes(element)
      ? ' It fits, but stands near to an edge or to another layer: try it first.'
      : '';
    return {
      element: id,
      kind,
      main: `${titled(layout, element)}, ${sizeSaid(box, ruler)}`,
      small: `${done} the ${layerOf(layout, layer)}, ${place}.${dry}${near}`,
      before: stamp ? (loose?.id ?? layout.layers[1]?.id ?? null) : null,
    };
  });
}

/** 'Stamp: sprig'; 'Stamp' or 'Stamp 2' where its name only says what it is. */
function titled({ elements = [] }: Layout, { id, kind }: Element): string {
  const name = nameAmong(
    elements.map((one) => one.id),
    id,
  );
  const what = kind === 'stamp' ? 'Stamp' : 'Die cut';
  const own = name.replace(/^(?:stamp|die cut)(?=$| \d+$)/, '');
  return own === name ? `${what}: ${name}` : `${what}${own}`;
}
