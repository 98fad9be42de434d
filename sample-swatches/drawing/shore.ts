import { between } from '../chance.ts';
import type { Drawing } from './drawing.ts';
import { box, dot, fill, leaf, line, n, oval, placed, smooth, spread } from './strokes.ts';

/** Fronds of kelp that sway upwards, with bladders where the blades leave the stem. */
export const kelp: Drawing = {
  name: 'kelp',
  slots: 4,
  direction: 'one-way',
  repeat: [44, 63.5],
  tile(side, [, front, behind, bladder]) {
    const size = side / 44;
    const frond = (x: number, paint: string, wide: number, phase: number, step: number): string => {
      const sway = (y: number): number => 2 * Math.sin((2 * Math.PI * y) / 44 + phase);
      const stem = Array.from({ length: 15 }, (_, k) => [x + sway(k * 4 - 6), k * 4 - 6] as const);
      const blades = Array.from({ length: 8 }, (_, k) => {
        const y = k * 5.5 + step;
        const turn = k % 2 === 0 ? 38 : -38;
        return `<g transform="translate(${n(x + sway(y))} ${n(y)})">${leaf(9.5 * wide, 3.6 * wide, paint, turn)}${dot(turn > 0 ? 0.9 : -0.9, -0.9, 0.85 * wide, bladder!)}</g>`;
      });
      return line(smooth(stem, false), paint, 0.9 * wide) + blades.join('');
    };
    return `<g transform="scale(${n(size)})">${frond(11, behind!, 0.85, 1.5, 2)}${frond(33, behind!, 0.85, 3.6, 4)}${frond(0, front!, 1, 0, 0)}${frond(44, front!, 1, 0, 0)}${frond(22, front!, 1, 2.2, 3)}</g>`;
  },
};

/** Scallops in rows, each with its ribs: waves, scales or shells. */
export const scallops: Drawing = {
  name: 'scallops',
  within: 2,
  slots: 4,
  direction: 'one-way',
  repeat: [15.24, 25.4],
  tile(side, [ground, outer, middle, inner]) {
    const scale = (x: number, y: number): string =>
      [
        dot(x, y, 0.5 * side, ground!),
        dot(x, y, 0.46 * side, outer!),
        dot(x, y, 0.35 * side, ground!),
        dot(x, y, 0.31 * side, middle!),
        dot(x, y, 0.19 * side, inner!),
      ].join('');
    const row = (y: number, shift: number): string =>
      [-1, 0, 1, 2].map((k) => scale((k + shift) * side, y)).join('');
    const rows = Array.from({ length: 8 }, (_, k) =>
      row(((k - 1) * side) / 4, k % 2 === 0 ? 0 : 0.5),
    );
    return `<svg x="0" y="0" width="${n(side)}" height="${n(side)}" overflow="hidden">${rows.join('')}</svg>`;
  },
};

/** Long waves rolling from left to right. */
export const swell: Drawing = {
  name: 'swell',
  slots: 4,
  direction: 'two-way',
  repeat: [25.4, 38.1],
  tile(side, [, one, two, three]) {
    const wave = (y: number, paint: string, width: number): string => {
      const points = Array.from({ length: 13 }, (_, k) => {
        const x = ((k - 2) * side) / 8;
        return [x, y + 0.07 * side * Math.sin((2 * Math.PI * x) / side)] as const;
      });
      return line(smooth(points, false), paint, width * side);
    };
    return [
      wave(0.1 * side, one!, 0.13),
      wave(0.33 * side, two!, 0.05),
      wave(0.55 * side, three!, 0.13),
      wave(0.8 * side, two!, 0.05),
    ].join('');
  },
};

/** Lighthouses, boats and gulls: this side up. */
export const harbour: Drawing = {
  name: 'harbour',
  slots: 5,
  direction: 'one-way',
  repeat: [50.8, 63.5],
  tile(side, [, red, dark, white, grass]) {
    const size = side / 50;
    const tower = [
      fill('M-8.5 1C-6 -1.6 6 -1.6 8.5 1C8 2.8 -8 2.8 -8.5 1Z', grass!),
      fill('M-3.4 0L-2.2 -15L2.2 -15L3.4 0Z', white!),
      fill('M-3.15 -3L-2.85 -7L2.85 -7L3.15 -3Z', red!),
      fill('M-2.65 -9.5L-2.35 -13L2.35 -13L2.65 -9.5Z', red!),
      box(-3, -16, 6, 1.2, dark!),
      box(-1.7, -19, 3.4, 3, white!),
      box(-0.5, -19, 1, 3, dark!),
      fill('M-2.4 -19L0 -22L2.4 -19Z', red!),
      box(-0.8, -2.6, 1.6, 2.6, dark!),
    ].join('');
    const boat = [
      fill('M-6.5 -2L6.5 -2C5.8 1 4 1.6 2.6 1.6L-3.4 1.6C-5 1.6 -6 0 -6.5 -2Z', dark!),
      box(-0.35, -14, 0.8, 12, dark!),
      fill('M1 -13.5C4.5 -10 6 -6.5 6.2 -3.2L1 -3.2Z', white!),
      fill('M-0.9 -12C-3.6 -9 -5 -6 -5.2 -3.2L-0.9 -3.2Z', red!),
      line('M-8 3.4Q-6.4 2.2 -4.8 3.4T-1.6 3.4T1.6 3.4T4.8 3.4T8 3.4', grass!, 0.8),
    ].join('');
    const gull = line('M-3.2 -1Q-1.6 -2.4 0 0Q1.6 -2.4 3.2 -1', dark!, 0.75);
    return [
      placed(0.22 * side, 0.46 * side, 0, 1.06 * size, tower),
      placed(0.74 * side, 0.92 * side, 0, 0.98 * size, tower),
      placed(0.72 * side, 0.34 * side, 2, size, boat),
      placed(0.25 * side, 0.84 * side, -3, size, boat),
      placed(0.46 * side, 0.14 * side, -4, size, gull),
      placed(0.98 * side, 0.6 * side, 6, size, gull),
      placed(0.47 * side, 0.62 * side, 3, 0.8 * size, gull),
      placed(0.95 * side, 0.1 * side, 0, 0.8 * size, gull),
    ].join('');
  },
};

/** Reeds with their heads, all upright. */
export const reeds: Drawing = {
  name: 'reeds',
  slots: 4,
  direction: 'one-way',
  repeat: [38.1, 50.8],
  tile(side, [, stem, head, blade], chance) {
    const size = side / 38;
    return Array.from({ length: 8 }, (_, k) => {
      const x = ((k % 4) + (k < 4 ? 0.25 : 0.75)) * (side / 4) + between(chance, -0.5, 0.5) * size;
      const y = (k < 4 ? 0.5 : 1) * side + between(chance, -1, 1) * size;
      const lean = between(chance, -4, 4);
      const body = [
        fill('M0.3 0C2 -5 3.4 -9 5.4 -12C4.6 -7 3 -3 1.4 0Z', blade!),
        fill('M-0.3 0C-1.6 -4 -2.6 -7 -4.2 -9.5C-3.8 -5.5 -2.4 -2 -1.2 0Z', blade!),
        line('M0 0L0 -16', stem!, 0.7),
        `<rect x="-1" y="-15.5" width="2" height="6" rx="1" fill="${head!}"/>`,
      ].join('');
      return placed(x, y, lean, size, body);
    }).join('');
  },
};

/** Fan shells and small snail shells, strewn. */
export const shells: Drawing = {
  name: 'shells',
  slots: 4,
  direction: 'none',
  repeat: [40, 60],
  tile(side, [, fan, rib, snail], chance) {
    const size = side / 40;
    const fanShell = [
      fill(
        'M0 4.6C-2 4.6 -6.4 0 -6 -2.8C-5.4 -6.4 -2.6 -6.6 0 -6.6C2.6 -6.6 5.4 -6.4 6 -2.8C6.4 0 2 4.6 0 4.6Z',
        fan!,
      ),
      fill('M-2 3.4L2 3.4L2.6 5.6L-2.6 5.6Z', fan!),
      line('M0 3.6L0 -5.4M0 3.6L-2.4 -5M0 3.6L2.4 -5M0 3.6L-4.4 -3.4M0 3.6L4.4 -3.4', rib!, 0.6),
    ].join('');
    const snailShell = [
      fill(
        'M-3.6 0.6C-3.6 -2 -1.6 -3.6 0.6 -3.4C3 -3.2 4.2 -1 3.6 1C3 3 1 3.4 -0.6 3L-5 3.2C-4.4 2.6 -3.6 1.8 -3.6 0.6Z',
        snail!,
      ),
      line(
        'M-0.4 1.8C-2.4 1.4 -2.2 -1.6 0.2 -1.8C2.4 -1.8 2.6 0.8 1.2 1C0.2 1.2 -0.2 0 0.6 -0.3',
        rib!,
        0.6,
      ),
    ].join('');
    const beads = spread(12, side, chance).map(([x, y]) => dot(x, y, 0.5 * size, rib!));
    const strewn = spread(11, side, chance).map(([x, y], k) =>
      placed(
        x,
        y,
        360 * chance(),
        size * between(chance, 0.85, 1.05),
        k % 2 === 0 ? fanShell : snailShell,
      ),
    );
    return [...beads, ...strewn].join('');
  },
};

/** Little fish, half swimming one way and half the other. */
export const shoal: Drawing = {
  name: 'shoal',
  slots: 4,
  direction: 'two-way',
  repeat: [25.4, 38.1],
  tile(side, [, one, two, fin]) {
    const size = side / 25;
    const fish = (paint: string): string =>
      fill('M-4.4 0C-3 -2.6 1 -2.8 3 0C1 2.8 -3 2.6 -4.4 0Z', paint) +
      fill('M2.2 0L5.2 -2.2L4.6 0L5.2 2.2Z', fin!) +
      oval(-2.6, -0.5, 0.45, 0.45, fin!);
    return [
      placed(0.25 * side, 0.25 * side, 0, size, fish(one!)),
      placed(0.75 * side, 0.75 * side, 180, size, fish(one!)),
      placed(0.75 * side, 0.25 * side, 180, size, fish(two!)),
      placed(0.25 * side, 0.75 * side, 0, size, fish(two!)),
    ].join('');
  },
};
