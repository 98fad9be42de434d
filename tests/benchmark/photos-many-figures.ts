/** What colours are read beside many white cards, each its own: medians and stated errors that no single card decides. */
import type { Figure } from './figure.ts';
import { SAME, most, printedErrors } from './photos-figures.ts';
import type { ColourError, Strictness } from './photos-figures.ts';
import { median, share } from './photos-match.ts';
import { calibrationFigures } from './photos-plain-figures.ts';
import type { ReadPad } from './photos-read.ts';

export function manyCardFigures(pads: readonly ReadPad[], level: Strictness): Figure[] {
  const errors = printedErrors(pads);
  const medians = pads
    .map((pad) => median(printedErrors([pad]).map(({ off }) => off)))
    .filter(Number.isFinite)
    .sort((p, q) => p - q);
  const at = (part: number): string =>
    medians[Math.floor(part * (medians.length - 1))]?.toFixed(2) ?? 'none read';
  return [
    {
      name: `${level}, many white cards: printed colours, median`,
      value: median(errors.map(({ off }) => off)),
      unit: 'CIEDE2000',
      bar: level === 'hard' ? null : most(level === 'scanner' ? 0.6 : 1.5),
      note: `${errors.length} colours in ${pads.length} pictures, each beside a card of its own; the median of a picture: 80 % between ${at(0.1)} and ${at(0.9)}`,
    },
    ...calibrationFigures(
      errors,
      `${level}, many white cards: printed colours`,
      level === 'normal' ? 7 : null,
    ),
  ];
}

/**
 * Stated errors where one file in three has bent tones, as the reading takes it beforehand for a file that names no camera:
 * in no 'normal' picture are they bent, in every 'hard' one they are, so each kind by itself is stated too wide or narrow.
 */
export function mixedFigures(
  straight: readonly ColourError[],
  bent: readonly ColourError[],
): Figure[] {
  return [1, 2].map((times) => {
    const [unbent, all] = [straight, bent].map((errors) =>
      share(
        errors.filter(({ off }) => off <= SAME).map(({ off, stated }) => off <= times * stated),
      ),
    ) as [number, number];
    return {
      name: `two pictures with straight tones to one with bent: errors within ${times === 1 ? 'one' : 'two'} stated`,
      value: (100 * (2 * unbent + all)) / 3,
      unit: '%',
      bar: null,
      note: `of the 'normal' ones ${(100 * unbent).toFixed(0)} %, of the 'hard' ones, all of them bent, ${(100 * all).toFixed(0)} %; many white cards`,
    };
  });
}
