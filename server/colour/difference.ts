import type { Lab } from './lab.ts';

/**
 * How different two flat colours look side by side, as CIEDE2000.
 *
 * Takes       two colours in CIELAB (D65, 2 degree observer): l in [0, 100], a and b without unit.
 * Gives       a number >= 0 without unit; 0 only for equal colours. Symmetric, but no metric,
 *             so it must not move a k-means centre (clustering uses plain CIELAB distance).
 * Good up to  about 5 by the intent of the formula; beyond that it only ranks 'clearly different'.
 *             For untextured colours: a patterned paper is first reduced to its flat colours.
 * Source      Sharma, Wu, Dalal (2005), Color Res. Appl. 30(1), 21-30, doi:10.1002/col.20070, eqs. 2-22.
 * Checked     against all 34 pairs of their Table 1,
 *             and against culori's differenceCiede2000, which makes objects on its way: this one is asked
 *             millions of times in a plan or a batch of matches.
 */
export function difference(one: Lab, other: Lab): number {
  const [c1, c2] = [chroma(one.a, one.b), chroma(other.a, other.b)];
  // Eqs. 2-7: a is stretched where colours are near grey; hues in radians from 0 up.
  const stretch = 1.5 - 0.5 * Math.sqrt(seventh((c1 + c2) / 2));
  const [a1, a2] = [stretch * one.a, stretch * other.a];
  const [d1, d2] = [chroma(a1, one.b), chroma(a2, other.b)];
  const [h1, h2] = [hue(a1, one.b), hue(a2, other.b)];
  // Eqs. 8-14: steps and means; a grey has no hue, so the other's counts.
  const grey = d1 * d2 === 0;
  const turn = grey ? 0 : shortWay(h2 - h1);
  const h = grey ? h1 + h2 : meanHue(h1, h2);
  const [l, d] = [(one.l + other.l) / 2, (d1 + d2) / 2];
  // Eqs. 15-21: what a step of lightness, chroma and hue weighs there, and how blue turns.
  const t =
    1 -
    0.17 * Math.cos(h - Math.PI / 6) +
    0.24 * Math.cos(2 * h) +
    0.32 * Math.cos(3 * h + Math.PI / 30) -
    0.2 * Math.cos(4 * h - (63 * Math.PI) / 180);
  const off = (l - 50) * (l - 50);
  const dl = (other.l - one.l) / (1 + (0.015 * off) / Math.sqrt(20 + off));
  const dc = (d2 - d1) / (1 + 0.045 * d);
  const dh = (2 * Math.sqrt(d1 * d2) * Math.sin(turn / 2)) / (1 + 0.015 * d * t);
  const blue = ((h * 180) / Math.PI - 275) / 25;
  const turned = -2 * Math.sqrt(seventh(d)) * Math.sin((Math.PI / 3) * Math.exp(-blue * blue));
  // Eq. 22.
  return Math.sqrt(Math.max(0, dl * dl + dc * dc + dh * dh + turned * dc * dh));
}

function chroma(a: number, b: number): number {
  return Math.sqrt(a * a + b * b);
}

/** c^7 / (c^7 + 25^7): near 0 for greys, 1 for what is colourful. */
function seventh(c: number): number {
  const c2 = c * c;
  const c7 = c2 * c2 * c2 * c;
  return c7 / (c7 + 6103515625);
}

function hue(a: number, b: number): number {
  if (a === 0 && b === 0) return 0;
  const h = Math.atan2(b, a);
  return h < 0 ? h + 2 * Math.PI : h;
}

function shortWay(turn: number): number {
  if (turn > Math.PI) return turn - 2 * Math.PI;
  return turn < -Math.PI ? turn + 2 * Math.PI : turn;
}

function meanHue(h1: number, h2: number): number {
  const sum = h1 + h2;
  if (Math.abs(h1 - h2) <= Math.PI) return sum / 2;
  return sum < 2 * Math.PI ? sum / 2 + Math.PI : sum / 2 - Math.PI;
}

/** Plain straight-line distance in CIELAB (the colour difference of 1976): a metric, unlike CIEDE2000. */
export function labDistance(a: Lab, b: Lab): number {
  return Math.hypot(a.l - b.l, a.a - b.a, a.b - b.b);
}

/**
 * How many CIEDE2000 one CIELAB unit is worth at a colour, along l, a and b: near 1 at a mid grey, about a third
 * along the hue's own line for saturated colours.
 */
export function differencePerUnit(at: Lab): readonly [l: number, a: number, b: number] {
  const step = 0.5;
  const worth = ([dl, da, db]: readonly [number, number, number]): number => {
    const near = (by: number): number =>
      difference(at, { l: at.l + dl * by, a: at.a + da * by, b: at.b + db * by }) ** 2;
    return Math.sqrt((near(step) + near(-step)) / 2) / step;
  };
  return [worth([1, 0, 0]), worth([0, 1, 0]), worth([0, 0, 1])];
}
