import type { PatternTraits } from './traits.ts';

/** Which way is up, as she says it: a quarter turn of the swatch, clockwise, or that no way is. */
export type ToldUp = PatternTraits['up'] | 'none';

/** A print whose up she has said; what was read of its direction no longer counts. */
export function withUp(pattern: PatternTraits, up: ToldUp): PatternTraits {
  const says =
    up === 'none'
      ? ({ direction: 'none', up: 0 } as const)
      : ({ direction: 'one-way', up } as const);
  return { ...pattern, ...says, told: true };
}

/** A print read again, from another photo of the light or other corners: her word on its up stays. */
export function keepingUp(read: PatternTraits, before: PatternTraits): PatternTraits {
  if (before.told !== true) return read;
  const { direction, up } = before;
  return { ...read, direction, up, told: true };
}
