import type { Layout } from './layout.ts';

/** The paper groups of the patterned layers, in order of stacking: so many papers does one card take. */
export function papersOf(layout: Layout): string[] {
  const patterned = layout.layers.filter((layer) => layer.material === 'patterned');
  return [...new Set(patterned.map((layer) => layer.paper))];
}
