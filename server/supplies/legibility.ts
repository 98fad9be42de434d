import { contrast } from '../colour/contrast.ts';
import type { Lab } from '../colour/lab.ts';

/**
 * Contrast ratios from which letters can be read.
 * W3C, Web Content Accessibility Guidelines 2.2, success criterion 1.4.3: 4.5, or 3 for large letters
 * (from 18 point, or 14 point bold).
 */
export const READABLE = { small: 4.5, large: 3 } as const;

/** Steps of L below which letters sink into their ground even where their hue differs. Common practice, no source. */
const LIGHTNESS_STEP = 30;

export interface Legibility {
  readonly verdict: 'small letters' | 'large letters only' | 'cannot be read';
  /** The contrast ratio of WCAG 2.2, in [1, 21]. */
  readonly contrast: number;
  /** How much lighter the strip is than the letters; below 0 for light letters on a dark strip. */
  readonly lighter: number;
  readonly reason: string;
}

/**
 * Whether a greeting can be read on its strip.
 *
 * Takes       the colour of the letters as they come out on the strip, and the strip's.
 * Good up to  a solid, sharp stamp: thin strokes and a half-inked stamp read worse.
 */
export function legibility(text: Lab, strip: Lab): Legibility {
  const ratio = contrast(text, strip);
  const lighter = strip.l - text.l;
  const apart = Math.abs(lighter) >= LIGHTNESS_STEP;
  const said = `contrast ${ratio.toFixed(1)} to 1`;
  if (ratio >= READABLE.small && apart)
    return {
      verdict: 'small letters',
      contrast: ratio,
      lighter,
      reason: `Reads well, small letters too (${said}; ${READABLE.small} is asked for).`,
    };
  if (ratio >= READABLE.large)
    return {
      verdict: 'large letters only',
      contrast: ratio,
      lighter,
      reason: `Reads in large letters only (${said}; small ones need ${READABLE.small}): choose a bold stamp, or ${mendFor(strip, lighter, READABLE.small)}.`,
    };
  return {
    verdict: 'cannot be read',
    contrast: ratio,
    lighter,
    reason: `Cannot be read (${said}; even large letters need ${READABLE.large}): ${mendFor(strip, lighter, READABLE.large)}.`,
  };
}

/** No ink is darker than this on paper: about the black of a good stamp. Common practice, no source. */
const DARKEST_INK: Lab = { l: 18, a: 0, b: 0 };

function mendFor(strip: Lab, lighter: number, needed: number): string {
  if (lighter < 0) return 'take a lighter ink, or stamp on a darker strip';
  return contrast(DARKEST_INK, strip) < needed
    ? 'the strip is too dark even for black, so stamp on a lighter one'
    : 'take a darker ink, or stamp on a lighter strip';
}
