import { STEP } from '../weights.ts';
import type { Look } from './look.ts';

/**
 * Told apart along the border: 0 for the same paper beside itself, near 1 for a clear step in
 * lightness, in busyness or in colour. One clear step is enough; small steps add up.
 */
export function contrast(a: Look, b: Look): number {
  const lightness = (a.mean.l - b.mean.l) / STEP.lightness;
  const busyness = (a.busyness - b.busyness) / STEP.busyness;
  const colour = Math.hypot(a.mean.a - b.mean.a, a.mean.b - b.mean.b) / STEP.colour;
  return 1 - Math.exp(-(lightness ** 2 + busyness ** 2 + colour ** 2));
}
