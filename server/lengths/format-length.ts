import { INCH, MILLIMETRE, toMillimetres } from './length.ts';
import type { Length, Ruler, Size } from './length.ts';
import { snap, stepOf } from './ruler.ts';

/**
 * Writes a length as a person reads it off the ruler: `4 1/4 in`, `108 mm`.
 *
 * Gives  the nearest 1/16 in or whole mm; exact when `isOnRuler`, which tells whether it was rounded.
 */
export function formatLength(length: Length, ruler: Ruler): string {
  const steps = snap(length, ruler) / stepOf(ruler);
  return ruler === 'mm' ? `${steps} mm` : `${mixed(steps, 16)} in`;
}

/**
 * Writes a length so that reading it gives the very same length, for files and the wire: on 1/64 in
 * as a fraction, anything else in decimal millimetres (1/320 mm is 0.003125 mm).
 */
export function exactLength(length: Length, ruler: Ruler): string {
  const inches = length % (INCH / 64) === 0;
  const millimetres = length % (MILLIMETRE / 10) === 0;
  if (inches && (ruler === 'in' || !millimetres)) return `${mixed(length / (INCH / 64), 64)} in`;
  return `${toMillimetres(length)} mm`;
}

/** Writes a size with its unit once: `6 x 6 in`, `105 x 148 mm`. */
export function formatSize(size: Size, ruler: Ruler): string {
  const [width, height] = [formatLength(size.width, ruler), formatLength(size.height, ruler)];
  return `${width.slice(0, -3)} x ${height}`;
}

function mixed(parts: number, under: number): string {
  const sign = parts < 0 ? '-' : '';
  const count = Math.abs(parts);
  const whole = Math.floor(count / under);
  const over = count % under;
  if (over === 0) return `${sign}${whole}`;
  const common = Math.min(over & -over, under);
  const fraction = `${over / common}/${under / common}`;
  return `${sign}${whole === 0 ? '' : `${whole} `}${fraction}`;
}
