import type { Lab } from '../../colour/lab.ts';
import { STEP } from '../weights.ts';
import type { Look, LookColour } from './look.ts';

/**
 * Told apart along the border: 0 for the same paper beside itself, near 1 for a clear step in
 * lightness, in busyness or in colour. One clear step is enough; small steps add up.
 * Beside a cardstock it is the part of the border that is told apart: however busy a print is, its
 * edge is lost wherever a colour of the cardstock's own lies at it.
 */
export function contrast(a: Look, b: Look): number {
  if (a.solid !== b.solid) {
    const [stock, print] = a.solid ? [a, b] : [b, a];
    return toldFrom(stock, print);
  }
  const busyness = (a.busyness - b.busyness) / STEP.busyness;
  return 1 - Math.exp(-(busyness ** 2 + steps(a.mean, b.mean)));
}

/** The colour of a print by which most of its border with a cardstock is lost. */
export function lostIn(stock: Look, print: Look): LookColour {
  const lost = ({ lab, share }: LookColour): number => share * Math.exp(-steps(lab, stock.mean));
  return print.colours.reduce((most, colour) => (lost(colour) > lost(most) ? colour : most));
}

function toldFrom(stock: Look, print: Look): number {
  let told = 0;
  let all = 0;
  for (const { lab, share } of print.colours) {
    told += share * (1 - Math.exp(-steps(lab, stock.mean)));
    all += share;
  }
  return told / all;
}

/** The squares of the steps between two colours, in lightness and in the plane of hue and chroma. */
function steps(a: Lab, b: Lab): number {
  const lightness = (a.l - b.l) / STEP.lightness;
  const colour = Math.hypot(a.a - b.a, a.b - b.b) / STEP.colour;
  return lightness ** 2 + colour ** 2;
}
