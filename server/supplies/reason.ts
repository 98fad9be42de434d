import { difference } from '../colour/difference.ts';
import { nameOf } from '../colour/names.ts';
import type { PaletteColour } from '../colour/palette.ts';
import type { Compared } from './compared.ts';
import type { Nearest } from './nearest-colour.ts';
import type { Supply } from './supply.ts';
import { LIMITS } from './verdict.ts';
import type { Judged } from './verdict.ts';

/** From here on a colour was read without a white card, or in poor light, CIEDE2000. */
const POOR = 2;

/** What the verdict rests on, as one or two sentences for her; the figures are told beside them. */
export function reasonOf(
  supply: Supply,
  nearest: Nearest,
  judged: Judged,
  how: Compared,
  direction: string,
): string {
  const paper = paperSaid(nearest);
  switch (judged.verdict) {
    case 'match':
      return `Side by side with ${paper} most people would take the two for the same colour.`;
    case 'close':
      return `${sentence(direction)} than ${paper}: seen side by side, but in the same mood.${nearerSaid(nearest)}`;
    case 'apart':
      return nearest.nearer === null
        ? `${sentence(direction)} than ${paper}, the nearest colour of this side.`
        : `${sentence(direction)} than ${paper}.${nearerSaid(nearest)}`;
    case 'cannot tell':
      return `It may be ${paper} or not: ${doubt(supply, nearest, how)}`;
  }
}

/** The colour that was compared; of a tone that runs, where on its run. */
function paperSaid({ colour, at }: Nearest): string {
  const paper = `the paper's ${nameOf(colour.lab).words}`;
  if (difference(at, colour.lab) < LIMITS.perceived) return paper;
  return `${paper} where it runs ${at.l > colour.lab.l ? 'lighter' : 'darker'}`;
}

/** Asked of one colour, she is told where the side has one that is nearer. */
function nearerSaid({ colour, nearer }: Nearest): string {
  if (nearer === null) return '';
  const [name, other] = [nameOf(colour.lab).words, nameOf(nearer.lab).words];
  return ` Nearer to it is ${other === name ? `another ${name}` : `the ${other}`} of this side.`;
}

/** A colour of the side that is seen mixed with its ground. */
export function reasonTooFine({ lab }: PaletteColour): string {
  return `The paper's ${nameOf(lab).words} is printed in lines or dots too fine for this photo: on the paper it may be this colour, and here only look mixed with what lies beside it. Take the paper from nearer, fewer sheets in one picture, and ask again.`;
}

/** A supply in which the light mirrored. */
export function reasonGlossy({ kind }: Supply): string {
  const thing = kind === 'ink' ? 'A glossy smear: the' : 'A glossy sheet: the';
  const first = kind === 'ink' ? 'Let the ink dry, then turn' : 'Turn';
  return `${thing} light mirrored in it, and no photo tells a colour behind that. ${first} it until nothing shines on it, and take the picture again.`;
}

/** Why the photo is not sure enough, and how to get a better one. */
function doubt(supply: Supply, nearest: Nearest, how: Compared): string {
  if (how === 'typed' && supply.uncertainty > POOR)
    return 'the name of a colour tells it only roughly. Lay the real one beside the paper and take one picture of both.';
  if (how === 'typed')
    return 'a typed colour and a photo cannot be compared that finely. Lay the real one beside the paper and take one picture of both.';
  if (Math.max(supply.uncertainty, nearest.colour.uncertainty) > POOR)
    return 'the photo is not sure enough of its colours. Take one picture of both in even daylight, with a plain white card beside them.';
  if (how === 'two photos')
    return 'between two photos that is too fine to tell. Lay both in one picture, side by side, with a plain white card, and ask again.';
  return 'that lies right at the limit. Hold the two side by side in daylight and trust your eyes.';
}

function sentence(direction: string): string {
  const words = direction === '' ? 'hardly different' : direction;
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
}
