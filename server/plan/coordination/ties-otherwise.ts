import type { Lab } from '../../colour/lab.ts';
import { NEUTRAL_CHROMA } from '../weights.ts';
import { chroma } from './look.ts';
import type { Look } from './look.ts';
import type { Called } from './statements.ts';
import { words } from './words.ts';

/** Grounds that differ less in lightness, in L* of CIELAB, are of one depth. Common practice, no source. */
const ONE_DEPTH = 8;
/** Hue angles of CIELAB in degrees: from where colours pass as cool, and from where as warm again. Common practice, no source. */
const COOL = { from: 135, to: 315 };

/**
 * What goes together in two looks that share no colour, as a sentence: a neutral ground, warm against cool, a plain
 * colour that sets a print off, one depth, or light against dark.
 */
export function tieOtherwise(a: Look, b: Look, called: Called): string {
  const neutral = isNeutral(a) ? { look: a, name: called.a } : { look: b, name: called.b };
  const other = neutral.look === a ? called.b : called.a;
  if (!neutral.look.solid && isNeutral(neutral.look))
    return `The ${words(neutral.look.ground.lab)} ground of ${neutral.name} leaves the colours to ${other}.`;
  const [one, two] = [a.ground.lab, b.ground.lab];
  if (isCool(one) !== isCool(two)) {
    const [warm, cool] = isCool(one)
      ? [`${words(two)} of ${called.b}`, `${words(one)} of ${called.a}`]
      : [`${words(one)} of ${called.a}`, `${words(two)} of ${called.b}`];
    return `The warm ${warm} stands against the cool ${cool}.`;
  }
  if (a.solid || b.solid) {
    const [plain, print] = a.solid ? [called.a, called.b] : [called.b, called.a];
    return `${plain} is a plain colour of its own and sets ${print} off.`;
  }
  if (Math.abs(one.l - two.l) <= ONE_DEPTH)
    return `The grounds of ${called.a} and ${called.b} are of one depth.`;
  const [light, dark] = one.l > two.l ? [called.a, called.b] : [called.b, called.a];
  return `The lighter ground of ${light} stands against the darker one of ${dark}.`;
}

function isNeutral({ ground }: Look): boolean {
  return chroma(ground.lab) <= NEUTRAL_CHROMA;
}

function isCool({ a, b }: Lab): boolean {
  const hue = ((Math.atan2(b, a) * 180) / Math.PI + 360) % 360;
  return hue >= COOL.from && hue < COOL.to;
}
