import type { z } from 'zod';
import type { SizeText } from '../../contract/values.ts';
import { exactLength, formatLength } from '../../lengths/format-length.ts';
import { MILLIMETRE, units } from '../../lengths/length.ts';
import type { Ruler, Size } from '../../lengths/length.ts';
import { parseLength } from '../../lengths/parse-length.ts';
import { isOnRuler } from '../../lengths/ruler.ts';

type SizeOnWire = z.infer<typeof SizeText>;

export function sizeFromWire(size: SizeOnWire, field: string): Size {
  return {
    width: parseLength(size.width, `${field}.width`),
    height: parseLength(size.height, `${field}.height`),
  };
}

/** The ruler that a size was made with: inches when it stands on their marks, else millimetres. */
export function rulerOf({ width, height }: Size): Ruler {
  return isOnRuler(width, 'in') && isOnRuler(height, 'in') ? 'in' : 'mm';
}

export function sizeOnWire(size: Size): SizeOnWire {
  const ruler = rulerOf(size);
  return { width: exactLength(size.width, ruler), height: exactLength(size.height, ruler) };
}

/** A length that was measured in millimetres, on her ruler. */
export function measured(millimetres: number, ruler: Ruler): string {
  return formatLength(units(Math.round(millimetres * MILLIMETRE)), ruler);
}
