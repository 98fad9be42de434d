import { differenceCiede2000 } from 'culori';
import type { Lab } from './lab.ts';

const ciede2000 = differenceCiede2000();

/**
 * How different two flat colours look side by side, as CIEDE2000.
 *
 * Takes       two colours in CIELAB (D65, 2 degree observer): l in [0, 100], a and b without unit.
 * Gives       a number >= 0 without unit; 0 only for equal colours. Symmetric, but no metric,
 *             so it must not move a k-means centre (clustering uses plain CIELAB distance).
 * Good up to  about 5 by the intent of the formula; beyond that it only ranks 'clearly different'.
 *             For untextured colours: a patterned paper is first reduced to its flat colours.
 * Source      Sharma, Wu, Dalal (2005), Color Res. Appl. 30(1), 21-30, doi:10.1002/col.20070, eqs. 2-22.
 * Checked     against all 34 pairs of their Table 1.
 * Computed by culori's differenceCiede2000, which reads mode lab65; mode lab (D50) would be
 *             converted silently first, so this function is the only door to it.
 */
export function difference(a: Lab, b: Lab): number {
  return ciede2000(
    { mode: 'lab65', l: a.l, a: a.a, b: a.b },
    { mode: 'lab65', l: b.l, a: b.a, b: b.b },
  );
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
