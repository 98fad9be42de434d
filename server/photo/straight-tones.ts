import type { Quad } from '../geometry/points.ts';
import type { LightField } from './light.ts';
import type { OpenedPixels } from './picture.ts';
import { unbent } from './tone-curve.ts';
import { toneTold } from './tone-told.ts';
import type { ToneBend } from './tone-told.ts';

/** A photo whose tones follow light, as far as that can be told. */
export interface StraightPhoto {
  readonly photo: OpenedPixels;
  /** How strongly its tones had been bent, as far as they were made straight; 1 as a phone bends them. */
  readonly bend: number;
  /** What part of a camera's taste may be left in its colours, as a standard error. */
  readonly left: number;
}

/**
 * Makes the tones of a photo straight that some camera or program bent without leaving its mark in the file.
 *
 * A file that names its camera is left alone: its colours carry that camera's taste as an error, and the white's lift is
 * made for it. Light as even as a scanner's tells nothing, and scanners bend nothing.
 *
 * Takes       the photo, where papers lie in its preview, and the light as far as it is known.
 */
export function straightTones(
  photo: OpenedPixels,
  papers: readonly Quad<'photo'>[],
  light: LightField,
): StraightPhoto {
  if (photo.developed === true || papers.length === 0 || light.range < UNEVEN)
    return { photo, bend: 0, left: 0 };
  const { bent, strength, error } = weighed(toneTold(photo.preview, papers, light));
  if (bent < 0.5) return { photo, bend: 0, left: Math.sqrt(bent) * Math.hypot(strength, error) };
  return { photo: unbent(photo, strength), bend: strength, left: Math.hypot(error, UNLIKE) };
}

/** Largest light over smallest from which on the colours of one sheet are lit differently enough. */
const UNEVEN = 1.2;

/**
 * How often the tones of a file that names no camera are bent, and how strongly: between not at all and as a phone does.
 * A judgement.
 */
const USUAL = { bent: 1 / 3, strength: 0.6, spread: 0.3 };

/**
 * What no curve undoes: no camera bends quite as another, and livelier colours stay lively.
 *
 * Source      261 colours of rendered pictures made straight that were bent by another shape, tuning seeds 1 to 12: by 0.55
 *             60 % of the errors lay within one stated error, by 0.65 74 %, and 99 % or more within two. Of pictures
 *             left as they were for want of evidence, 29 % and 72 %: that a file is bent is then only feared.
 */
const UNLIKE = 0.6;

/** How likely the tones are bent, how strongly if they are, and the standard error of that (Bayes' rule, both normal). */
export function weighed(told: ToneBend | null): ToneBend & { readonly bent: number } {
  const { bent, strength, spread } = USUAL;
  if (told === null) return { bent, strength, error: spread };
  const density = (off: number, wide: number): number => Math.exp(-0.5 * (off / wide) ** 2) / wide;
  const ifBent = bent * density(told.strength - strength, Math.hypot(told.error, spread));
  const ifNot = (1 - bent) * density(told.strength, told.error);
  const [own, usual] = [1 / told.error ** 2, 1 / spread ** 2];
  return {
    bent: ifBent / (ifBent + ifNot),
    strength: Math.min(1, Math.max(0, (own * told.strength + usual * strength) / (own + usual))),
    error: 1 / Math.sqrt(own + usual),
  };
}
