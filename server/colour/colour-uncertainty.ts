import { differencePerLabUnit } from './difference.ts';
import type { ColourError, Lab } from './lab.ts';

/**
 * How far off a colour averaged over an area may be, as one standard error in CIEDE2000.
 *
 * Noise shrinks with the pixels averaged, light and reference do not. Neighbouring pixels share their
 * noise (a camera interpolates, JPEG smears blocks of 8 x 8), so only one in sixteen counts as its own.
 *
 * Takes       the colour, the number of pixels averaged (1 or more) and the errors in CIELAB units.
 */
export function colourUncertainty(lab: Lab, pixels: number, error: ColourError): number {
  const own = Math.max(1, pixels / ALIKE);
  const units = Math.hypot(error.noise / Math.sqrt(own), error.field, error.reference);
  return SPREAD * units * differencePerLabUnit(lab);
}

/**
 * Errors in three dimensions are larger than one of them: by this factor about 68 % of the errors on the
 * rendered sample photos fall within one stated error and 95 % within two.
 */
const SPREAD = 1.4;

const ALIKE = 16;
