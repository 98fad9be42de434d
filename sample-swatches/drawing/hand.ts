import { between } from '../chance.ts';
import type { Drawing } from './drawing.ts';
import { line, n, smooth } from './strokes.ts';

/** Lines of looping handwriting that say nothing. */
export const letter: Drawing = {
  name: 'letter',
  slots: 2,
  direction: 'one-way',
  repeat: [60, 76.2],
  tile(side, [, ink], chance) {
    const rows = 7;
    return Array.from({ length: rows }, (_, row) => {
      const y = ((row + 0.6) * side) / rows;
      const u = side / 60;
      const words: string[] = [];
      let x = 1.5 * u;
      while (x < side - 5 * u) {
        const length = Math.min(side - 2 * u - x, between(chance, 6, 13) * u);
        const points: [number, number][] = [];
        for (let along = 0; along < length; along += 0.55 * u) {
          const tall = chance() < 0.12 ? 2.4 : 1;
          const swing = Math.sin((along / u) * 3.4);
          points.push([
            x + along + 0.5 * u * Math.cos((along / u) * 3.4),
            y - (swing > 0 ? tall : 0.75) * 1.15 * u * swing,
          ]);
        }
        words.push(line(smooth(points, false), ink!, 0.6 * u));
        x += length + 2.4 * u;
      }
      return words.join('');
    }).join('');
  },
};

/** Hatching by a soft pencil, crossed. */
export const hatching: Drawing = {
  name: 'hatching',
  slots: 3,
  direction: 'none',
  repeat: [12.7, 19.05],
  tile(side, [, one, two]) {
    const q = side / 8;
    const strokes = (x: number, y: number, upright: boolean, paint: string): string =>
      [0, 1, 2]
        .map((k) =>
          upright
            ? line(
                `M${n(x + (k + 0.5) * 1.2 * q)} ${n(y + 0.3 * q)}L${n(x + (k + 0.5) * 1.2 * q)} ${n(y + 3.5 * q)}`,
                paint,
                0.55 * q,
              )
            : line(
                `M${n(x + 0.3 * q)} ${n(y + (k + 0.5) * 1.2 * q)}L${n(x + 3.5 * q)} ${n(y + (k + 0.5) * 1.2 * q)}`,
                paint,
                0.55 * q,
              ),
        )
        .join('');
    return (
      strokes(0, 0, true, one!) +
      strokes(4 * q, 0, false, two!) +
      strokes(0, 4 * q, false, two!) +
      strokes(4 * q, 4 * q, true, one!)
    );
  },
};
