import type { Lab } from './lab.ts';
import { linearFromLab } from './spaces.ts';

/**
 * How well letters of one colour stand off from another, as the contrast ratio of WCAG 2.2.
 *
 * Takes       two colours in CIELAB (D65), in either order; what sRGB cannot show is cut off.
 * Gives       a ratio from 1 (equal) to 21 (black on white). 4.5 is asked for small letters, 3 for large.
 * Good up to  screens: for ink on paper it is a guide.
 * Source      W3C, Web Content Accessibility Guidelines 2.2, 'contrast ratio' and 'relative luminance'.
 */
export function contrast(a: Lab, b: Lab): number {
  const [one, other] = [relativeLuminance(a), relativeLuminance(b)];
  return (Math.max(one, other) + 0.05) / (Math.min(one, other) + 0.05);
}

/** Relative luminance of WCAG 2.2: 0 for black, 1 for white. */
export function relativeLuminance(lab: Lab): number {
  const { r, g, b } = linearFromLab(lab);
  return 0.2126 * shown(r) + 0.7152 * shown(g) + 0.0722 * shown(b);
}

function shown(channel: number): number {
  return Math.min(1, Math.max(0, channel));
}
