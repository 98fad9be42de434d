/** Tables of papers and of supplies photographed apart, with the true colours of everything on them. */
import type { ColourTruth } from '../../sample-swatches/paper/render-side.ts';
import { makePad } from '../../sample-swatches/pad/make-pad.ts';
import { renderPhoto } from '../../sample-swatches/render-photo.ts';
import { makeScene, squaresScene } from '../../sample-swatches/scene/make-scene.ts';
import { difference } from '../../server/colour/difference.ts';
import type { Lab } from '../../server/colour/lab.ts';
import { hexFromLab, labFromHex } from '../../server/colour/spaces.ts';
import { readSides, readSupplies } from '../../server/from-photo-to-guide.ts';
import { parseSize } from '../../server/lengths/parse-size.ts';
import type { Side } from '../../server/pad/pad.ts';
import type { Supply } from '../../server/supplies/supply.ts';
import { chanceOf, normal } from '../colour/drawn.ts';
import { matchQuads } from './photos-match.ts';

export interface KnownSide {
  readonly side: Side;
  /** All that is printed on it, with how far a tone runs. */
  readonly printed: readonly ColourTruth[];
}

export interface KnownSupply {
  readonly supply: Supply;
  readonly lab: Lab;
}

export interface Tables {
  readonly sides: readonly KnownSide[];
  readonly supplies: readonly KnownSupply[];
  /** The same supplies on another day: other light, another place. */
  readonly again: readonly KnownSupply[];
}

const PIXELS = 1800;
/** Squares of cardstock in each picture of supplies. */
export const SQUARES = 8;

/** A pad's fronts, and cardstock that is like its colours, near them or nearly so, each in its own photo. */
export async function tablesOf(seed: number): Promise<Tables> {
  const pad = makePad(seed);
  const sheets = pad.sheets.map(({ front }) => front);
  const papers = await renderPhoto(
    makeScene(seed, 'normal', sheets, { pixels: PIXELS, card: true }),
  );
  const colours = likeThePad(seed, [...new Set(sheets.flatMap(({ colours }) => colours))]);
  const read = await readSides(papers.jpeg, parseSize('6 x 6 in'));
  const sides = matchQuads(read.sides, papers.truth.sheets, 0.7).map(
    ({ found, truth }, index): KnownSide => ({
      side: { ...found, id: `${seed}-${index}`, photo: `${seed}-papers` },
      printed: truth.palette,
    }),
  );
  return {
    sides,
    supplies: await suppliesIn(colours, seed, `${seed}-first`),
    again: await suppliesIn(colours, seed + 500_000, `${seed}-again`),
  };
}

/** Colours of the pad, each shifted by 0 to 9 CIELAB units, and a partner near each. */
function likeThePad(seed: number, hexes: readonly string[]): Lab[] {
  const chance = chanceOf(seed);
  const shifted = (lab: Lab, by: number): Lab => {
    const [l, a, b] = [normal(chance), normal(chance), normal(chance)];
    const unit = by / Math.hypot(l, a, b);
    return { l: Math.min(94, lab.l + unit * l), a: lab.a + unit * a, b: lab.b + unit * b };
  };
  const inSrgb = (lab: Lab): boolean => difference(labFromHex(hexFromLab(lab)), lab) < 0.5;
  const drawn = (lab: Lab): Lab => {
    for (let round = 0; round < 40; round++) {
      const found = shifted(lab, 9 * chance());
      if (inSrgb(found)) return found;
    }
    return lab;
  };
  return Array.from({ length: SQUARES }, (_, index) => {
    const base = labFromHex(hexes[(index >> 1) % hexes.length]!);
    return drawn(base);
  });
}

async function suppliesIn(
  colours: readonly Lab[],
  seed: number,
  photo: string,
): Promise<KnownSupply[]> {
  const named = colours.map((lab, index) => ({ name: `${index}`, lab }));
  const { jpeg, truth } = await renderPhoto(
    squaresScene(seed, 'normal', named, { pixels: PIXELS, card: true }),
  );
  const read = await readSupplies(jpeg);
  return matchQuads(read.supplies, truth.squares, 0.5).map(({ found, truth: known }) => ({
    lab: known.lab,
    supply: {
      id: known.name,
      kind: 'cardstock',
      name: known.name,
      lab: found.lab,
      uncertainty: found.uncertainty,
      photo,
      sheets: null,
    },
  }));
}
