import type { Layer, Layout } from '../layouts/layout.ts';
import { inWords, layerNames } from '../layouts/layer-names.ts';
import type { Piece } from './piece.ts';

/** A card of the batch: its number, from 1, and its design. */
export interface BatchCard {
  readonly number: number;
  readonly layout: Layout;
}

export interface BatchPieces {
  readonly patterned: readonly Piece[];
  readonly cardstock: readonly Piece[];
}

/**
 * What is to be cut for a batch: one piece a layer. A base is cut as the flat sheet before folding;
 * any other layer as the rectangle around it. Paper hidden under other layers is cut too.
 */
export function piecesOf(cards: readonly BatchCard[]): BatchPieces {
  const all = cards.flatMap((card) => {
    const { layers, card: size } = card.layout;
    const names = layerNames(layers, size);
    return layers.map((layer) => ({ layer, piece: pieceOf(card, layer, names.get(layer.id)!) }));
  });
  const of = (material: Layer['material']): Piece[] =>
    all.filter(({ layer }) => layer.material === material).map(({ piece }) => piece);
  return { patterned: of('patterned'), cardstock: of('cardstock') };
}

function pieceOf({ number, layout }: BatchCard, layer: Layer, name: string): Piece {
  const { width, height } = layer.role === 'base' ? layout.fold.flat : layer.box;
  return {
    id: `card-${number}-${layer.id}`,
    card: number,
    layer: layer.id,
    role: layer.role,
    size: { width, height },
    shape: layer.shape,
    paper: layer.paper,
    ...(name === inWords(layer.id) ? {} : { called: name }),
  };
}
