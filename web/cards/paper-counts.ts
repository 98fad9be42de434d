import type { LayoutListing } from '../../server/contract/layouts.ts';

type Counted = Pick<LayoutListing, 'id' | 'papers'>;

/** How many papers the layouts take, each number once, fewest first. */
export function paperCountsOf(layouts: readonly Counted[]): number[] {
  return [...new Set(layouts.map(({ papers }) => papers))].sort((a, b) => a - b);
}

/**
 * Those that take so many papers; all of them where none does, or where none is asked for. The one that she
 * has just kept stays in sight.
 */
export function withPapers<T extends Counted>(
  layouts: readonly T[],
  wanted: number | null,
  kept: string | null,
): readonly T[] {
  if (!layouts.some(({ papers }) => papers === wanted)) return layouts;
  return layouts.filter(({ id, papers }) => papers === wanted || id === kept);
}
