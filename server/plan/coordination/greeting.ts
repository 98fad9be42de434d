import { GREETING } from '../weights.ts';
import type { Look } from './look.ts';
import { ramp } from './steps.ts';

/** How well a greeting stamped in dark ink can be read on it: light and calm is 1. */
export function readable(look: Look): number {
  const light = ramp(look.mean.l, GREETING.dark, GREETING.light);
  const calm = 1 - ramp(look.busyness, GREETING.calm, GREETING.busy);
  return light * calm;
}
