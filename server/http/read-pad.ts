import type * as Wire from '../contract/pads.ts';
import type { Clerk } from '../clerk.ts';
import { withNames } from '../pad/pad-names.ts';
import type { Records } from '../store/records.ts';
import { found } from './found.ts';
import { Lately } from '../recall/lately.ts';
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

export function createPadReader(clerk: Clerk): PadReader {
  const remembered = new Lately<string, ReadPad>(REMEMBERED);
  const readNow = async (records: Records, id: string): Promise<Wire.Pad> => {
    const rows = await rowsOfPad(records, id);
    return padOnWire(rows, await clerk.group(sheetsOf(rows)));
  };
  return {
    read: async (records, id) => {
      const { revision } = found(await records.pads.at(id), 'pad', id);
      const known = remembered.at(id);
      // Windows that all look again at once wait for one reading.
      if (known?.revision === revision) return known.pad;
      const read: ReadPad = { revision, pad: readNow(records, id) };
      remembered.put(id, read);
      read.pad.catch(() => {
        if (remembered.at(id) === read) remembered.drop(id);
      });
      return read.pad;
    },
  };
}

interface ReadPad {
  readonly revision: number;
  readonly pad: Promise<Wire.Pad>;
}
