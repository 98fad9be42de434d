import type { Layer, NewLayout } from '../../server/contract/layouts.ts';
import type { Pad } from '../../server/contract/pads.ts';
import { millimetres } from '../lengths/lengths.ts';
import { sidesOf } from '../pad/sides.ts';
import { swatchAt } from '../pad/swatch-at.ts';
import type { PaperShown } from './layer-paper.tsx';
import { papersIn } from './order-layers.ts';

/** Papers that follow each other in a pad are often alike, so some are passed over. */
const APART = 7;

/** A paper of the pad that stands for the patterned paper of a layer; the same for all layers of that paper. */
export function paperFor(pad: Pad, layout: NewLayout, layer: Layer): PaperShown | null {
  const sides = sidesOf(pad);
  if (layer.material === 'cardstock' || sides.length === 0) return null;
  const at = papersIn(layout, 'patterned').indexOf(layer.paper) * APART;
  const { side } = sides[at % sides.length]!;
  const [width, height] = [pad.sheetSize.width, pad.sheetSize.height].map(
    (length) => millimetres(length) ?? 0,
  ) as [number, number];
  return { picture: swatchAt(side.swatch, 480), width, height };
}
