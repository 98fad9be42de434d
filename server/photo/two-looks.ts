import { contains } from '../geometry/polygon.ts';
import type { Chosen } from './choose-sheets.ts';
import { middleOf } from './find-sheets.ts';

/**
 * What a second look at a photo chose, with the places that only the first look saw: she is asked to look at those.
 *
 * Takes       what was chosen by both looks, in pixels of the preview.
 * Gives       the second with each sheet and unsure place of the first of which it has none in the middle, as unsure.
 */
export function withPlacesOf(first: Chosen, second: Chosen): Chosen {
  const own = second.unsure ?? [];
  const there = [...second.sheets, ...own].map(({ corners }) => corners);
  const lost = [...first.sheets, ...(first.unsure ?? [])].filter(
    ({ corners }) =>
      !there.some(
        (other) => contains(other, middleOf(corners)) || contains(corners, middleOf(other)),
      ),
  );
  return { ...second, unsure: [...own, ...lost] };
}
