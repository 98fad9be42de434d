import type * as Wire from '../contract/pads.ts';
import { groupSheets } from '../from-photo-to-guide.ts';
import { withNames } from '../pad/pad-names.ts';
import type { Records } from '../store/records.ts';
import { found } from './found.ts';
import { Lately } from './lately.ts';
import { padOnWire, sheetsOf } from './wire/pads.ts';
import type { PadRows } from './wire/pads.ts';

export async function rowsOfPad(records: Records, id: string, field = 'pad'): Promise<PadRows> {
  const pad = found(await records.pads.at(id), 'pad', id, field);
  const photos = await records.photos.ofPad(id);
  const sides = withNames(await records.sides.ofPad(id));
  const sheets = await records.sheets.ofPad(id);
  return { pad, photos, sides, sheets };
}

/** Pads as they go over the wire, with their grouping; remembered as long as the pad does not change. */
export interface PadReader {
  read(records: Records, id: string): Promise<Wire.Pad>;
}

/** More pads than this are read anew; a pad takes about 100 kB. */
const REMEMBERED = 100;

export function createPadReader(): PadReader {
  const remembered = new Lately<string, Wire.Pad>(REMEMBERED);
  return {
    read: async (records, id) => {
      const { revision } = found(await records.pads.at(id), 'pad', id);
      const known = remembered.at(id);
      if (known?.revision === revision) return known;
      const rows = await rowsOfPad(records, id);
      const pad = padOnWire(rows, groupSheets(sheetsOf(rows)));
      remembered.put(id, pad);
      return pad;
    },
  };
}
