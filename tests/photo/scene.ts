import { applyHomography, homographyOf, squareOf } from './scene-geometry.ts';
import type { Corner, Matrix3 } from './scene-geometry.ts';

/**
 * A table with papers on it, seen by a simulated camera: drawn by code, so that the truth is known.
 * Colours are linear light in sRGB; places are millimetres on the table.
 */
export type Light = readonly [number, number, number];
export type Paint = (x: number, y: number) => Light;

export interface Paper {
  readonly centre: Corner;
  /** Degrees, clockwise as seen. */
  readonly turned: number;
  readonly width: number;
  readonly height: number;
  /** Millimetres from the paper's upper left corner. */
  readonly paint: Paint;
}

export interface Scene {
  readonly width: number;
  readonly height: number;
  readonly table: Paint;
  readonly papers: readonly Paper[];
  /** Where the corners of the table's seen part (0, 0) to (span) fall, in pixels. */
  readonly seen: readonly [Corner, Corner, Corner, Corner];
  readonly span: { readonly width: number; readonly height: number };
  /** Gain of the light in each channel at a place of the picture, both in [0, 1]. */
  readonly light: (u: number, v: number) => Light;
  /** Standard deviation of the noise, in steps of 255. */
  readonly noise: number;
  readonly seed: number;
}

export interface Seen {
  readonly width: number;
  readonly height: number;
  readonly rgb: Uint8Array;
  /** The corners of each paper in the picture, clockwise from its own upper left. */
  readonly corners: readonly Corner[][];
}

export function random(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

export function photograph(scene: Scene): Seen {
  const { width, height, span } = scene;
  const toPhoto = homographyOf(squareOf(span.width, span.height), scene.seen);
  const toTable = homographyOf(scene.seen, squareOf(span.width, span.height));
  const papers = scene.papers.map(placed);
  const rgb = new Uint8Array(3 * width * height);
  const chance = random(scene.seed);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const sum = [0, 0, 0];
      for (const [dx, dy] of SUBPIXELS) {
        const place = applyHomography(toTable, [x + dx, y + dy]);
        const seen = lookAt(place, papers, scene.table);
        for (let c = 0; c < 3; c++) sum[c]! += seen[c]! / SUBPIXELS.length;
      }
      const light = scene.light(x / width, y / height);
      for (let c = 0; c < 3; c++) {
        const value = 255 * encode(sum[c]! * light[c]!) + scene.noise * normal(chance);
        rgb[3 * (y * width + x) + c] = Math.max(0, Math.min(255, Math.round(value)));
      }
    }
  return {
    width,
    height,
    rgb,
    corners: papers.map((paper) =>
      squareOf(paper.width, paper.height).map((corner) =>
        applyHomography(toPhoto, paper.toTable(corner)),
      ),
    ),
  };
}

const SUBPIXELS: readonly Corner[] = [
  [0.25, 0.25],
  [0.75, 0.25],
  [0.25, 0.75],
  [0.75, 0.75],
];

interface Placed extends Paper {
  readonly toPaper: (place: Corner) => Corner;
  readonly toTable: (place: Corner) => Corner;
}

function placed(paper: Paper): Placed {
  const angle = (paper.turned * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const [cx, cy] = paper.centre;
  return {
    ...paper,
    toPaper: ([x, y]) => [
      cos * (x - cx) + sin * (y - cy) + paper.width / 2,
      -sin * (x - cx) + cos * (y - cy) + paper.height / 2,
    ],
    toTable: ([x, y]) => [
      cx + cos * (x - paper.width / 2) - sin * (y - paper.height / 2),
      cy + sin * (x - paper.width / 2) + cos * (y - paper.height / 2),
    ],
  };
}

/** Light falls from the upper left, so a paper (0.3 mm thick, a little curled) shades what lies to its lower right. */
const SHADOW = { dx: 0.5, dy: 0.6, soft: 0.9, depth: 0.35 };

function lookAt(place: Corner, papers: readonly Placed[], table: Paint): Light {
  let shade = 1;
  for (const paper of papers) {
    const [x, y] = paper.toPaper(place);
    if (x >= 0 && y >= 0 && x < paper.width && y < paper.height) return paper.paint(x, y);
    const [sx, sy] = paper.toPaper([place[0] - SHADOW.dx, place[1] - SHADOW.dy]);
    const out = Math.max(-sx, -sy, sx - paper.width, sy - paper.height);
    if (out < SHADOW.soft) {
      const covered = Math.min(1, 0.5 - out / (2 * SHADOW.soft));
      shade = Math.min(shade, 1 - SHADOW.depth * Math.max(0, covered));
    }
  }
  const [r, g, b] = table(place[0], place[1]);
  return [r * shade, g * shade, b * shade];
}

export function encode(light: number): number {
  if (light <= 0.0031308) return Math.max(0, 12.92 * light);
  return 1.055 * Math.min(1.2, light) ** (1 / 2.4) - 0.055;
}

/** Linear light of a colour written #rrggbb. */
export function light(hex: string): Light {
  const part = (at: number): number => {
    const value = parseInt(hex.slice(at, at + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  };
  return [part(1), part(3), part(5)];
}

function normal(chance: () => number): number {
  return chance() + chance() + chance() + chance() + chance() + chance() - 3 + 0 * chance();
}

export type { Corner, Matrix3 };
