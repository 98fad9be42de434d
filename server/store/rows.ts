import type { Quad } from '../geometry/points.ts';
import type { Layout } from '../layouts/layout.ts';
import type { Size } from '../lengths/length.ts';
import type { Side } from '../pad/pad.ts';
import type { ChipsSeen, WhiteReference } from '../photo/picture.ts';
import type { Supply } from '../supplies/supply.ts';

/** What is kept of each noun. `revision` starts at 1 and grows with every change. */

export interface PadRow {
  readonly id: string;
  readonly name: string;
  readonly sheetSize: Size;
  readonly createdAt: string;
  readonly revision: number;
}

export type Face = 'front' | 'back';

export interface PhotoRow {
  readonly id: string;
  /** Null, like `face`, for a photo of supplies. */
  readonly pad: string | null;
  readonly face: Face | null;
  readonly arrangement: string;
  /** Content of the photo as it came, and of its upright picture for the screen. */
  readonly hash: string;
  readonly picture: string;
  readonly width: number;
  readonly height: number;
  readonly white: WhiteReference;
  /** Kept for a photo of supplies only where it is tied. */
  readonly chips?: ChipsSeen;
  /** The pad to whose photos a photo of supplies is tied by its scraps. */
  readonly tiedTo?: string;
  /** Of a photo of supplies that is tied: those that were told to be scraps, as they were in her list. */
  readonly aside?: readonly SupplyRow[];
  readonly notes: readonly string[];
  readonly createdAt: string;
  readonly revision: number;
}

export interface SideRow extends Side {
  readonly pad: string;
  readonly place: number;
  readonly swatch: string;
  readonly revision: number;
}

export interface SheetRow {
  readonly id: string;
  readonly pad: string;
  readonly label: string;
  readonly copies: number;
  readonly front: string | null;
  readonly back: string | null;
  readonly place: number;
  readonly revision: number;
}

/** A part of a sheet that was kept, lying as it lay on its sheet. */
export interface LeftoverRow {
  readonly id: string;
  readonly pad: string;
  readonly sheet: string;
  /** What the sheet was called then. */
  readonly label: string;
  readonly size: Size;
  /** The plan that left it; null for one that she has put in herself. */
  readonly plan: string | null;
  readonly createdAt: string;
}

export interface SupplyRow extends Supply {
  readonly corners: Quad<'photo'> | null;
  /** It came with the demo pad. */
  readonly demo: boolean;
  /** The only pad that it is laid beside: the demo's stay with the demo pad. Left out for hers. */
  readonly pad?: string;
  readonly createdAt: string;
  readonly revision: number;
}

export interface LayoutRow {
  readonly layout: Layout;
  readonly createdAt: string;
}

export interface PlanRow {
  readonly id: string;
  readonly pad: string;
  readonly cards: number;
  readonly value: number;
  readonly createdAt: string;
  /** The plan that it changed, or followed. */
  readonly from: string | null;
  /** Its cards were chosen anew, so that it only follows that plan. */
  readonly anew: boolean;
}
