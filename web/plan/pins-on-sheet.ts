import type { Pad } from '../../server/contract/pads.ts';
import type { Pin } from '../../server/contract/plans.ts';
import { sideIn } from '../pad/sides.ts';

/** The pins that keep a sheet, or one of its sides, on some card. */
export function pinsOnSheet(pad: Pad, pins: readonly Pin[], sheet: string): Pin[] {
  return pins.filter((pin) => pin.sheet === sheet || sideIn(pad, pin.side)?.sheet.id === sheet);
}
