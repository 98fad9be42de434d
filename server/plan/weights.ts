/**
 * Every number of the coordination score, in one place, with its origin.
 *
 * Origins: [P15] Paravina et al. (2015), J. Esthet. Restor. Dent. 27 Suppl 1, S1-S9,
 * doi:10.1111/jerd.12149 (175 observers; dental ceramics in a booth; 50 % perceive 0.8 and 50 % accept
 * 1.8 CIEDE2000). [trade] common practice, no source. [bench] set on the tuning seeds of
 * `npm run bench plan` and reported on other seeds.
 */

/** How much each term counts; they add up to 1. [trade] for the order, [bench] for the sizes. */
export const TERM_WEIGHTS = {
  /** Closely shared colours are what the trade goes by first. */
  accents: 0.46,
  /** Almost the same red looks like a mistake. */
  nearMisses: 0.15,
  /** White beside cream. */
  grounds: 0.09,
  /** Told apart along the border that they share. */
  contrast: 0.13,
  /** Big and small prints mix. */
  scale: 0.08,
  /** One busy print to a calm one. */
  busyness: 0.06,
  /** Two directions of one size quarrel. */
  direction: 0.03,
} as const;

/** What a full turn of one of her three choices adds as a term of its own. [bench] */
export const TASTE_WEIGHT = 0.35;

/** A term never counts as less than this, so that one nought does not hide all others. [bench] */
export const TERM_FLOOR = 0.04;

/** Up to `whole` two colours pass as the same [P15, acceptable], from `none` on they do not [bench]. */
export const SAME = { whole: 1.8, none: 4.5 } as const;

/** Between these differences (CIEDE2000) two colours look like a mistake: rises from..full, falls to..none. [bench] */
export const NEAR = { from: 3, full: 5, falls: 8, none: 13 } as const;

/** The same for two light grounds, which the eye compares more strictly over large areas. [trade], [bench] */
export const NEAR_GROUND = { from: 2.5, full: 4.5, falls: 10, none: 18 } as const;

/** A ground counts as light from this L and below this chroma. [trade] */
export const LIGHT_GROUND = { lightness: 78, chroma: 24 } as const;

/** Different grounds that are no near miss. [trade] */
export const OTHER_GROUND = 0.85;

/** Shared area (geometric mean of both shares) at which sharing has done 63 % of its work. [bench] */
export const SHARING = 0.25;

/** How much the fullness of sharing counts beside its strength. [bench] */
export const COVERING = 0.5;

/** What it tells to share a colour that is in every pad. [bench] */
export const TELLING = 0.1;

/** Between these chromas a colour stops being a neutral; light ones are in every pad from this L on. [bench] */
export const NEUTRAL_FADES = { from: 6, to: 16 } as const;
export const LIGHT_NEUTRAL_FROM = 80;

/** Kraft in CIELAB, hue in radians. [trade], measured on the drawn samples */
export const KRAFT = {
  lightness: { at: 62, by: 10 },
  chroma: { at: 29, by: 11 },
  hue: { at: 1.24, by: 0.17 },
} as const;

/** Tones of one hue: up to `whole` radians apart, none from `none` on, above this chroma. [trade], [bench] */
export const TONE = { worth: 0.25, whole: 0.07, none: 0.24, chroma: 8 } as const;

/** What a quiet neutral is worth where a shared accent is looked for. [trade] */
export const NEUTRAL_SHARING = 0.6;

/** A solid passes as a quiet neutral up to this chroma. [trade] */
export const NEUTRAL_CHROMA = 9;

/** Steps that are told apart well: lightness, busyness, colour of the whole (CIEDE2000). [bench] */
export const STEP = { lightness: 12, busyness: 0.3, colour: 22 } as const;

/** Prints calmer than this count as plain. [trade] */
export const PLAIN = 0.12;

/** Doublings of scale at which two prints are well apart, and what prints of one scale are worth. [trade], [bench] */
export const SCALE_MIX = { doublings: 1.5, alike: 0.35 } as const;

/** Two prints both busier than `from` quarrel. [trade], [bench] */
export const BOTH_BUSY = { from: 0.3, to: 0.9 } as const;

/** Two directional prints of one scale. [trade] */
export const QUARREL = 0.6;

/** Papers of one card that do not touch are still seen together: their weight beside a border. [trade] */
export const TOGETHER = 0.5;

/** What is taken off along all borders of a cardstock that she would have to buy. [trade] */
export const WANTED_DISCOUNT = 0.12;

/** A one-way print that has to lie on its side is worth this along the borders of its piece. [trade] */
export const LYING = 0.1;

/** A greeting is read from L of at least `light` (dark ink) and on busyness of at most `calm`. [trade] */
export const GREETING = { light: 88, dark: 60, calm: 0.15, busy: 0.6 } as const;

/** One paper where the layout asks for two different ones. [trade] */
export const SAME_PAPER = 0.2;
