import type { Layer } from '../layouts/layout.ts';
import type { Ruler } from '../lengths/length.ts';
import type { CardFacts, LayerFacts } from './facts.ts';
import { gluingSaid } from './gluing.ts';
import { revealSaid } from './reveal.ts';
import { sizeSaid } from './said.ts';

/** What is cut for a layer; of the base its flat sheet. */
export function layerSizeSaid({ layout }: CardFacts, layer: Layer, ruler: Ruler): string {
  const { width, height } = layer.role === 'base' ? layout.fold.flat : layer.box;
  return sizeSaid({ width, height }, ruler);
}

/** What is done to a layer while it is loose, where it is glued, and what shows of it; '' when there is nothing to say. */
export function layerNote({ layout }: CardFacts, facts: LayerFacts, ruler: Ruler): string {
  return [
    shapeSaid(facts),
    facts.layer.role === 'greeting' ? 'stamp it and let it dry' : '',
    gluingSaid(layout, facts.layer, ruler),
    revealSaid(layout, facts.layer, ruler) ?? '',
  ]
    .filter((part) => part !== '')
    .map((part) => `${part.charAt(0).toUpperCase()}${part.slice(1)}.`)
    .join(' ');
}

function shapeSaid({ layer, paper }: LayerFacts): string {
  if (layer.shape.kind === 'rectangle') return '';
  const shaped = {
    rounded: 'round its corners',
    circle: 'cut it round',
    banner: 'cut its notch',
    corners: 'cut it along its slants',
  }[layer.shape.kind];
  return paper === null ? `${shaped} before you glue it` : '';
}
