import type { Lab } from '../colour/lab.ts';
import { labDistance } from '../colour/difference.ts';
import { labFromLinear, linearFromLab, linearSrgbOf } from '../colour/spaces.ts';
import { polygonArea } from '../geometry/polygon.ts';
import type { Quad } from '../geometry/points.ts';
import type { White } from './correction.ts';
import { whiteGains } from './correction.ts';
import { middleOf } from './find-sheets.ts';
import type { Candidate } from './find-sheets.ts';
import { lightAt } from './light.ts';
import type { LightField } from './light.ts';
import type { ChipsSeen, Picture } from './picture.ts';
import { tieByChips } from './tie-by-chips.ts';
import type { Light3 } from './tie-by-chips.ts';
import { patchOf } from './white-card.ts';

export const NO_CHIPS: ChipsSeen = { tie: 'none', scraps: [] };

/** What the chips of a photo came to. */
export interface TiedPhoto {
  readonly seen: ChipsSeen;
  /** Linear sRGB light of this photo as the first photo would have shown it; null when nothing is tied. */
  readonly tie: ((light: Light3) => Light3) | null;
  /** How well the chips agree after the tie, in CIELAB units. */
  readonly left: number;
  readonly notes: readonly string[];
}

export interface ChipsAsk {
  /** The white card, on the preview: it lies in every picture too and holds the light end of the tie. */
  readonly card: Quad<'photo'> | null;
  /** Corners on the preview that she showed, or null when the chips are to be found. */
  readonly shown: readonly Quad<'photo'>[] | null;
  /** The colours that the chips have in the pad's other photos, if any. */
  readonly known: readonly Lab[];
}

/**
 * Finds the scraps of paper that lie in every picture of a pad, and ties this picture by them.
 *
 * Takes       the preview with its light and white, the small things on the table, and what is known.
 * Gives       the scraps with the colours that they have in all photos. Where none are known yet, this
 *             photo defines them; where they are, each is told by its colour, so their order on the
 *             table is free.
 * Good up to  scraps whose colours lie 15 CIELAB units and more apart; at least two greys of different
 *             lightness and three scraps in all besides the white card, or nothing is tied.
 */
export function tiedPhoto(
  preview: Picture,
  field: LightField,
  white: White,
  others: readonly Candidate[],
  { card, shown, known }: ChipsAsk,
): TiedPhoto {
  const patches = shown ?? likeChips(others);
  const scraps = patches.flatMap((corners) => {
    const scrap = scrapAt(preview, field, white, corners);
    return scrap === null || (shown === null && scrap.uneven > PLAIN) ? [] : [scrap];
  });
  // Where she touched the scraps of a first picture, hers are the scraps: the white is among them.
  const counts = card !== null && (shown === null || known.length > 0);
  const held = counts ? scrapAt(preview, field, white, card) : null;
  const cards = held === null ? [] : [held];
  if (known.length === 0) {
    if (
      !canTie(
        scraps.map(({ lab }) => lab),
        shown === null ? FOUND : SHOWN,
      )
    )
      return untied(shown === null ? [] : [TOO_FEW]);
    return {
      seen: {
        tie: 'first',
        scraps: [...scraps, ...cards].map(({ corners, lab }) => ({ corners, lab })),
      },
      tie: null,
      left: 0,
      notes: [],
    };
  }
  const pairs = matched([...scraps, ...cards], known);
  const own = pairs.filter(({ scrap }) => !cards.includes(scrap));
  if (
    !canTie(
      own.map(({ wanted }) => wanted),
      SHOWN,
    )
  )
    return untied(shown === null && own.length === 0 ? [] : [TOO_FEW]);
  const tie = tieByChips(
    pairs.map(({ scrap, wanted }) => ({
      seen: scrap.light,
      wanted: lightOf(wanted),
      grey: isGrey(wanted),
    })),
  );
  const left = pairs.map(({ scrap, wanted }) => labDistance(labOf(tie(scrap.light)), wanted));
  return {
    seen: {
      tie: 'tied',
      scraps: pairs.map(({ scrap, wanted }) => ({ corners: scrap.corners, lab: wanted })),
    },
    tie,
    left: Math.sqrt(left.reduce((sum, off) => sum + off * off, 0) / left.length),
    notes: [],
  };
}

const TOO_FEW =
  'The colour scraps could not all be told in this picture, so its colours are not tied to the other pictures; lay a white, a grey, a black and some colours side by side, and touch each of them.';

/** More is asked of things that nobody pointed at. */
const FOUND = { scraps: 4, greys: 2 };
const SHOWN = { scraps: 3, greys: 2 };
/** The greys must span so much lightness to tell a curve. */
const SPAN = 25;
/** Chroma up to which paper counts as grey: white paper holds brighteners, and a phone tints black. */
const GREY = 10;
/** Unevenness of a thing that is no scrap of plain paper. */
const PLAIN = 0.12;
/** Seen in another room, after the white is right, a scrap moves less than this, in CIELAB units. */
const MOVES = 30;

function untied(notes: readonly string[]): TiedPhoto {
  return { seen: NO_CHIPS, tie: null, left: 0, notes };
}

interface Scrap {
  readonly corners: Quad<'photo'>;
  /** Linear sRGB, with the light evened and the white right. */
  readonly light: Light3;
  readonly lab: Lab;
  readonly uneven: number;
}

function scrapAt(
  preview: Picture,
  field: LightField,
  white: White,
  corners: Quad<'photo'>,
): Scrap | null {
  const patch = patchOf(preview, corners);
  if (patch === null) return null;
  const { x, y } = middleOf(corners);
  const here = lightAt(field, x, y);
  const gains = whiteGains(white);
  const own = patch.light.map((value, k) => (value * gains[k]!) / here[k]!);
  const light = linearSrgbOf(own as unknown as Light3, preview.primaries);
  return { corners, light, lab: labOf(light), uneven: patch.uneven };
}

/** Scraps are small things of one size: those near the middle size of the small ones. */
function likeChips(others: readonly Candidate[]): Quad<'photo'>[] {
  const areas = others.map(({ corners }) => polygonArea(corners));
  let best: Quad<'photo'>[] = [];
  for (const area of areas) {
    const alike = others.filter((_, at) => areas[at]! > area / 1.6 && areas[at]! < area * 1.6);
    if (alike.length > best.length) best = alike.map(({ corners }) => corners);
  }
  return best;
}

function canTie(colours: readonly Lab[], least: typeof FOUND): boolean {
  const greys = colours.filter(isGrey).map(({ l }) => l);
  return (
    colours.length >= least.scraps &&
    greys.length >= least.greys &&
    Math.max(...greys) - Math.min(...greys) >= SPAN
  );
}

function isGrey({ a, b }: Lab): boolean {
  return Math.hypot(a, b) < GREY;
}

interface Match {
  readonly scrap: Scrap;
  readonly wanted: Lab;
}

/** Each known colour with the scrap that is nearest to it, the nearest pairs first, each once. */
function matched(scraps: readonly Scrap[], known: readonly Lab[]): Match[] {
  const pairs = scraps
    .flatMap((scrap) =>
      known.map((wanted) => ({ scrap, wanted, off: labDistance(scrap.lab, wanted) })),
    )
    .filter(({ off }) => off < MOVES)
    .sort((p, q) => p.off - q.off);
  const taken: Match[] = [];
  for (const { scrap, wanted } of pairs)
    if (!taken.some((pair) => pair.scrap === scrap || pair.wanted === wanted))
      taken.push({ scrap, wanted });
  return taken.sort((p, q) => known.indexOf(p.wanted) - known.indexOf(q.wanted));
}

function labOf([r, g, b]: Light3): Lab {
  return labFromLinear({ r, g, b });
}

function lightOf(lab: Lab): Light3 {
  const { r, g, b } = linearFromLab(lab);
  return [r, g, b];
}
