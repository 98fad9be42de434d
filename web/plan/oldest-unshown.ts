/**
 * Which of the things that are kept to drop, so that no more than `most` stay where that can be: the oldest first,
 * and none that is shown.
 *
 * Takes       the kept ones, the oldest first.
 */
export function oldestUnshown<T>(
  kept: readonly T[],
  most: number,
  shown: (one: T) => boolean,
): readonly T[] {
  const over = Math.max(0, kept.length - most);
  return kept.filter((one) => !shown(one)).slice(0, over);
}
