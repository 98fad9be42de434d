import { INCH, units } from '../../server/lengths/length.ts';
import type { PadRow } from '../../server/store/rows.ts';

const SIX = units(6 * INCH);

/** A pad of 6 x 6 in sheets, as it is kept. */
export function pad(id: string): PadRow {
  return {
    id,
    name: `Pad ${id}`,
    sheetSize: { width: SIX, height: SIX },
    createdAt: '2026-01-02T03:04:05.000Z',
    revision: 1,
  };
}
