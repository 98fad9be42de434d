import type * as Wire from '../../contract/plans.ts';
import type { KeptPlan } from '../make-plan.ts';
import { swatchAddress } from './sides.ts';

/** The papers as a plan knew them, told as the pad tells them, so that the two can be compared. */
export function papersOnWire({
  pad,
  swatches,
}: Pick<KeptPlan, 'pad' | 'swatches'>): Wire.Plan['papers'] {
  return pad.sheets.map(({ id, copies, front, back }) => ({
    sheet: id,
    copies,
    sides: [front, back].flatMap((side) =>
      side === null
        ? []
        : [
            {
              side: side.id,
              swatch: swatchAddress(side.id, swatches[side.id] ?? ''),
              direction: side.pattern.direction,
              up: side.pattern.up,
            },
          ],
    ),
  }));
}
