import type { NewLayout } from '../../server/contract/layouts.ts';
import { written, type Ruler } from '../lengths/lengths.ts';
import { elementsOf, type Element } from './elements.ts';
import { AIR, LEAST, freePlace } from './free-place.ts';
import { easyMarkOf, rulerOf, stepOf } from './place-layer.ts';

/**
 * Another one in the middle of a free part of a layer, about half as large as that: of the chosen layer, for the base of
 * the top one, if it has room beside what lies there; else of the layer that has most.
 */
export function withMore(layout: NewLayout, kind: Element['kind'], chosen: number): NewLayout {
  const { layer, room } = freePlace(layout, chosen > 0 ? chosen : layout.layers.length - 1);
  const { x, y, width, height } = room;
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

/** Half of a free length; on a narrow one as much as leaves it air. */
function halfOf(length: number, ruler: Ruler): number {
  const wished = Math.max(length / 2, Math.min(LEAST, length - 2 * AIR));
  const mark = easyMarkOf(ruler);
  return Math.max(stepOf(ruler), Math.floor(wished / mark + 1e-6) * mark);
}

function freeName(layout: NewLayout, kind: Element['kind']): string {
  const taken = elementsOf(layout).map(({ id }) => id);
  let number = 1;
  while (taken.includes(`${kind}-${number}`)) number += 1;
  return `${kind}-${number}`;
}
