import type { ColourMap } from './colour-map.ts';
import type { Lab } from './lab.ts';

export type PaletteRole = 'ground' | 'accent';

/** One dominant colour of a side. */
export interface PaletteColour {
  readonly lab: Lab;
  /** Share of the side's area, in (0, 1]; the shares of a palette add up to 1. */
  readonly share: number;
  readonly role: PaletteRole;
  /** Standard error of the colour in CIEDE2000 (one sigma). */
  readonly uncertainty: number;
  /**
   * The part of its area, in [0, 1], that lies inside shapes of it, a pixel or more from any other colour. Near 0
   * it was read off strokes that are seen mixed with what is beside them. Left out where it is not known.
   */
  readonly inside?: number;
  /** For a tonal paper: how far the tone runs, as the 5th and 95th percentile in lightness. */
  readonly range?: { readonly darkest: Lab; readonly lightest: Lab };
}

/** The dominant colours of a side, largest share first. */
export interface Palette {
  readonly colours: readonly PaletteColour[];
  /** True when the side is one tone that runs (watercolour, linen) and not printed flat colours. */
  readonly tonal: boolean;
  /** Where on the side each of them lies; left out where the sides were read before this was kept. */
  readonly where?: ColourMap;
}
