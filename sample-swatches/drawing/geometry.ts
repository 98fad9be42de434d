import { between } from '../chance.ts';
import type { Drawing } from './drawing.ts';
import { box, dot, fill, line, n, pebble, placed, spread } from './strokes.ts';

/** Upright stripes of several widths. */
export const stripes: Drawing = {
  name: 'stripes',
  slots: 4,
  direction: 'two-way',
  repeat: [19.05, 38.1],
  tile(side, [, broad, thin, middle]) {
    const u = side / 24;
    return [
      box(2 * u, 0, 6 * u, side, broad!),
      box(9.5 * u, 0, 1.2 * u, side, thin!),
      box(12.5 * u, 0, 3.4 * u, side, middle!),
      box(17.6 * u, 0, 1.2 * u, side, thin!),
      box(20.6 * u, 0, 1.6 * u, side, broad!),
    ].join('');
  },
};

/** Plain broad stripes of two colours, as on a deck chair. */
export const awning: Drawing = {
  name: 'awning',
  slots: 2,
  direction: 'two-way',
  repeat: [9.525, 19.05],
  tile: (side, [, paint]) => box(0.25 * side, 0, 0.5 * side, side, paint!),
};

/** Woven squares: ground, one thread over it, two threads over each other. */
export const gingham: Drawing = {
  name: 'gingham',
  slots: 3,
  direction: 'none',
  repeat: [7.62, 15.24],
  tile: (side, [, half, full]) =>
    box(0, 0, side / 2, side, half!) +
    box(0, 0, side, side / 2, half!) +
    box(0, 0, side / 2, side / 2, full!),
};

/** Dots in two sizes, set as on dice. */
export const dots: Drawing = {
  name: 'dots',
  slots: 3,
  direction: 'none',
  repeat: [10.16, 25.4],
  tile: (side, [, large, small]) =>
    dot(side / 4, side / 4, 0.19 * side, large!) +
    dot((3 * side) / 4, (3 * side) / 4, 0.19 * side, large!) +
    dot((3 * side) / 4, side / 4, 0.085 * side, small!) +
    dot(side / 4, (3 * side) / 4, 0.085 * side, small!),
};

/** Pebbles of the beach, close together. */
export const pebbles: Drawing = {
  name: 'pebbles',
  slots: 4,
  direction: 'none',
  repeat: [40, 63.5],
  tile(side, [, one, two, three], chance) {
    const paints = [one!, two!, one!, three!];
    return spread(34, side, chance)
      .map(([x, y], k) =>
        placed(
          x,
          y,
          360 * chance(),
          (side / 40) * between(chance, 0.7, 1.1),
          `<g transform="scale(1.25 0.9)">${fill(pebble(2.7, chance, 0.13), paints[k % 4]!)}</g>`,
        ),
      )
      .join('');
  },
};

/** Zigzag rows; turned upside down it is itself again. */
export const zigzag: Drawing = {
  name: 'zigzag',
  within: 2,
  slots: 3,
  direction: 'two-way',
  repeat: [15.24, 25.4],
  tile(side, [, one, two]) {
    const row = (y: number, paint: string, width: number): string => {
      const turns = [-1, 0, 1, 2, 3, 4, 5].map(
        (k) => `${n((k * side) / 4)} ${n(y + (k % 2 === 0 ? 0.14 : -0.14) * side)}`,
      );
      return line(`M${turns.join('L')}`, paint, width * side);
    };
    return row(0.25 * side, one!, 0.17) + row(0.75 * side, two!, 0.12);
  },
};

/** Diamonds, edge to edge, with a fine line laid over them. */
export const harlequin: Drawing = {
  name: 'harlequin',
  slots: 4,
  direction: 'two-way',
  repeat: [22, 38.1],
  tile(side, [, one, two, thread]) {
    const diamond = (x: number, y: number, w: number, h: number): string =>
      `M${n(x)} ${n(y - h)}L${n(x + w)} ${n(y)}L${n(x)} ${n(y + h)}L${n(x - w)} ${n(y)}Z`;
    const q = side / 4;
    return [
      fill(diamond(q, q, q, q), one!),
      fill(diamond(3 * q, q, q, q), two!),
      fill(diamond(q, 3 * q, q, q), two!),
      fill(diamond(3 * q, 3 * q, q, q), one!),
      line(
        `M0 ${n(q)}L${n(3 * q)} ${n(4 * q)}M${n(q)} 0L${n(4 * q)} ${n(3 * q)}M0 ${n(3 * q)}L${n(3 * q)} 0M${n(q)} ${n(4 * q)}L${n(4 * q)} ${n(q)}`,
        thread!,
        0.035 * side,
      ),
    ].join('');
  },
};

/** A garden lattice with a bead where its laths cross. */
export const trellis: Drawing = {
  name: 'trellis',
  slots: 3,
  direction: 'none',
  repeat: [16, 28],
  tile(side, [, lath, bead]) {
    const h = side / 2;
    const curve = (x: number, y: number): string =>
      `M${n(x)} ${n(y - h)}C${n(x + 0.36 * h)} ${n(y - 0.36 * h)} ${n(x + 0.36 * h)} ${n(y - 0.36 * h)} ${n(x + h)} ${n(y)}C${n(x + 0.36 * h)} ${n(y + 0.36 * h)} ${n(x + 0.36 * h)} ${n(y + 0.36 * h)} ${n(x)} ${n(y + h)}C${n(x - 0.36 * h)} ${n(y + 0.36 * h)} ${n(x - 0.36 * h)} ${n(y + 0.36 * h)} ${n(x - h)} ${n(y)}C${n(x - 0.36 * h)} ${n(y - 0.36 * h)} ${n(x - 0.36 * h)} ${n(y - 0.36 * h)} ${n(x)} ${n(y - h)}Z`;
    return (
      line(curve(h, h), lath!, 0.07 * side) +
      dot(h, h, 0.13 * side, bead!) +
      dot(0, 0, 0.09 * side, bead!) +
      dot(side, 0, 0.09 * side, bead!) +
      dot(0, side, 0.09 * side, bead!) +
      dot(side, side, 0.09 * side, bead!)
    );
  },
};

/** Short brush strokes lying every way, as confetti. */
export const dashes: Drawing = {
  name: 'dashes',
  slots: 4,
  direction: 'none',
  repeat: [33, 50.8],
  tile(side, [, one, two, three], chance) {
    const paints = [one!, two!, three!];
    return spread(42, side, chance)
      .map(([x, y], k) =>
        placed(x, y, 180 * chance(), side / 33, line('M-1.5 0Q0 0.5 1.5 0', paints[k % 3]!, 1.1)),
      )
      .join('');
  },
};
