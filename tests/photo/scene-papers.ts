import type { Light, Paint } from './scene.ts';
import { light, random } from './scene.ts';

/** Tables to lay papers on. */
export const TABLES = {
  whiteBoard: () => constant(light('#e9e8e4')),
  greyDesk: () => constant(light('#9a9a98')),
  wood: wood(light('#a9835a'), light('#86633f')),
  darkMat: mat(light('#2c4a3e'), light('#7fa08f')),
  cloth: cloth(light('#b8c4d2'), light('#e8e4da'), light('#8d5a5a')),
} satisfies Record<string, () => Paint>;

function constant(colour: Light): Paint {
  return () => colour;
}

function mix(a: Light, b: Light, t: number): Light {
  return [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1]), a[2] + t * (b[2] - a[2])];
}

function wood(pale: Light, deep: Light): () => Paint {
  return () => (x, y) => {
    const bend = y + 4 * Math.sin(x / 70) + 2 * Math.sin(x / 23 + y / 40);
    const grain = 0.5 + 0.25 * Math.sin(bend / 1.7) + 0.25 * Math.sin(bend / 4.9 + 1.3);
    const plank = Math.abs(((y + 5) % 95) - 1) < 0.7 ? 0.8 : 0;
    return mix(pale, deep, Math.min(1, 0.75 * grain + plank));
  };
}

function mat(ground: Light, line: Light): () => Paint {
  return () => (x, y) => {
    const near = (v: number): number => Math.abs((((v % 10) + 10) % 10) - 5);
    return near(x) > 4.7 || near(y) > 4.7 ? mix(ground, line, 0.7) : ground;
  };
}

function cloth(ground: Light, band: Light, dot: Light): () => Paint {
  return () => (x, y) => {
    const bands = Math.floor(x / 9) % 3 === 0;
    const dots = Math.hypot((((x % 18) + 18) % 18) - 13, (((y % 18) + 18) % 18) - 9) < 2.6;
    const weave = 0.5 + 0.5 * Math.sin(x * 4) * Math.sin(y * 4);
    const base = dots ? dot : bands ? band : ground;
    return mix(base, [0, 0, 0], 0.12 * weave);
  };
}

const INKS = [
  '#2f5d50',
  '#d9776c',
  '#1d5b66',
  '#d8c39a',
  '#efe6dc',
  '#5a6672',
  '#8c3b4a',
  '#e3a73f',
].map(light);
const WHITE = light('#f4f3f0');
const KRAFT = light('#b08a5f');

/** Prints for sheets of some 152 mm; `which` picks the kind, `seed` its colours and places. */
export const PRINTS = {
  plain: (seed: number): Paint => constant(ink(seed)),
  stripes: (seed: number): Paint => {
    const [a, b, c] = [ink(seed), ink(seed + 3), WHITE];
    return (x) => [a, c, b, c][Math.floor(x / 7) % 4]!;
  },
  dots: (seed: number): Paint => {
    const [ground, dot] = [ink(seed), ink(seed + 2)];
    return (x, y) => (Math.hypot((x % 12) - 6, (y % 12) - 6) < 3.4 ? dot : ground);
  },
  gingham: (seed: number): Paint => {
    const a = ink(seed);
    return (x, y) => mix(WHITE, a, ((Math.floor(x / 8) % 2) + (Math.floor(y / 8) % 2)) / 2);
  },
  sparse: (seed: number): Paint => blobs(seed, WHITE, 9),
  bouquet: (seed: number): Paint => blobs(seed, ink(seed + 1), 60),
  kraft: (seed: number): Paint => blobs(seed, KRAFT, 14),
  darkEdge: (seed: number): Paint => {
    const [rim, middle] = [light('#20262b'), blobs(seed, WHITE, 20)];
    return (x, y) => (Math.min(x, y, 152.4 - x, 152.4 - y) < 9 ? rim : middle(x, y));
  },
} satisfies Record<string, (seed: number) => Paint>;

function ink(seed: number): Light {
  return INKS[((seed % INKS.length) + INKS.length) % INKS.length]!;
}

function blobs(seed: number, ground: Light, count: number): Paint {
  const chance = random(seed + 77);
  const spots = Array.from({ length: count }, (_, i) => ({
    x: 152.4 * chance(),
    y: 152.4 * chance(),
    r: 4 + 10 * chance(),
    colour: ink(seed + i),
  }));
  return (x, y) =>
    spots.find((spot) => Math.hypot(x - spot.x, y - spot.y) < spot.r)?.colour ?? ground;
}

export const CARD_WHITE = light('#f6f6f8');
export const plainPaint = constant;
