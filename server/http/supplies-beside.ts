import type { Records } from '../store/records.ts';
import type { SupplyRow } from '../store/rows.ts';

/** What lies beside a pad: all that is hers, and what came with this very pad. */
export async function suppliesBeside(
  { supplies }: Pick<Records, 'supplies'>,
  pad: string,
): Promise<SupplyRow[]> {
  return (await supplies.all()).filter((supply) => supply.pad === undefined || supply.pad === pad);
}
