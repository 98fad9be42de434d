import type { Ruler } from '../lengths/length.ts';

/** One sheet's worth of pieces as she has written it down: which piece for which card. */
export interface OwnSlot {
  readonly slot: string;
  readonly pieces: readonly { readonly card: number; readonly layer: string }[];
}

/** How a batch is to be cut. */
export interface CutSettings {
  /** The trimmer's ruler: its marks are 1/16 in or 1 mm apart. */
  readonly ruler: Ruler;
  /** True when nothing may be turned by a quarter (a pad of one-way prints). */
  readonly keepUp: boolean;
  /**
   * True for patterned paper: pieces of one card with the same `paper` come from one sheet, with
   * another from different sheets. False for cardstock, where any piece may come from any sheet.
   */
  readonly apart: boolean;
  /**
   * With `apart`: whether two triangles of two cards may come from one rectangle, where that spares a sheet.
   * They then show one side of it (`tiedSlots`), which the plan has to know. Left out: no.
   */
  readonly pairAcross?: boolean;
  /** Her own table of slots, which is cut as it stands; left out: as few sheets as can be found. */
  readonly table?: readonly OwnSlot[];
  readonly seed: number;
  /** How many times the search may try to do with fewer sheets; each try takes a few milliseconds. */
  readonly steps: number;
  /** Asked before each try; true ends the search with the best found. */
  readonly until?: () => boolean;
}

/** The settings for patterned papers that need no thought. */
export function usualSettings(ruler: Ruler): CutSettings {
  return { ruler, keepUp: false, apart: true, seed: 1, steps: 240 };
}

/** The same for cardstock: bases, mats and greetings of one colour. */
export function cardstockSettings(ruler: Ruler): CutSettings {
  return { ...usualSettings(ruler), apart: false };
}
