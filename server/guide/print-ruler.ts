import type { Ruler } from '../lengths/length.ts';
import type { Mark } from './drawing.ts';
import { INK, SIZES } from './look.ts';

/** 6 in in mm: the one number that the printed ruler is drawn from and checked by. */
export const SIX_INCHES = 6 * 25.4;

/** A ruler to lay a real one against: 6 in by eighths, or 150 mm by millimetres. */
export function printRuler(x: number, y: number, ruler: Ruler): Mark[] {
  const inches = ruler === 'in';
  const length = inches ? SIX_INCHES : 150;
  const step = inches ? 25.4 / 8 : 1;
  const count = Math.round(length / step);
  const tick = (at: number): number => {
    if (at % (inches ? 8 : 10) === 0) return 3.6;
    return at % (inches ? 4 : 5) === 0 ? 2.6 : 1.5;
  };
  const ticks = Array.from({ length: count + 1 }, (_, at): Mark => ({
    kind: 'line',
    from: { x: x + at * step, y },
    to: { x: x + at * step, y: y - tick(at) },
    width: 0.2,
  }));
  const numbers = Array.from({ length: inches ? 7 : 16 }, (_, at): Mark => ({
    kind: 'words',
    x: x + at * (inches ? 25.4 : 10),
    y: y - 4.2,
    text: String(inches ? at : at * 10),
    size: SIZES.small,
    align: 'middle',
  }));
  return [
    { kind: 'line', from: { x, y }, to: { x: x + length, y }, width: 0.35, colour: INK },
    ...ticks,
    ...numbers,
    {
      kind: 'words',
      x,
      y: y + 3.6,
      text: `Lay a ruler here: this line is ${inches ? '6 in' : '150 mm'} long. If it is not, print again at 100 %, not fitted to the page.`,
      size: SIZES.small,
    },
  ];
}
