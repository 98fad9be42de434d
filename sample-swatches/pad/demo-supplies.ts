import { labFromHex } from '../../server/colour/spaces.ts';
import type { Lab } from '../../server/colour/lab.ts';

export interface DemoSupply {
  readonly name: string;
  readonly lab: Lab;
}

const plain = (name: string, hex: string): DemoSupply => ({ name, lab: labFromHex(hex) });

/** Cardstock bought to go with the papers: near them, not the same, as in any shop. */
export const cardstock: readonly DemoSupply[] = [
  plain('Gull white cardstock', '#faf8f4'),
  plain('Shell cardstock', '#f6e9dc'),
  plain('Sand cardstock', '#e4cfa3'),
  plain('Kraft cardstock', '#b88d60'),
  plain('Coral cardstock', '#e27461'),
  plain('Kelp cardstock', '#6a7038'),
  plain('Deep teal cardstock', '#185a66'),
  plain('Slate cardstock', '#5c6c7e'),
];

/** Inks as they look where the pad was pressed down well. */
export const inks: readonly DemoSupply[] = [
  plain('Deep teal ink', '#12505b'),
  plain('Kelp ink', '#5f652c'),
  plain('Coral ink', '#dd6550'),
  plain('Slate ink', '#526375'),
  plain('Driftwood ink', '#76583f'),
  plain('Soot ink', '#2a2a2d'),
];
