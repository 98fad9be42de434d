import { difference, differencePerUnit } from './difference.ts';
import type { ColourError, Lab } from './lab.ts';
import { labFromLinear, linearFromLab } from './spaces.ts';

/**
 * How far off a colour averaged over an area may be, in CIEDE2000: of such errors 68 % lie within it.
 *
 * Noise shrinks with the pixels averaged, light and reference do not. Neighbouring pixels share their
 * noise (a camera interpolates, JPEG smears blocks of 8 x 8), so only one in sixteen counts as its own. Light or a white
 * that is taken for another is a factor on each channel of linear light, and each way in which it may be wrong moves a
 * colour by what that factor makes of it. Strokes are seen mixed with what is beside them.
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
  const { noise, field, reference, tint = 0, hueOpen = 1 } = error;
  const own = noise / Math.sqrt(Math.max(1, pixels / ALIKE));
  const worth = differencePerUnit(lab);
  const brighter = 3 * Math.hypot(field / (MIDDLE + 16), (WHITES.l * reference) / (PAPER.l + 16));
  const hue = Math.min(MOST_HUE, reference * hueOpen);
  const read = reachOf([
    ...worth.map((units) => own * units),
    movedBy(lab, [brighter, brighter, brighter]),
    movedBy(lab, fromPaperTo({ ...PAPER, a: PAPER.a + WHITES.a * hue })),
    movedBy(lab, fromPaperTo({ ...PAPER, b: PAPER.b + WHITES.b * hue })),
    movedBy(lab, [tint, 0, 0]),
    movedBy(lab, [0, 0, tint]),
    ...lightened(lab),
  ]);
  const taste = (cameraTaste(lab, error) * Math.hypot(...worth)) / Math.sqrt(3);
  return Math.hypot(read, taste, strokes(inside), EVER);
}

/** Lightness at which the error of the light is stated, and a white paper. */
const MIDDLE = 66;
const PAPER = { l: 94.4, a: 0.3, b: -3.4 };

/** How an error of the white lies in l, a and b. Source: white papers, see correction.ts. */
const WHITES = { l: 0.75, a: 0.3, b: 1.2 };

/** Nothing that is further off in hue than this, in the same units, passes for white at all. */
const MOST_HUE = 30;

/** Logarithms of linear red, green and blue. */
type Logs = readonly [r: number, g: number, b: number];

/** What the light of a colour is multiplied by when its white is taken for another. */
function fromPaperTo(other: Lab): Logs {
  const [from, to] = [linearFromLab(PAPER), linearFromLab(other)];
  return [Math.log(to.r / from.r), Math.log(to.g / from.g), Math.log(to.b / from.b)];
}

/** How far a colour moves, in CIEDE2000, when its light is multiplied so, or divided: the root mean square of both. */
function movedBy(lab: Lab, by: Logs): number {
  const { r, g, b } = linearFromLab(lab);
  const moved = (way: 1 | -1): number => {
    const [forR, forG, forB] = by.map((log) => Math.exp(way * log)) as [number, number, number];
    return difference(lab, labFromLinear({ r: forR * r, g: forG * g, b: forB * b }));
  };
  return Math.hypot(moved(1), moved(-1)) / Math.SQRT2;
}

/** How far a colour moves when a little light is added to each channel in turn: near black that shows. */
function lightened(lab: Lab): number[] {
  const { r, g, b } = linearFromLab(lab);
  return [
    { r: r + BLACK, g, b },
    { r, g: g + BLACK, b },
    { r, g, b: b + BLACK },
  ].map((light) => difference(lab, labFromLinear(light)));
}

/**
 * Linear light by which a file is off near black: values are cut off at nothing and rounded, lenses stray.
 *
 * Source      20 dark colours (lightness under 22) of 24 rendered scans and 12 photos, tuning seeds 1 to 24: of brown with next to
 *             no blue b was off by 0.9; 13 of them lay within one stated error without it, 15 with it.
 */
const BLACK = 0.0003;

/**
 * How far an error reaches whose independent parts lie across each other, in 68.27 % of all cases.
 *
 * That is one standard error where one part is all; where two or three count alike it is 1.07 or 1.08 times their root
 * mean square, as few errors are small in all directions at once.
 *
 * Source      degrees of freedom of a sum of squares: Satterthwaite (1946), doi:10.2307/3002019; quantile of chi-squared:
 *             Wilson, Hilferty (1931), doi:10.1073/pnas.17.12.684.
 */
function reachOf(parts: readonly number[]): number {
  const squares = parts.reduce((sum, part) => sum + part ** 2, 0);
  if (squares < NOTHING ** 2) return 0;
  const spread = (2 * parts.reduce((sum, part) => sum + part ** 4, 0)) / (9 * squares ** 2);
  return Math.sqrt(squares * (1 - spread + WITHIN * Math.sqrt(spread)) ** 3);
}

/** A CIEDE2000 that nobody will ever measure; squares of squares of what is far below it are no numbers any more. */
const NOTHING = 1e-9;

/** Below this lies a standard normal variable in 68.27 % of all cases. */
const WITHIN = 0.4752;

/** What a colour is off by, in CIEDE2000, of which only this part of the area is free of its neighbours. */
export function strokes(inside: number): number {
  return STROKES * (1 - Math.min(1, inside / FREE)) ** 2;
}

/**
 * How far strokes are off of which nothing is free, and from which part on they count as broad.
 *
 * Source      792 and 643 printed colours of rendered photos and scans, tuning seeds 100 to 144; judged on others, see the bench.
 */
const STROKES = 3.6;
const FREE = 0.35;

/** No colour of a photo is surer than this: the camera's steps, its JPEG, the print's own unevenness. Source: the same. */
const EVER = 0.3;

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

const ALIKE = 16;
