import { NEAR, SAME } from '../weights.ts';

/** 0 up to `from`, 1 from `to` on, straight between. */
export function ramp(value: number, from: number, to: number): number {
  return Math.min(1, Math.max(0, (value - from) / (to - from)));
}

/** How far two colours pass as one, in [0, 1], from their difference less its noise. */
export function same(difference: number): number {
  return 1 - ramp(difference, SAME.whole, SAME.none);
}

/** How far two colours look like a mistake, in [0, 1]. */
export function nearMiss(
  difference: number,
  window: { from: number; full: number; falls: number; none: number } = NEAR,
): number {
  return Math.min(
    ramp(difference, window.from, window.full),
    1 - ramp(difference, window.falls, window.none),
  );
}
