import type { Lab } from '../colour/lab.ts';
import type { PhotoRow } from '../store/rows.ts';

/**
 * What the scraps look like that tie a pad's photos together: as the first photo with scraps shows them, or, when
 * that one is gone, as they were kept with those that were corrected towards it.
 */
export function chipColoursOf(photos: readonly PhotoRow[]): readonly Lab[] {
  const withChips = photos.flatMap(({ chips }) =>
    chips === undefined || chips.tie === 'none' ? [] : [chips],
  );
  const kept = withChips.find(({ tie }) => tie === 'first') ?? withChips[0];
  return kept?.scraps.map(({ lab }) => lab) ?? [];
}
