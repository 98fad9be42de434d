import type * as Wire from '../../contract/supplies.ts';
import type { SupplyRow } from '../../store/rows.ts';
import { colourOnWire } from './colours.ts';
import { cornersOnWire } from './corners.ts';

export function supplyOnWire(supply: SupplyRow): Wire.Supply {
  const { id, kind, name, lab, uncertainty, photo, corners, sheets, demo, revision } = supply;
  const { glossy = false, pad = null } = supply;
  return {
    id,
    kind,
    name,
    colour: { ...colourOnWire(lab), uncertainty },
    photo,
    ...(corners === null ? {} : { corners: cornersOnWire(corners) }),
    sheets,
    glossy,
    demo,
    pad,
    revision,
  };
}
