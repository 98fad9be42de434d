import { difference } from './difference.ts';
import { ISCC_NBS } from './iscc-nbs.ts';
import type { CalledLab, Lab } from './lab.ts';
import { labFromHex } from './spaces.ts';

/** A colour's name at the three levels of ISCC-NBS, in lower case, and as screens show it. */
export interface ColourName {
  /** One of 13: for families. */
  readonly group: string;
  /** One of 29. */
  readonly middle: string;
  /** One of 267; published centroid sets disagree on it, so it is a hint only. */
  readonly fine: string;
  /** The middle name with a lightness word where it helps: 'light bluish green', 'grayish blue'. */
  readonly words: string;
}

/**
 * The ISCC-NBS name of a colour: a neutral by the system's own limits,
 * any other by the nearest centroid in CIEDE2000.
 *
 * Takes       a colour in CIELAB (D65).
 * Gives       its name at three levels; the same colour (to 0.1 unit) has always the same name. Where its pad
 *             has given it a name (padNames), screens show that one.
 * Good up to  the middle level: two published centroid sets agree on the fine name of only 42 % of
 *             colours, on the middle one of 62 %, on the group of 80 %.
 * Source      NBS Special Publication 440 (1976).
 * Checked     on published greys and on the patch names of a published 24-patch target.
 */
export function nameOf(lab: Lab): ColourName {
  const same = rememberedOf.get(lab);
  if (same !== undefined) return same;
  const own = rememberedName(lab);
  const { called } = lab as Partial<CalledLab>;
  const name = called === undefined ? own : { ...own, words: called };
  rememberedOf.set(lab, name);
  return name;
}

/** The colours of a palette are asked for again and again. */
const rememberedOf = new WeakMap<Lab, ColourName>();

function rememberedName(lab: Lab): ColourName {
  const key = [lab.l, lab.a, lab.b].map((value) => Math.round(value * 10)).join(' ');
  const known = remembered.get(key);
  if (known !== undefined) return known;
  const name = named({
    l: Math.round(lab.l * 10) / 10,
    a: Math.round(lab.a * 10) / 10,
    b: Math.round(lab.b * 10) / 10,
  });
  if (remembered.size >= REMEMBERED) remembered.clear();
  remembered.set(key, name);
  return name;
}

const REMEMBERED = 4096;
const remembered = new Map<string, ColourName>();

/** Words for how vivid a colour is say little beside the colour itself; those for light and dark help. */
const LEFT_OUT = /^(?:vivid|brilliant|strong|moderate|medium) /;

/** The name as screens show it. */
export function wordsOf(fine: string): string {
  return fine.replace(LEFT_OUT, '');
}

interface Centroid {
  readonly lab: Lab;
  readonly name: ColourName;
}

const CENTROIDS: readonly Centroid[] = ISCC_NBS.flatMap(([group, middle, fine]) =>
  fine.map(([name, hex]) => ({
    lab: labFromHex(hex),
    name: {
      group: group.toLowerCase(),
      middle: middle.toLowerCase(),
      fine: name.toLowerCase(),
      words: wordsOf(name.toLowerCase()),
    },
  })),
);

function named(lab: Lab): ColourName {
  return Math.hypot(lab.a, lab.b) < NEUTRAL_CHROMA ? neutral(lab.l) : nearest(lab);
}

/**
 * SP 440 calls a colour neutral below Munsell chroma 0.5 and parts the neutrals at Munsell values 2.5,
 * 4.5, 6.5 and 8.5. One step of Munsell chroma is 4 to 6 units of CIELAB chroma near the greys; the
 * values become lightness by the polynomial of ASTM D1535.
 */
const NEUTRAL_CHROMA = 2;
const NEUTRALS: readonly (readonly [fine: string, below: number])[] = [
  ['black', lightnessOfValue(2.5)],
  ['dark gray', lightnessOfValue(4.5)],
  ['medium gray', lightnessOfValue(6.5)],
  ['light gray', lightnessOfValue(8.5)],
  ['white', Infinity],
];

function neutral(lightness: number): ColourName {
  const [fine] = NEUTRALS.find(([, below]) => lightness < below)!;
  return CENTROIDS.find(({ name }) => name.fine === fine)!.name;
}

function lightnessOfValue(v: number): number {
  const percent =
    1.1914 * v - 0.22533 * v ** 2 + 0.23352 * v ** 3 - 0.020484 * v ** 4 + 0.00081939 * v ** 5;
  return 116 * Math.cbrt(percent / 100) - 16;
}

function nearest(lab: Lab): ColourName {
  let best = CENTROIDS[0]!;
  let least = Infinity;
  for (const centroid of CENTROIDS) {
    const apart = difference(lab, centroid.lab);
    if (apart < least) {
      least = apart;
      best = centroid;
    }
  }
  return best.name;
}
