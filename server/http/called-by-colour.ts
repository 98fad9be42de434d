import type { Lab } from '../colour/lab.ts';
import { nameOf } from '../colour/names.ts';
import { sentence } from '../plan/coordination/statements.ts';

/** The words of each colour, counted where several of them are called alike. */
export function namesByColour(colours: readonly Lab[]): string[] {
  const words = colours.map((lab) => sentence(nameOf(lab).words));
  return words.map((word, at) => {
    if (words.indexOf(word) === words.lastIndexOf(word)) return word;
    return `${word} ${words.slice(0, at + 1).filter((one) => one === word).length}`;
  });
}

/** Whether a name is that of the colour, perhaps counted on, and none of her own. */
export function isCalledByColour(name: string, lab: Lab): boolean {
  return name.replace(/ \d+$/, '') === sentence(nameOf(lab).words);
}
