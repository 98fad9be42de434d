import type { CalledLab } from '../colour/lab.ts';
import type { Shown } from './card-score.ts';
import type { ColourTable, Look, LookColour } from './coordination/look.ts';
import { saidToShare } from './coordination/shared-accents.ts';
import { words } from './coordination/words.ts';

/** Two of what a card shows, of which one sentence speaks. */
export type Together = readonly [Shown, Shown];

/**
 * One name a colour for all that is said of a card. What passes as one colour there may be called otherwise on each
 * paper, near the border of two names; and a cardstock is named apart from the pad.
 *
 * Takes       all that the card's sentences speak of, pair by pair.
 * Gives       each of these looks with its colours called as the card calls them: those that a pair is said to
 *             share, and all that hang together so, have one name. What is to buy gives it, as it is called so on
 *             the shopping list; else the paper that shows most of the colour, as the pad calls it so.
 */
export function calledAlike(pairs: readonly Together[], table: ColourTable): (look: Look) => Look {
  const kinds = kindsOf(pairs, table);
  const renamed = new Map<Look, Look>();
  return (look) => {
    const known = renamed.get(look) ?? renamedBy(look, kinds);
    renamed.set(look, known);
    return known;
  };
}

/** A colour of what is shown; `index` is its place in the table, the same on every piece of one paper. */
interface Shade extends LookColour {
  readonly wanted: boolean;
  readonly solid: boolean;
}

function kindsOf(pairs: readonly Together[], table: ColourTable): Map<number, string> {
  const kinds = new Map<number, ReadonlySet<Shade>>();
  for (const [one, other] of pairs) {
    for (const { a, b, tone } of saidToShare(one.look, other.look, table)) {
      if (tone) continue;
      const shades = [shadeOf(one, a), shadeOf(other, b)];
      const joined = new Set(shades.flatMap((shade) => [shade, ...(kinds.get(shade.index) ?? [])]));
      for (const { index } of joined) kinds.set(index, joined);
    }
  }
  return new Map([...kinds].map(([index, shades]) => [index, words(nameGiver(shades).lab)]));
}

function shadeOf({ wanted, look: { solid } }: Shown, colour: LookColour): Shade {
  return { ...colour, wanted, solid };
}

function nameGiver(shades: ReadonlySet<Shade>): Shade {
  return [...shades].reduce((best, one) => (before(one, best) ? one : best));
}

function before(one: Shade, other: Shade): boolean {
  if (one.wanted !== other.wanted) return one.wanted;
  if (one.solid !== other.solid) return other.solid;
  return one.share > other.share;
}

function renamedBy(look: Look, kinds: ReadonlyMap<number, string>): Look {
  const colours = look.colours.map((colour): LookColour => {
    const called = kinds.get(colour.index);
    if (called === undefined) return colour;
    const lab: CalledLab = { ...colour.lab, called };
    return { ...colour, lab };
  });
  return { ...look, colours, ground: colours[look.colours.indexOf(look.ground)]! };
}
