import { INCH, MILLIMETRE, units } from './length.ts';
import type { Length, Ruler } from './length.ts';

/** The finest step a paper trimmer is read to: 1/16 in, or 1 mm. */
export function stepOf(ruler: Ruler): Length {
  return units(ruler === 'in' ? INCH / 16 : MILLIMETRE);
}

/** The nearest length that stands on the ruler. */
export function snap(length: Length, ruler: Ruler): Length {
  const step = stepOf(ruler);
  return units(Math.round(length / step) * step + 0);
}

/** Whether the length stands on a mark of the ruler, so that writing it loses nothing. */
export function isOnRuler(length: Length, ruler: Ruler): boolean {
  return length % stepOf(ruler) === 0;
}
