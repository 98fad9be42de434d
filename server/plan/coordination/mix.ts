import { BOTH_BUSY, PLAIN, QUARREL, SCALE_MIX } from '../weights.ts';
import type { Look } from './look.ts';
import { ramp } from './steps.ts';

/** Doublings between the sizes of two prints; null when one of them is plain. */
export function doublings(a: Look, b: Look): number | null {
  if (isPlain(a) || isPlain(b) || a.scale <= 0 || b.scale <= 0) return null;
  return Math.abs(Math.log2(a.scale / b.scale));
}

/** Big and small prints mix: 1 when clearly apart in size or one is plain, low for one size. */
export function scaleMix(a: Look, b: Look): number {
  const apart = doublings(a, b);
  if (apart === null) return 1;
  return SCALE_MIX.alike + (1 - SCALE_MIX.alike) * ramp(apart, 0, SCALE_MIX.doublings);
}

/** A busy print wants a calm partner: 0 when both are busy, 1 when one of them is calm. */
export function busynessMix(a: Look, b: Look): number {
  return 1 - ramp(Math.min(a.busyness, b.busyness), BOTH_BUSY.from, BOTH_BUSY.to);
}

/** Two prints with a direction and of one size quarrel; otherwise 1. */
export function directionMix(a: Look, b: Look): number {
  const apart = doublings(a, b);
  if (apart === null || !a.directional || !b.directional) return 1;
  return QUARREL + (1 - QUARREL) * ramp(apart, 0, SCALE_MIX.doublings);
}

export function isPlain(look: Look): boolean {
  return look.busyness < PLAIN;
}
