import type { Side } from './pad.ts';

/** A side without the outlines by which pattern sets are told: more than half of what is known of it. */
export function withoutOutlines(side: Side): Side {
  return { ...side, pattern: { ...side.pattern, descriptor: [] } };
}

/** A side as if it were not known where on it its colours lie. */
export function withoutPlacesOn(side: Side): Side {
  const { colours, tonal } = side.palette;
  return { ...side, palette: { colours, tonal } };
}
