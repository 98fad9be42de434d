import type { Layer, NewLayout } from '../../server/contract/layouts.ts';
import * as shared from '../../server/layouts/layer-names.ts';
import { millimetres } from '../lengths/lengths.ts';
import { listed, sentence } from '../words/grammar.ts';
import { boxOf } from './place-layer.ts';

/** What the layers are called, by their ids, the same as in the plan and the guide. */
export function layerNames({ layers, card }: NewLayout): Map<string, string> {
  const size = { width: millimetres(card.width) ?? 1, height: millimetres(card.height) ?? 1 };
  return shared.layerNames(
    layers.map((layer) => ({ ...layer, box: boxOf(layer) })),
    size,
  );
}

/** How a layer is called on a button. */
export function layerCalled(layout: NewLayout, id: string): string {
  return sentence(layerNames(layout).get(id) ?? id);
}

/** The layout with one layer called as she typed it; by what it is where she typed nothing. Its id stays. */
export function called(layout: NewLayout, at: number, text: string): NewLayout {
  const after: Layer = { ...layout.layers[at]!, called: text.trim() };
  if (after.called === '') delete after.called;
  return { ...layout, layers: layout.layers.map((one, n) => (n === at ? after : one)) };
}

/** Layers that lie in the same paper as one, by their names: 'left panel and top strip'; '' where none does. */
export function sharersOf(layout: NewLayout, layer: Layer, paper: string): string {
  const names = layerNames(layout);
  const others = layout.layers.filter((one) => one.paper === paper && one.id !== layer.id);
  return listed(others.map(({ id }) => names.get(id) ?? id));
}
