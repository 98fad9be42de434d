import type * as Wire from '../../contract/pads.ts';
import type { Ruler } from '../../lengths/length.ts';
import type { PatternTraits } from '../../pattern/traits.ts';
import type { SideRow } from '../../store/rows.ts';
import { colourOnWire } from './colours.ts';
import { cornersOnWire } from './corners.ts';
import { measured } from './sizes.ts';

export function sideOnWire(side: SideRow, ruler: Ruler): Wire.Side {
  return {
    id: side.id,
    photo: side.photo,
    corners: cornersOnWire(side.corners),
    palette: side.palette.colours.map(({ lab, share, role, uncertainty }) => ({
      ...colourOnWire(lab),
      share,
      role,
      uncertainty,
    })),
    pattern: patternOnWire(side.pattern, side.palette.tonal, ruler),
    confidence: side.confidence,
    notes: [...side.notes],
    swatch: swatchAddress(side.id, side.swatch),
    revision: side.revision,
  };
}

/** The content is in the address, so that a corrected swatch is seen at once and an old one kept for long. */
export function swatchAddress(side: string, hash: string): string {
  return `/api/sides/${side}/swatch?of=${hash.slice(0, 12)}`;
}

function patternOnWire(traits: PatternTraits, tonal: boolean, ruler: Ruler): Wire.Pattern {
  const { repeat, scale, direction, up, told = false, busyness } = traits;
  return {
    repeat: repeat === null ? null : measured(repeat, ruler),
    scale: measured(scale, ruler),
    direction,
    up,
    told,
    busyness,
    tonal,
  };
}
