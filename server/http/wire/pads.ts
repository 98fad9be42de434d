import type * as Wire from '../../contract/pads.ts';
import { withoutOutlines } from '../../pad/less-of-side.ts';
import type { Grouping, Sheet, Side } from '../../pad/pad.ts';
import { padNames } from '../../pad/pad-names.ts';
import type { PadRow, PhotoRow, SheetRow, SideRow } from '../../store/rows.ts';
import { colourOnWire } from './colours.ts';
import { cornersOnWire } from './corners.ts';
import { sideOnWire } from './sides.ts';
import { NO_CHIPS } from '../../photo/chips.ts';
import type { ChipsSeen } from '../../photo/picture.ts';
import { rulerOf, sizeOnWire } from './sizes.ts';

/** All rows of one pad. */
export interface PadRows {
  readonly pad: PadRow;
  readonly photos: readonly PhotoRow[];
  readonly sides: readonly SideRow[];
  readonly sheets: readonly SheetRow[];
}

export function padOnWire({ pad, photos, sides, sheets }: PadRows, grouping: Grouping): Wire.Pad {
  const ruler = rulerOf(pad.sheetSize);
  const named = padNames(sides);
  const byId = new Map(sides.map((side) => [side.id, side]));
  const side = (id: string | null): Wire.Side | null => {
    const row = id === null ? undefined : byId.get(id);
    return row === undefined ? null : sideOnWire(row, ruler);
  };
  return {
    id: pad.id,
    name: pad.name,
    sheetSize: sizeOnWire(pad.sheetSize),
    createdAt: pad.createdAt,
    revision: pad.revision,
    photos: photos.map(photoOnWire),
    sheets: sheets.map(({ id, label, copies, front, back, revision }) => ({
      id,
      label,
      copies,
      front: side(front),
      back: side(back),
      revision,
    })),
    story: grouping.story.map(({ lab, share, sides: of }) => ({
      ...colourOnWire(named(lab)),
      share,
      sides: [...of],
    })),
    families: grouping.families.map(({ name, lab, sides: of }) => ({
      ...colourOnWire(lab),
      name,
      sides: [...of],
    })),
    patternSets: grouping.patternSets.map((set) => [...set]),
    bridges: [...grouping.bridges],
  };
}

export function padSummary(pad: PadRow, sheetCount: number): Wire.PadSummary {
  const { id, name, sheetSize, createdAt, revision } = pad;
  return { id, name, sheetSize: sizeOnWire(sheetSize), sheetCount, createdAt, revision };
}

export function photoOnWire(photo: PhotoRow): Wire.Photo {
  const { id, width, height, face, arrangement, white, notes } = photo;
  return {
    id,
    width,
    height,
    side: face ?? 'front',
    arrangement,
    picture: `/api/photos/${id}/picture`,
    white: {
      kind: white.kind,
      corners: white.corners === null ? null : cornersOnWire(white.corners),
    },
    chips: chipsOnWire(photo.chips ?? NO_CHIPS),
    notes: [...notes],
  };
}

export function chipsOnWire({ tie, scraps }: ChipsSeen): Wire.Photo['chips'] {
  return {
    tie,
    scraps: scraps.map(({ corners, lab }) => ({
      corners: cornersOnWire(corners),
      ...colourOnWire(lab),
    })),
  };
}

/** The sheets as the core knows them. */
export function sheetsOf({ sheets, sides }: Pick<PadRows, 'sheets' | 'sides'>): Sheet[] {
  const byId = new Map(sides.map((side) => [side.id, side]));
  const side = (id: string | null): Side | null =>
    id === null ? null : plainSide(byId.get(id) ?? null);
  return sheets.map(({ id, label, copies, front, back }) => ({
    id,
    label,
    copies,
    front: side(front),
    back: side(back),
  }));
}

/**
 * The sheets as a plan looks at them and keeps them: without the outlines by which pattern sets are told. Those are more than
 * half of what is known of a side, and each plan is kept with all sides that it was made from.
 */
export function sheetsToPlan(rows: Pick<PadRows, 'sheets' | 'sides'>): Sheet[] {
  return sheetsOf(rows).map((sheet) => ({
    ...sheet,
    front: sheet.front && withoutOutlines(sheet.front),
    back: sheet.back && withoutOutlines(sheet.back),
  }));
}

function plainSide(row: SideRow | null): Side | null {
  if (row === null) return null;
  const { id, photo, corners, palette, pattern, confidence, notes } = row;
  return { id, photo, corners, palette, pattern, confidence, notes };
}
