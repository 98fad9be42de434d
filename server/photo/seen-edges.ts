import { edgesOf } from './edges.ts';
import type { Edges } from './edges.ts';
import type { Overview } from './find-sheets.ts';

const known = new WeakMap<Overview['image'], Edges>();

/** The edges of what was seen, steeper than the table is rough; worked out once for each photo. */
export function seenEdges({ image, table }: Pick<Overview, 'image' | 'table'>): Edges {
  const before = known.get(image);
  if (before !== undefined) return before;
  const edges = edgesOf(image, Math.max(LEAST, 1.5 * table.roughness));
  known.set(image, edges);
  return edges;
}

/** CIELAB units a pixel from which a change is an edge and no grain. */
const LEAST = 1;
