import { between } from '../chance.ts';
import type { Drawing } from './drawing.ts';
import { dot, fill, leaf, line, placed, spread } from './strokes.ts';

/** Apples and pears hanging as they grow. */
export const fruit: Drawing = {
  name: 'fruit',
  slots: 5,
  direction: 'one-way',
  repeat: [44, 60],
  tile(side, [, apple, pear, green, stalk], chance) {
    const size = side / 44;
    const stem = line('M0 -4.6C0.2 -6 0.6 -6.8 1.4 -7.6', stalk!, 0.8);
    const leafed = `<g transform="translate(0.6 -6)">${leaf(5, 2.6, green!, 62)}</g>`;
    const apples =
      fill(
        'M0 -4.8C2.4 -6 6 -5 6 -0.8C6 3.4 3 6.2 0 5.2C-3 6.2 -6 3.4 -6 -0.8C-6 -5 -2.4 -6 0 -4.8Z',
        apple!,
      ) +
      stem +
      leafed;
    const pears =
      fill(
        'M0 -6C2 -6 2.4 -3.6 3 -1.6C4 0.6 5.4 2 5.2 4.4C5 6.8 2.6 7.8 0 7.8C-2.6 7.8 -5 6.8 -5.2 4.4C-5.4 2 -4 0.6 -3 -1.6C-2.4 -3.6 -2 -6 0 -6Z',
        pear!,
      ) +
      stem +
      leafed;
    return spread(8, side, chance)
      .map(([x, y], k) =>
        placed(
          x,
          y,
          between(chance, -10, 10),
          size * between(chance, 0.85, 1),
          k % 2 === 0 ? apples : pears,
        ),
      )
      .join('');
  },
};

/** Cherries and blossom, strewn. */
export const berries: Drawing = {
  name: 'berries',
  slots: 4,
  direction: 'none',
  repeat: [32, 50.8],
  tile(side, [, berry, green, shine], chance) {
    const size = side / 32;
    const bunch = [
      line('M0 -5C-1.6 -2.4 -2 -0.4 -2.4 1.6M0 -5C1.6 -2.4 2.2 -0.4 2.6 1.2', green!, 0.6),
      leaf(5, 2.6, green!, 70),
      dot(-2.4, 2.6, 2.3, berry!),
      dot(2.6, 2.2, 2.3, berry!),
      dot(-3, 1.9, 0.6, shine!),
      dot(2, 1.5, 0.6, shine!),
    ].join('');
    return spread(9, side, chance)
      .map(([x, y]) => placed(x, y, 360 * chance(), size, bunch))
      .join('');
  },
};
