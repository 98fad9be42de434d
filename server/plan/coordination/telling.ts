import type { Lab } from '../../colour/lab.ts';
import { KRAFT, LIGHT_NEUTRAL_FROM, NEUTRAL_FADES, TELLING, TONE } from '../weights.ts';
import { chroma } from './look.ts';
import { ramp } from './steps.ts';

/**
 * How much it tells that two papers share this colour, in (0, 1]: whites, creams, greys and kraft go
 * into every pad, so that sharing them says little; a coral or a teal says much.
 */
export function telling(lab: Lab): number {
  const neutral = 1 - ramp(chroma(lab), NEUTRAL_FADES.from, NEUTRAL_FADES.to);
  const common = neutral * (lab.l > LIGHT_NEUTRAL_FROM ? 1 : 0.5);
  return 1 - (1 - TELLING) * Math.max(common, isKraft(lab) ? 1 : 0);
}

/** The brown of unbleached paper. */
export function isKraft(lab: Lab): boolean {
  const { lightness, chroma: strength, hue } = KRAFT;
  return (
    Math.abs(lab.l - lightness.at) <= lightness.by &&
    Math.abs(chroma(lab) - strength.at) <= strength.by &&
    hueApart(lab, { l: 0, a: Math.cos(hue.at), b: Math.sin(hue.at) }) <= hue.by
  );
}

/** Tone on tone: how far two colours are lighter and darker shades of one hue, in [0, 1]. */
export function toneOnTone(a: Lab, b: Lab): number {
  if (chroma(a) < TONE.chroma || chroma(b) < TONE.chroma) return 0;
  return 1 - ramp(hueApart(a, b), TONE.whole, TONE.none);
}

/** In radians, from 0 to pi. */
function hueApart(a: Lab, b: Lab): number {
  const apart = Math.abs(Math.atan2(a.b, a.a) - Math.atan2(b.b, b.a));
  return Math.min(apart, 2 * Math.PI - apart);
}
