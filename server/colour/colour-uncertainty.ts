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
  const units = SPREAD * Math.hypot(error.noise / Math.sqrt(own), error.field, error.reference);
  return differencePerLabUnit(lab) * Math.hypot(units, cameraTaste(lab, error));
}

/** What the camera's tone curve and colour taste may do to a colour, in CIELAB units. */
function cameraTaste({ l, a, b }: Lab, { camera }: ColourError): number {
  if (camera === undefined) return 0;
  const { white } = camera;
  const away = Math.hypot(white.l - l, a - white.a, b - white.b);
  return TASTE.always + TASTE.byDistance * away;
}

/**
 * How far a phone's picture is off, at its white and by the distance from it.
 *
 * Source      four of eight phone photographs of 24 known colours, with a tenth added as four are few; judged on the other four (see the bench).
 */
const TASTE = { always: 3.3, byDistance: 0.088 };

/**
 * Errors in three dimensions are larger than one of them: by this factor about 68 % of the errors on the
 * rendered sample photos fall within one stated error and 95 % within two.
 */
const SPREAD = 1.4;

const ALIKE = 16;
