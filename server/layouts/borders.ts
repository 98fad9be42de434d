import type { CardPoint } from '../geometry/points.ts';
import type { Layout } from './layout.ts';
import { visibleLayers } from './visible-layers.ts';
import type { VisibleLayer } from './visible-layers.ts';

/** Where two layers meet in view. */
export interface Border {
  /** The lower layer. */
  readonly a: string;
  /** The upper layer. */
  readonly b: string;
  /** In mm. */
  readonly length: number;
}

/** Edges nearer than this (mm) are one edge. */
const NEAR = 0.02;
/** Shorter than this (mm) is a touch of corners, no border. */
const SHORTEST = 0.5;

/** The visible border that each two layers share, in the order of stacking; pairs without one are left out. */
export function borders(layout: Layout): Border[] {
  const seen = visibleLayers(layout).map((visible) => ({
    layer: visible.layer,
    edges: edgesOf(visible),
  }));
  return seen
    .flatMap((a, index) =>
      seen.slice(index + 1).map((b) => ({
        a: a.layer,
        b: b.layer,
        length: sharedLength(a.edges, b.edges),
      })),
    )
    .filter((border) => border.length > SHORTEST);
}

interface Edge {
  readonly from: CardPoint;
  readonly to: CardPoint;
}

function edgesOf({ parts }: VisibleLayer): Edge[] {
  return parts
    .flatMap((part) => [part.outer, ...part.holes])
    .flatMap((ring) => ring.map((from, index) => ({ from, to: ring[(index + 1) % ring.length]! })));
}

function sharedLength(a: readonly Edge[], b: readonly Edge[]): number {
  let length = 0;
  for (const edge of a) for (const other of b) length += overlap(edge, other);
  return length;
}

/** How long two edges run along each other. */
function overlap({ from, to }: Edge, other: Edge): number {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const long = Math.hypot(dx, dy);
  if (long < NEAR) return 0;
  const along = (p: CardPoint): number => ((p.x - from.x) * dx + (p.y - from.y) * dy) / long;
  const aside = (p: CardPoint): number =>
    Math.abs((p.x - from.x) * dy - (p.y - from.y) * dx) / long;
  if (aside(other.from) > NEAR || aside(other.to) > NEAR) return 0;
  const [s, t] = [along(other.from), along(other.to)];
  return Math.max(0, Math.min(long, Math.max(s, t)) - Math.max(0, Math.min(s, t)));
}
