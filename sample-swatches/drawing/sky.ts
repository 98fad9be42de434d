import { between } from '../chance.ts';
import type { Drawing } from './drawing.ts';
import { dot, fill, line, placed, spread, star } from './strokes.ts';

/** Stars large and small, turned every way. */
export const stars: Drawing = {
  name: 'stars',
  slots: 4,
  direction: 'none',
  repeat: [36, 57],
  tile(side, [, large, small, dust], chance) {
    const size = side / 36;
    const specks = spread(24, side, chance).map(([x, y]) => dot(x, y, 0.42 * size, dust!));
    const shining = spread(14, side, chance).map(([x, y], k) =>
      placed(
        x,
        y,
        72 * chance(),
        size * between(chance, 0.85, 1.15),
        k < 6 ? fill(star(5, 4.2, 1.9), large!) : fill(star(4, 2.9, 0.9), small!),
      ),
    );
    return [...specks, ...shining].join('');
  },
};

/** Clouds over thin rain: this side up. */
export const clouds: Drawing = {
  name: 'clouds',
  slots: 4,
  direction: 'one-way',
  repeat: [38.1, 50.8],
  tile(side, [, cloud, other, rain]) {
    const size = side / 38;
    const puff = (paint: string): string =>
      line('M-3.6 4.4L-4.2 7.4M0 4.4L-0.6 8.4M3.6 4.4L3 7.4', rain!, 0.7) +
      fill(
        'M-6.4 3C-9.6 3 -9.4 -1.4 -6.2 -1.4C-5.8 -5 -0.8 -5.6 0.6 -2.8C3 -4.6 6 -2.6 5.4 -0.2C8.6 -0.4 8.8 3 6 3Z',
        paint,
      );
    const moon = fill('M0 -4.6A4.6 4.6 0 1 0 4.4 2A3.7 3.7 0 1 1 0 -4.6Z', rain!);
    return [
      placed(0.27 * side, 0.25 * side, 0, size, puff(cloud!)),
      placed(0.77 * side, 0.5 * side, 0, 0.92 * size, puff(other!)),
      placed(0.27 * side, 0.76 * side, 0, 0.92 * size, puff(other!)),
      placed(0.77 * side, 0.99 * side, 0, size, puff(cloud!)),
      placed(0.52 * side, 0.1 * side, 0, 0.62 * size, moon),
    ].join('');
  },
};

/** Rings of planets, strewn. */
export const orbits: Drawing = {
  name: 'orbits',
  slots: 4,
  direction: 'none',
  repeat: [40, 60],
  tile(side, [, ring, planet, other], chance) {
    const size = side / 40;
    return spread(8, side, chance)
      .map(([x, y], k) => {
        const body =
          k % 2 === 0
            ? `<circle r="5.6" fill="none" stroke="${ring!}" stroke-width="0.8"/><circle r="3.4" fill="none" stroke="${ring!}" stroke-width="0.8"/>${dot(0, 0, 1.5, planet!)}${dot(5.6, 0, 1.3, other!)}${dot(-3.4, 0, 0.9, planet!)}`
            : `${dot(0, 0, 3.8, planet!)}<ellipse rx="6.4" ry="1.7" fill="none" stroke="${other!}" stroke-width="1"/>`;
        return placed(x, y, 360 * chance(), size, body);
      })
      .join('');
  },
};
