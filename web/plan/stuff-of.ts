import type { PlannedLayer } from '../../server/contract/plans.ts';
import { sideIn } from '../pad/sides.ts';
import { swatchAt } from '../pad/swatch-at.ts';
import { padWords } from '../words/pad.ts';
import { planWords } from '../words/plan.ts';
import type { OnTable } from './table-of.ts';

/** What a layer is made of: its name, and its picture or its colour. */
export interface Stuff {
  readonly name: string;
  readonly picture?: string;
  readonly hex?: string;
}

export function stuffOf(
  { side, supply, wanted }: Pick<PlannedLayer, 'side' | 'supply' | 'wanted'>,
  { pad, supplies }: OnTable,
): Stuff {
  const faced = sideIn(pad, side);
  if (faced)
    return {
      name: padWords.sideName(faced.sheet.label, faced.face),
      picture: swatchAt(faced.side.swatch, 96),
    };
  const stock = supplies.find(({ id }) => id === supply);
  if (stock) return { name: stock.name, hex: stock.colour.hex };
  if (wanted) return { name: planWords.wanted(wanted.name), hex: wanted.hex };
  return { name: planWords.plain };
}
