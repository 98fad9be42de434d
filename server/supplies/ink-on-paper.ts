import type { Lab } from '../colour/lab.ts';
import { labFromLinear, linearFromLab } from '../colour/spaces.ts';
import type { LinearRgb } from '../colour/spaces.ts';

/** White card as dye ink is usually swatched on; its whiteness from memory, no source. */
const WHITE_CARD: Lab = { l: 95, a: 0, b: -2 };

/** How far the look of ink on paper can be trusted, said beside every picture of it. */
export const INK_RANGE =
  'An estimate for clear dye ink, well inked, on smooth plain paper; it says nothing about pigment ink, which covers, or embossing powder. Stamp a scrap first.';

/** What a transparent ink is expected to look like on a paper. */
export interface InkOnPaper {
  readonly lab: Lab;
  /** Standard error of the estimate in CIEDE2000: a judgement, untested on real ink. */
  readonly uncertainty: number;
  readonly reason: string;
}

/**
 * A dye ink stamped on coloured paper: light passes the ink, is reflected by the paper and passes the ink
 * again, so that the reflectances multiply, channel by channel in linear light.
 *
 * Takes       the ink as it looks on white card, and the paper.
 * Gives       an estimate; never lighter than the paper or the ink on white, in any channel.
 * Good up to  transparent dye ink, well inked, on smooth plain paper. Not for pigment ink, which covers,
 *             nor for embossing powders; three broad channels stand for the spectrum, so a strong ink on
 *             a strong paper of another hue comes out less sure.
 * Source      the product of transmittances is the ideal case of Beer's law; textbooks refine it by
 *             Kubelka and Munk (1931) over a substrate, for which a photo holds too little.
 */
export function inkOnPaper(ink: Lab, paper: Lab): InkOnPaper {
  const [inked, white, ground] = [ink, WHITE_CARD, paper].map(linearFromLab) as [
    LinearRgb,
    LinearRgb,
    LinearRgb,
  ];
  const through = (channel: keyof LinearRgb): number =>
    Math.max(0, ground[channel]) * Math.min(1, Math.max(0, inked[channel]) / white[channel]);
  const lab = labFromLinear({ r: through('r'), g: through('g'), b: through('b') });
  return {
    lab,
    uncertainty: 2 + 0.05 * chromaOf(paper),
    reason: 'An estimate: the paper shines through the ink. Stamp a scrap first.',
  };
}

function chromaOf({ a, b }: Lab): number {
  return Math.hypot(a, b);
}
