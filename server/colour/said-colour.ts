import { colorsNamed } from 'culori';
import { difference } from './difference.ts';
import { ISCC_NBS } from './iscc-nbs.ts';
import type { Lab } from './lab.ts';
import { wordsOf } from './names.ts';
import { labFromHex, labFromCss } from './spaces.ts';

/** A colour that words stand for, and how far what they name may lie from it. */
export interface SaidColour {
  readonly words: string;
  readonly lab: Lab;
  /** Standard error in CIEDE2000. */
  readonly uncertainty: number;
}

/**
 * How far a colour lies from the centroid of its fine name, root mean square, in CIEDE2000: a name is
 * a region of colours and not one of them.
 *
 * Measured    over the 4,913 colours of an even lattice in sRGB; the test beside it measures again.
 */
export const SPREAD_OF_NAME = 7.6;

/**
 * All words that stand for a colour: the names of ISCC-NBS at their finest level, the shorter names that
 * screens show, which gather several of those, and the colour words of CSS.
 *
 * Gives       each of them once; where both systems have a word, the ISCC-NBS colour, which is meant for things
 *             and not for lights.
 * Source      NBS Special Publication 440 (1976); W3C, CSS Color Module Level 4, named colours.
 */
export function allSaidColours(): readonly SaidColour[] {
  all ??= [...saidByThings(), ...saidByScreens()];
  return all;
}

let all: readonly SaidColour[] | null = null;

/**
 * The colour that words stand for: 'dark reddish orange', 'forest green', 'greyish blue'.
 *
 * Takes       any writing of the words: capitals, 'grey' for 'gray', spaces left out.
 * Gives       null for words that stand for no colour here.
 */
export function saidColour(text: string): SaidColour | null {
  const said = spelled(text);
  return (
    allSaidColours().find(({ words }) => words === said) ??
    allSaidColours().find(({ words }) => closed(words) === closed(said)) ??
    null
  );
}

/** The known words that share the most with some that are not known, best first. */
export function nearlySaid(text: string, most = 3): readonly string[] {
  const asked = spelled(text).split(' ');
  const last = asked.at(-1);
  return allSaidColours()
    .map(({ words }) => {
      const has = words.split(' ');
      const shared = asked.filter((word) => has.includes(word)).length;
      return { words, worth: 2 * shared + (has.at(-1) === last ? 1 : 0) - has.length / 10 };
    })
    .filter(({ worth }) => worth > 1)
    .sort((a, b) => b.worth - a.worth)
    .slice(0, most)
    .map(({ words }) => words);
}

function spelled(text: string): string {
  return text
    .toLowerCase()
    .replaceAll('grey', 'gray')
    .replaceAll(/[\s_-]+/g, ' ')
    .trim();
}

function closed(words: string): string {
  return words.replaceAll(' ', '');
}

function saidByThings(): SaidColour[] {
  const byWords = new Map<string, Lab[]>();
  const add = (words: string, lab: Lab): void => {
    byWords.set(words, [...(byWords.get(words) ?? []), lab]);
  };
  for (const [, , fine] of ISCC_NBS)
    for (const [name, hex] of fine) {
      const words = name.toLowerCase();
      add(words, labFromHex(hex));
      if (wordsOf(words) !== words) add(wordsOf(words), labFromHex(hex));
    }
  return [...byWords].map(([words, labs]) => gathered(words, labs));
}

/** One colour in the middle of those that bear the words. */
function gathered(words: string, labs: readonly Lab[]): SaidColour {
  const mean = (axis: keyof Lab): number =>
    labs.reduce((sum, lab) => sum + lab[axis], 0) / labs.length;
  const lab = { l: mean('l'), a: mean('a'), b: mean('b') };
  const between = labs.reduce((sum, one) => sum + difference(one, lab) ** 2, 0) / labs.length;
  return { words, lab, uncertainty: Math.hypot(SPREAD_OF_NAME, Math.sqrt(between)) };
}

function saidByScreens(): SaidColour[] {
  const known = new Set(saidByThings().map(({ words }) => words));
  return Object.keys(colorsNamed)
    .map((words) => ({ words, said: spelled(words) }))
    .filter(({ words, said }) => words === said && !known.has(said))
    .map(({ words }) => ({ words, lab: labFromCss(words), uncertainty: SPREAD_OF_NAME }));
}
