import type { Taste } from '../plan.ts';
import { chroma } from './look.ts';
import type { Look } from './look.ts';
import { ramp } from './steps.ts';

export const NO_TASTE: Taste = { contrast: 0, busy: 0, bold: 0 };

/** How lively the step between two looks is: 0 tone on tone, 1 far apart in lightness or hue. */
export function liveliness(a: Look, b: Look): number {
  const step = Math.hypot(a.mean.l - b.mean.l, a.mean.a - b.mean.a, a.mean.b - b.mean.b);
  return ramp(step, 5, 60);
}

/** How much goes on in both together. */
export function activity(a: Look, b: Look): number {
  return ramp((a.busyness + b.busyness) / 2, 0, 0.8);
}

/** Bold colours are strong or deep: mean chroma and darkness of both. */
export function boldness(a: Look, b: Look): number {
  return (strength(a) + strength(b)) / 2;
}

function strength(look: Look): number {
  const strong = look.colours.reduce(
    (sum, colour) =>
      sum +
      colour.share * Math.max(ramp(chroma(colour.lab), 0, 60), ramp(90 - colour.lab.l, 0, 70)),
    0,
  );
  return Math.min(1, strong);
}
