import { differencePerUnit } from './difference.ts';
import type { ColourError, Lab } from './lab.ts';

/**
 * How far off a colour averaged over an area may be, as one standard error in CIEDE2000.
 *
 * Noise shrinks with the pixels averaged, light and reference do not. Neighbouring pixels share their
 * noise (a camera interpolates, JPEG smears blocks of 8 x 8), so only one in sixteen counts as its own. Light that is
 * taken for too strong darkens a colour and greys it; a white that is taken for another shifts light colours more than
 * dark ones, and most along b, in which white papers differ most. Strokes are seen mixed with what is beside them.
 *
 * Takes       the colour, the number of pixels averaged (1 or more), the errors in CIELAB units, and the part of the area
 *             that lies inside shapes, in [0, 1].
 */
export function colourUncertainty(
  lab: Lab,
  pixels: number,
  error: ColourError,
  inside = 1,
): number {
  const { noise, field, reference } = error;
  const own = noise / Math.sqrt(Math.max(1, pixels / ALIKE));
  const worth = differencePerUnit(lab);
  const light = (lab.l + 16) / (MIDDLE + 16);
  const white = (lab.l + 16) / (WHITE + 16);
  const along = [
    Math.hypot(own, field * light, WHITES.l * reference * white),
    Math.hypot(own, (field * lab.a) / (MIDDLE + 16), WHITES.a * reference * white),
    Math.hypot(own, (field * lab.b) / (MIDDLE + 16), WHITES.b * reference * white),
  ];
  const read = Math.hypot(...along.map((units, axis) => units * worth[axis]!));
  const taste = (cameraTaste(lab, error) * Math.hypot(...worth)) / Math.sqrt(3);
  return Math.hypot(SPREAD * read, taste, strokes(inside), EVER);
}

/** Lightness at which the error of the light is stated, and that of white paper. */
const MIDDLE = 66;
const WHITE = 95;

/** How an error of the white lies in l, a and b. Source: white papers, see correction.ts. */
const WHITES = { l: 0.75, a: 0.3, b: 1.2 };

/** What a colour is off by, in CIEDE2000, of which only this part of the area is free of its neighbours. */
export function strokes(inside: number): number {
  return STROKES * (1 - Math.min(1, inside / FREE)) ** 2;
}

const STROKES = 3.6;
const FREE = 0.45;

/** No colour of a photo is surer than this: the camera's steps, its JPEG, the print's own unevenness. */
const EVER = 0.4;

/** What the camera's tone curve and colour taste may do to a colour, in CIELAB units. */
function cameraTaste({ l, a, b }: Lab, { camera }: ColourError): number {
  if (camera === undefined) return 0;
  const { white, part = 1 } = camera;
  const away = Math.hypot(white.l - l, a - white.a, b - white.b);
  return part * (TASTE.always + TASTE.byDistance * away);
}

/**
 * How far a phone's picture is off, at its white and by the distance from it.
 *
 * Source      four of eight phone photographs of 24 known colours, with a tenth added as four are few; judged on the other four (see the bench).
 */
const TASTE = { always: 3.3, byDistance: 0.088 };

/**
 * By this about 68 % of the errors on rendered photos fall within one stated error.
 *
 * Source      643 printed colours and 117 squares of card, tuning seeds 1 to 10 and 500 to 507 (STROKES, EVER and this);
 *             since then, with seeds 1 to 16: 71 % of 577 colours within one stated error, 99 % within two (they hang
 *             together by their white card, whose colours have no long tail); judged on others, see the bench.
 */
const SPREAD = 1;

const ALIKE = 16;
