import { difference } from 'polyclip-ts';
import type { Polygon } from '../geometry/points.ts';
import { polygonArea } from '../geometry/polygon.ts';
import { toMillimetres } from '../lengths/length.ts';
import type { Layout } from './layout.ts';
import { outline } from './outline.ts';

/** A connected part of a layer that is seen, with the windows in it that upper layers fill. */
export interface VisiblePart {
  readonly outer: Polygon<'card'>;
  readonly holes: readonly Polygon<'card'>[];
}

/** What is seen of a layer once all others lie on it. */
export interface VisibleLayer {
  readonly layer: string;
  readonly parts: readonly VisiblePart[];
  /** In mm². */
  readonly area: number;
  /** Of the card front, in [0, 1]; the shares of all layers add up to 1. */
  readonly share: number;
}

/** Parts smaller than this (mm²) are slivers of rounding, not paper. */
const SLIVER = 0.01;

/**
 * What is seen of every layer from straight above, lowest first.
 *
 * Computed by  polyclip-ts, on outlines in millimetres; round shapes are taken with 64 corners.
 */
export function visibleLayers(layout: Layout): VisibleLayer[] {
  const rings = layout.layers.map((layer) =>
    outline(layer).map(({ x, y }): [number, number] => [x, y]),
  );
  const front = toMillimetres(layout.card.width) * toMillimetres(layout.card.height);
  return layout.layers.map((layer, index) => {
    const above = rings.slice(index + 1).map((ring) => [ring]);
    const seen = above.length === 0 ? [[rings[index]!]] : difference([rings[index]!], ...above);
    const parts = seen.map(partOf).filter((part) => partArea(part) > SLIVER);
    const area = parts.reduce((sum, part) => sum + partArea(part), 0);
    return { layer: layer.id, parts, area, share: area / front };
  });
}

function partOf(rings: readonly (readonly [number, number][])[]): VisiblePart {
  const [outer, ...holes] = rings.map((ring) => openRing(ring).map(([x, y]) => ({ x, y })));
  return { outer: outer!, holes };
}

/** The clipping library repeats the first corner at the end; ours does not. */
function openRing(ring: readonly [number, number][]): readonly [number, number][] {
  const [first, last] = [ring[0]!, ring.at(-1)!];
  return first[0] === last[0] && first[1] === last[1] ? ring.slice(0, -1) : ring;
}

function partArea(part: VisiblePart): number {
  return part.holes.reduce((area, hole) => area - polygonArea(hole), polygonArea(part.outer));
}
