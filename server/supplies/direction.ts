import { difference, labDistance } from '../colour/difference.ts';
import type { Lab } from '../colour/lab.ts';
import { LIMITS } from './verdict.ts';

/** A part of the difference counts when it makes up this share of the largest part. */
const COUNTS = 0.45;
/** Below this chroma a colour has no hue to speak of, and only its tint is named. */
const GREYISH = 8;
/** From here on CIEDE2000 says no more than plain distance does, which is quicker. */
const FAR = 20;

/**
 * How one colour looks beside another, in words: 'a little lighter and yellower'.
 *
 * Each of lightness, strength and hue is changed alone, and named when its own CIEDE2000 matters.
 *
 * Takes       the two colours, and their CIEDE2000 where it is known already.
 * Gives       '' for colours that most eyes cannot tell apart (below 0.8 CIEDE2000).
 */
export function directionOf(
  colour: Lab,
  beside: Lab,
  whole: number = difference(colour, beside),
): string {
  if (whole < LIMITS.perceived) return '';
  const measure = whole > FAR ? labDistance : difference;
  const parts = [
    {
      word: colour.l > beside.l ? 'lighter' : 'darker',
      size: measure({ ...beside, l: colour.l }, beside),
    },
    ...hueParts(colour, beside, measure),
  ];
  const most = Math.max(...parts.map((part) => part.size));
  const named = parts
    .filter((part) => part.size >= COUNTS * most)
    .sort((a, b) => b.size - a.size)
    .slice(0, 2)
    .map((part) => part.word);
  return `${amount(whole)} ${named.join(' and ')}`;
}

interface Part {
  readonly word: string;
  readonly size: number;
}

type Measure = (a: Lab, b: Lab) => number;

function hueParts(colour: Lab, beside: Lab, measure: Measure): Part[] {
  const [c, c0] = [chroma(colour), chroma(beside)];
  if (Math.min(c, c0) < GREYISH) {
    return [{ word: tint(colour, beside), size: measure({ ...colour, l: beside.l }, beside) }];
  }
  const stronger = scaled(beside, c / c0);
  return [
    { word: c > c0 ? 'stronger' : 'greyer', size: measure(stronger, beside) },
    {
      word: tint(scaled(colour, c0 / c), beside),
      size: measure({ ...scaled(colour, c0 / c), l: beside.l }, beside),
    },
  ];
}

/** The word for the larger of the shifts along red-green and yellow-blue. */
function tint(colour: Lab, beside: Lab): string {
  const [da, db] = [colour.a - beside.a, colour.b - beside.b];
  if (Math.abs(da) > Math.abs(db)) return da > 0 ? 'redder' : 'greener';
  return db > 0 ? 'yellower' : 'bluer';
}

function amount(whole: number): string {
  if (whole < LIMITS.accepted) return 'a touch';
  if (whole < LIMITS.close) return 'a little';
  return whole < 12 ? 'clearly' : 'much';
}

function chroma({ a, b }: Lab): number {
  return Math.hypot(a, b);
}

function scaled(lab: Lab, by: number): Lab {
  return { l: lab.l, a: lab.a * by, b: lab.b * by };
}
