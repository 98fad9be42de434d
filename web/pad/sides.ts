import type { Pad, Sheet, Side } from '../../server/contract/pads.ts';

/** A side with the sheet that it belongs to. */
export interface Faced {
  readonly side: Side;
  readonly sheet: Sheet;
  readonly face: 'front' | 'back';
}

/** All sides of a pad, fronts before backs, in the order of the sheets. */
export function sidesOf(pad: Pad): Faced[] {
  return [...facesOf(pad, 'front'), ...facesOf(pad, 'back')];
}

/** The side of that id with its sheet, or null. */
export function sideIn(pad: Pad, side: string | undefined): Faced | null {
  return sidesOf(pad).find((faced) => faced.side.id === side) ?? null;
}

function facesOf(pad: Pad, face: 'front' | 'back'): Faced[] {
  return pad.sheets.flatMap((sheet) => {
    const side = sheet[face];
    return side ? [{ side, sheet, face }] : [];
  });
}
