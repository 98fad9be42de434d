import { difference } from '../colour/difference.ts';
import type { Lab } from '../colour/lab.ts';
import type { Sheet, Side } from '../pad/pad.ts';
import type { Supply } from '../supplies/supply.ts';

/** One thing that a part of a card can be made of. */
export type Option =
  | {
      readonly kind: 'paper';
      readonly design: number;
      readonly sheet: string;
      readonly side: Side;
    }
  | { readonly kind: 'supply'; readonly supply: Supply }
  | { readonly kind: 'wanted'; readonly lab: Lab };

/** A sheet that may be used, with its copies and the sides that were read. */
export interface Design {
  readonly sheet: Sheet;
  readonly sides: readonly Side[];
}

export function designsOf(sheets: readonly Sheet[], without: readonly string[] = []): Design[] {
  return sheets
    .filter((sheet) => !without.includes(sheet.id))
    .map((sheet) => ({
      sheet,
      sides: [sheet.front, sheet.back].filter((side): side is Side => side !== null),
    }))
    .filter((design) => design.sides.length > 0);
}

export function paperOptions(designs: readonly Design[]): Option[] {
  return designs.flatMap(({ sheet, sides }, design) =>
    sides.map((side): Option => ({ kind: 'paper', design, sheet: sheet.id, side })),
  );
}

/** Her cardstock that is not used up, then what she could buy. */
export function cardstockOptions(
  supplies: readonly Supply[],
  designs: readonly Design[],
): Option[] {
  const hers = supplies
    .filter((supply) => supply.kind === 'cardstock' && supply.sheets !== 0)
    .map((supply): Option => ({ kind: 'supply', supply }));
  const wanted = wantedColours(designs)
    .filter(
      (lab) => !hers.some((option) => option.kind === 'supply' && alike(option.supply.lab, lab)),
    )
    .map((lab): Option => ({ kind: 'wanted', lab }));
  return [...hers, ...wanted];
}

/** A plain white and a charcoal: quiet neutrals that any shop of paper has. Common practice, no source. */
const NEUTRALS: readonly Lab[] = [
  { l: 95, a: 0, b: 1 },
  { l: 30, a: 0, b: 0 },
];
/** Colours closer than this are one purchase (CIEDE2000). */
const ONE_PURCHASE = 5;
const STORY_COLOURS = 6;

/** The colours that run through the pad, by area, and the neutrals. */
function wantedColours(designs: readonly Design[]): Lab[] {
  const found: { lab: Lab; area: number }[] = [];
  const colours = designs
    .flatMap(({ sides }) => sides.flatMap((side) => side.palette.colours))
    .sort((a, b) => b.share - a.share);
  for (const { lab, share } of colours) {
    const known = found.find((other) => alike(other.lab, lab));
    if (known === undefined) found.push({ lab, area: share });
    else known.area += share;
  }
  const story = found
    .sort((a, b) => b.area - a.area)
    .slice(0, STORY_COLOURS)
    .map(({ lab }) => lab);
  return [...story, ...NEUTRALS.filter((neutral) => !story.some((lab) => alike(lab, neutral)))];
}

function alike(a: Lab, b: Lab): boolean {
  return difference(a, b) < ONE_PURCHASE;
}
