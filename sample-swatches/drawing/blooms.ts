import type { Chance } from '../chance.ts';
import { between } from '../chance.ts';
import type { Drawing } from './drawing.ts';
import { dot, leaf, line, n, petal, placed, spread } from './strokes.ts';

/** A flower seen from above, about 10 mm across. */
function flower(petals: number, outer: string, heart: string, inner: string): string {
  const around = Array.from({ length: petals }, (_, k) => petal(5, 4.6, outer, (360 * k) / petals));
  const veins = Array.from({ length: petals }, (_, k) =>
    petal(2.9, 1.5, inner, (360 * k) / petals),
  );
  return [...around, ...veins, dot(0, 0, 1.25, heart)].join('');
}

/** A spray of leaves on a bent stem, about 10 mm long, growing upwards. */
function sprig(paint: string, leaves = 3): string {
  const stem = line('M0 1C0.8 -3 -0.6 -6 0.4 -9', paint, 0.55);
  const pairs = Array.from({ length: leaves }, (_, k) => {
    const y = -1.6 - (k * 6.2) / leaves;
    return `<g transform="translate(0.1 ${n(y)})">${leaf(4.2 - k * 0.5, 2.1, paint, 52)}${leaf(4.2 - k * 0.5, 2.1, paint, -52)}</g>`;
  });
  return `${stem}${pairs.join('')}<g transform="translate(0.4 -8.4)">${leaf(3.4, 1.8, paint)}</g>`;
}

/** Flowers, buds and leaves strewn in every direction. */
export const meadow: Drawing = {
  name: 'meadow',
  slots: 5,
  direction: 'none',
  repeat: [46, 74],
  tile(side, [, petals, other, green, heart], chance) {
    const size = side / 46;
    const places = spread(15, side, chance);
    const leaves = places.map(([x, y]) =>
      placed(
        x,
        y,
        360 * chance(),
        size * between(chance, 0.9, 1.1),
        `<g transform="translate(0 -3)">${sprig(green!)}</g>`,
      ),
    );
    const blooms = places.map(([x, y], k) => {
      const paint = k % 3 === 1 ? other! : petals!;
      const wide = k < 5 ? 1.35 : between(chance, 0.62, 0.9);
      return placed(
        x,
        y,
        360 * chance(),
        size * wide,
        flower(k % 3 === 1 ? 5 : 6, paint, heart!, k % 3 === 1 ? petals! : other!),
      );
    });
    const seeds = spread(14, side, chance).map(([x, y]) => dot(x, y, 0.55 * size, heart!));
    return [...seeds, ...leaves, ...blooms].join('');
  },
};

/** One large flower with its leaves, turned about in each place. */
export const peony: Drawing = {
  name: 'peony',
  slots: 4,
  direction: 'none',
  repeat: [64, 76.2],
  tile(side, [, petals, heart, green], chance) {
    const size = side / 64;
    return spread(5, side, chance)
      .map(([x, y]) => {
        const leaves = [20, 140, 250].map((turn) => leaf(16, 8, green!, turn + 30 * chance()));
        const outer = Array.from({ length: 7 }, (_, k) => petal(11, 9.5, petals!, (360 * k) / 7));
        const middle = Array.from({ length: 6 }, (_, k) =>
          line(
            `M${n(Math.cos(k * 1.047) * 3)} ${n(Math.sin(k * 1.047) * 3)}L${n(Math.cos(k * 1.047) * 7)} ${n(Math.sin(k * 1.047) * 7)}`,
            heart!,
            0.8,
          ),
        );
        return placed(
          x,
          y,
          360 * chance(),
          size * between(chance, 0.85, 1.1),
          [...leaves, ...outer, ...middle, dot(0, 0, 2.6, heart!)].join(''),
        );
      })
      .join('');
  },
};

/** Flowers on stems, all growing upwards. */
export const stems: Drawing = {
  name: 'stems',
  slots: 4,
  direction: 'one-way',
  repeat: [36, 50.8],
  tile(side, [, petals, green, heart], chance) {
    const size = side / 36;
    const kinds = [bell, daisy, bud];
    return [0, 1, 2, 3, 4, 5]
      .map((k) => {
        const x = ((k % 3) + 0.5 + (k < 3 ? 0 : 0.5)) * (side / 3);
        const y = (k < 3 ? 0.48 : 0.98) * side;
        return placed(x, y, between(chance, -6, 6), size, kinds[k % 3]!(petals!, green!, heart!));
      })
      .join('');
  },
};

function stalk(green: string): string {
  return `${line('M0 0C0.7 -4 -0.5 -7 0 -11', green, 0.7)}<g transform="translate(0.2 -3)">${leaf(5, 2.2, green, 48)}</g><g transform="translate(0 -1.2)">${leaf(5.4, 2.2, green, -44)}</g>`;
}

function bell(petals: string, green: string, heart: string): string {
  const head = `<g transform="translate(0 -9.5)">${petal(5.4, 3.2, petals, -38)}${petal(5.4, 3.2, petals, 38)}${petal(6, 3.4, petals)}${dot(0, -0.6, 1, heart)}</g>`;
  return stalk(green) + head;
}

function daisy(petals: string, green: string, heart: string): string {
  const ring = Array.from({ length: 8 }, (_, k) => petal(3.6, 2.2, petals, 45 * k)).join('');
  return `${stalk(green)}<g transform="translate(0 -11.5)">${ring}${dot(0, 0, 1.3, heart)}</g>`;
}

function bud(petals: string, green: string, heart: string): string {
  return `${stalk(green)}<g transform="translate(0 -9.6)">${petal(4.6, 3.4, petals)}${leaf(2.6, 1.6, green, 30)}${leaf(2.6, 1.6, green, -30)}${dot(0, -4.6, 0.7, heart)}</g>`;
}

/** Little sprigs in rows, each row leaning the other way: both ways up look right. */
export const sprigs: Drawing = {
  name: 'sprigs',
  slots: 3,
  direction: 'none',
  repeat: [19.05, 30.48],
  tile(side, [, green, berry]) {
    const size = side / 25;
    const places = [
      [0.25, 0.25, 45],
      [0.75, 0.25, 135],
      [0.25, 0.75, 315],
      [0.75, 0.75, 225],
    ] as const;
    return places
      .map(([x, y, turn]) =>
        placed(
          x * side,
          y * side,
          turn,
          size,
          `<g transform="translate(0 4)">${sprig(green!)}${dot(1.6, -9.4, 1, berry!)}${dot(-1.6, -8.8, 1, berry!)}${dot(0.2, -11.4, 1.1, berry!)}</g>`,
        ),
      )
      .join('');
  },
};

/** Leaves of two kinds, strewn. */
export const leaves: Drawing = {
  name: 'leaves',
  slots: 4,
  direction: 'none',
  repeat: [38, 60],
  tile(side, [, one, other, vein], chance: Chance) {
    const size = side / 38;
    return spread(13, side, chance)
      .map(([x, y], k) => {
        const broad = k % 2 === 0;
        const paint = broad ? one! : other!;
        const body = broad ? leaf(12, 7.5, paint) : leaf(13, 4.6, paint);
        const veins = broad
          ? line('M0 0.8L0 -10M0 -3L2 -5.2M0 -3L-2 -5.2M0 -6L1.7 -7.8M0 -6L-1.7 -7.8', vein!, 0.5)
          : line('M0 0.8L0 -11', vein!, 0.5);
        return placed(
          x,
          y,
          360 * chance(),
          size * between(chance, 0.8, 1.1),
          `<g transform="translate(0 6)">${body}${veins}</g>`,
        );
      })
      .join('');
  },
};
