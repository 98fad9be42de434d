import type { Lab } from '../colour/lab.ts';
import type { Side } from '../pad/pad.ts';
import { bestCardstock } from './best-cardstock.ts';
import type { Occasion } from './best-for.ts';
import { bestGreetingInk, inksForAccents } from './best-ink.ts';
import { inkOnPaper } from './ink-on-paper.ts';
import { legibility } from './legibility.ts';
import type { Wanted } from './shopping-list.ts';
import type { Supply } from './supply.ts';

/** A black dye ink on white card; from memory, no source. */
const BLACK: Lab = { l: 18, a: 0, b: 0 };

/**
 * What a card lacks of her supplies: a cardstock that goes under its papers, an ink that picks up one of
 * its accents, and an ink that can be read on its strip: black, since one black serves all light strips.
 * What she cannot help by buying (no dye ink reads on a dark strip) is not in it.
 */
export function whatIsMissing(supplies: readonly Supply[], occasion: Occasion): Wanted[] {
  const { strips, card, wantsCardstock, wantsAccent } = occasion;
  return [
    ...(wantsCardstock ? missingCardstock(supplies, occasion) : []),
    ...(wantsAccent ? missingAccentInk(supplies, occasion) : []),
    ...missingGreetingInk(supplies, strips, card),
  ];
}

function missingCardstock(
  supplies: readonly Supply[],
  { card, sides, colour }: Occasion,
): Wanted[] {
  const lab = accentOf(sides, colour) ?? sides[0]?.palette.colours[0]?.lab;
  if (lab === undefined) return [];
  const serves = bestCardstock(supplies, sides, colour).some(({ use }) => use !== 'odd');
  return serves ? [] : [{ kind: 'cardstock', lab, card, area: 0 }];
}

function missingAccentInk(
  supplies: readonly Supply[],
  { card, sides, colour }: Occasion,
): Wanted[] {
  const lab = accentOf(sides, colour, LIGHTEST_INK);
  if (lab === undefined) return [];
  const picksUp = sides
    .flatMap((side) => inksForAccents(supplies, side, colour))
    .some(({ best }) => best !== null && best.match.verdict !== 'apart');
  return picksUp ? [] : [{ kind: 'ink', lab, card, area: 0 }];
}

/** A dye ink only darkens: lighter than this there is none that shows on white. Common practice, no source. */
const LIGHTEST_INK = 85;

/** The accent of the largest share, or the one colour asked of, of those no lighter than so many steps of L. */
function accentOf(sides: readonly Side[], colour?: number, lightest = 100): Lab | undefined {
  return sides
    .flatMap(({ palette }) =>
      palette.colours.filter(({ role }, place) =>
        colour === undefined ? role === 'accent' : place === colour,
      ),
    )
    .filter(({ lab }) => lab.l <= lightest)
    .sort((a, b) => b.share - a.share)[0]?.lab;
}

/** One ink for all strips of the card is enough: she may stamp on the one that it reads on. */
function missingGreetingInk(
  supplies: readonly Supply[],
  strips: readonly Lab[],
  card: number,
): Wanted[] {
  if (strips.length === 0) return [];
  const readable = strips.some((strip) => {
    const best = bestGreetingInk(supplies, strip, [])[0];
    return best !== undefined && best.reads.verdict !== 'cannot be read';
  });
  if (readable) return [];
  const helps = strips.some((strip) => readsInBlack(strip));
  return helps ? [{ kind: 'ink', lab: BLACK, card, area: 0 }] : [];
}

/** Whether a greeting in black can be read on a strip. */
export function readsInBlack(strip: Lab): boolean {
  return legibility(inkOnPaper(BLACK, strip).lab, strip).verdict !== 'cannot be read';
}
