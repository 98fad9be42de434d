import { difference } from '../colour/difference.ts';
import type { Lab } from '../colour/lab.ts';
import { LIMITS } from './verdict.ts';

/** A part of the difference counts when it makes up this share of the largest part. */
const COUNTS = 0.45;
/** Below this chroma a colour has no hue to speak of, and only its tint is named. */
const GREYISH = 8;
/**
 * How one colour looks beside another, in words: 'a little lighter and yellower'.
 *
 * Each of lightness, strength and hue is weighed as CIEDE2000 does, and named when it matters.
 *
 * Takes       the two colours, and their CIEDE2000 where it is known already.
 * Gives       '' for colours that most eyes cannot tell apart (below 0.8 CIEDE2000).
 * Source      the weights S_L and S_C of Sharma, Wu, Dalal (2005), eqs. 15-16, and S_H, eq. 17, with T = 1: what
 *             they leave out (hue by hue, and blue) changes no word that matters.
 */
export function directionOf(
  colour: Lab,
  beside: Lab,
  whole: number = difference(colour, beside),
): string {
  if (whole < LIMITS.perceived) return '';
  const parts = [
    {
      word: colour.l > beside.l ? 'lighter' : 'darker',
      size: Math.abs(colour.l - beside.l) / lightnessWeight((colour.l + beside.l) / 2),
    },
    ...hueParts(colour, beside),
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

function hueParts(colour: Lab, beside: Lab): Part[] {
  const [c, c0] = [chroma(colour), chroma(beside)];
  const [strength, hue] = [1 + 0.0225 * (c + c0), 1 + 0.0075 * (c + c0)];
  const whole = Math.sqrt((colour.a - beside.a) ** 2 + (colour.b - beside.b) ** 2);
  if (Math.min(c, c0) < GREYISH) return [{ word: tint(colour, beside), size: whole / strength }];
  return [
    { word: c > c0 ? 'stronger' : 'greyer', size: Math.abs(c - c0) / strength },
    {
      word: tint(scaled(colour, c0 / c), beside),
      size: Math.sqrt(Math.max(0, whole ** 2 - (c - c0) ** 2)) / hue,
    },
  ];
}

function lightnessWeight(l: number): number {
  const off = (l - 50) ** 2;
  return 1 + (0.015 * off) / Math.sqrt(20 + off);
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
  return Math.sqrt(a * a + b * b);
}

function scaled(lab: Lab, by: number): Lab {
  return { l: lab.l, a: lab.a * by, b: lab.b * by };
}
