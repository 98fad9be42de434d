import type { Quad } from '../geometry/points.ts';
import { groundCells } from './ground-cells.ts';
import { cellsWhere, plainCellsFrom } from './light-cells.ts';
import type { Cell } from './light-cells.ts';
import { leftAt, lightLeft } from './light-left.ts';
import type { LightLeft } from './light-left.ts';
import type { Picture } from './picture.ts';
import { shareLight } from './shared-light.ts';
import { heightAt, median } from './surface.ts';

/** How the light falls over the photo: for each channel a smooth surface in the logarithm of linear light. */
export interface LightField {
  readonly of: readonly [Float64Array, Float64Array, Float64Array];
  /** What that leaves over the bare table, where it was looked for. */
  readonly left?: LightLeft | null;
  /** How far the light differs over the table, largest over smallest, in the green channel. */
  readonly range: number;
  /** How well the surface tells the light, as a standard error of its logarithm. */
  readonly error: number;
  /** The same of what red and blue part from green by, each. */
  readonly tint: number;
  /** So even, over most of the picture, that the things lay flat under a lid: a scanner's light. */
  readonly pressed: boolean;
  readonly width: number;
  readonly height: number;
}

/** Papers on the table, whose plain parts tell of the light too, and the light as it is known without them. */
export interface Papers {
  readonly corners: readonly Quad<'photo'>[];
  readonly known: LightField;
}

/**
 * Reads the light off whatever has one colour: the bare table (two of them where a sheet of paper lies on a carpet),
 * the plain parts of the papers that lie on it, a plain sheet that is known to be white. Each has a
 * colour of its own under one light.
 *
 * Takes       the preview, which of its pixels are table, where a white thing lies and where the papers lie, if that
 *             is known. With too little of them (one sheet fills the frame) the light is taken as even, and
 *             the error says that nobody knows.
 */
export function lightOnTable(
  picture: Picture,
  reached: Uint8Array,
  white: Quad<'photo'> | null = null,
  papers: Papers | null = null,
): LightField {
  const { width, height } = picture;
  const card = white === null ? [] : plainCellsFrom(picture, white);
  const bare = surfacesOf(cellsWhere(picture, reached));
  const table = [...(card.length >= ENOUGH ? [card] : []), ...bare];
  const printed = (papers?.corners ?? []).map((corners) =>
    groundCells(picture, corners, papers!.known.of),
  );
  // What a single paper shows may be its own running tone.
  const several = printed.filter((grounds) => grounds.length > 0).length > 1;
  const surfaces = several || table.length > 0 ? [...table, ...printed.flat()] : [];
  if (surfaces.length === 0) return evenLight(picture);
  const { of, error: unsure } = shareLight(surfaces);
  const heights = surfaces.flat().map(({ x, y }) => heightAt(of[1], x, y));
  const range = Math.exp(Math.max(...heights) - Math.min(...heights));
  const seen = seenPart(surfaces.flat());
  const told = Math.min(UNKNOWN, Math.hypot(LEAST + unsure, BEYOND * Math.max(0, 1 - seen / MOST)));
  const pressed = range < SCANNED && seen >= MOST;
  if (pressed)
    return { of, range, error: PRESSED * told, tint: TINT.pressed, pressed, width, height };
  const left = lightLeft(bare, of);
  const error = Math.min(UNKNOWN, Math.hypot(told, STAYS * (left?.spread ?? 0)));
  return { of, left, range, error, tint: TINT.laid, pressed, width, height };
}

/** Of the fields, so many on each side, into which a picture is parted: the part in which something was seen. */
function seenPart(cells: readonly Cell[]): number {
  const along = (place: number): number =>
    Math.max(0, Math.min(FIELDS - 1, Math.floor(((place + 1) / 2) * FIELDS)));
  const seen = new Set(cells.map(({ x, y }) => FIELDS * along(y) + along(x)));
  return seen.size / FIELDS ** 2;
}

/** Fewer cells tell no shape. */
const ENOUGH = 24;

/**
 * Bare table told apart by colour into one or two surfaces, by two means over the cells.
 * Light alone parts no cells so far: its colour changes by less over a table than materials differ.
 */
function surfacesOf(cells: readonly Cell[]): (readonly Cell[])[] {
  if (cells.length < ENOUGH) return [];
  const points = cells.map(({ log: [r, g, b] }) => [g / 2, r - g, b - g] as const);
  const apart = (p: Point3, q: Point3): number => Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]);
  const byLight = [...points].sort((p, q) => p[0] - q[0]);
  let [low, high]: Point3[] = [
    byLight[Math.floor(0.1 * points.length)]!,
    byLight[Math.floor(0.9 * points.length)]!,
  ];
  let isHigh: boolean[] = [];
  for (let round = 0; round < 8; round++) {
    isHigh = points.map((p) => apart(p, high!) < apart(p, low!));
    if (isHigh.every((value) => value === isHigh[0])) return [cells];
    low = meanOf(points.filter((_, i) => !isHigh[i]));
    high = meanOf(points.filter((_, i) => isHigh[i]));
  }
  const within = median(points.map((p, i) => apart(p, isHigh[i]! ? high! : low!)));
  const between = apart(low!, high!);
  if (between < 0.45 || between < 5 * within) return [cells];
  const parts = [true, false].map((side) => cells.filter((_, i) => isHigh[i] === side));
  return parts.filter((part) => part.length >= ENOUGH).sort((p, q) => q.length - p.length);
}

type Point3 = readonly [number, number, number];

function meanOf(points: readonly Point3[]): Point3 {
  const mean = (k: 0 | 1 | 2): number => points.reduce((sum, p) => sum + p[k], 0) / points.length;
  return [mean(0), mean(1), mean(2)];
}

/**
 * How much of what smooth light leaves over the table stays as an error of the light on the papers, though it is followed in part.
 *
 * Source      rendered tables under shadows and two lamps, tuning seeds 1 to 12 and 100 to 104: where something was left, 0.058,
 *             the light of papers was off by 0.056, root mean square of logarithms; without following it by 0.083.
 */
const STAYS = 0.95;

/** Light taken as the same everywhere, for want of better knowledge. */
export function evenLight({ width, height }: Picture): LightField {
  const even = (): Float64Array => new Float64Array(6);
  return {
    of: [even(), even(), even()],
    range: 1,
    error: UNKNOWN,
    tint: TINT.unknown,
    pressed: false,
    width,
    height,
  };
}

/** Standard error of log light where the table is not seen, and the least that is claimed anywhere. */
const UNKNOWN = 0.145;
const LEAST = 0.014;

/** No window or lamp lights a table so evenly: largest light over smallest. What lies there lies flat under a lid. */
const SCANNED = 1.08;

/** In such a part of the fields it has to be seen: light may fall by a third where a strip at the rim looks even. */
const MOST = 0.7;
const FIELDS = 4;
/**
 * How far light is off that is told from next to nothing, as a logarithm, by root mean square over the picture.
 *
 * Source      computed tables under light that falls evenly, ever more, with dark corners, or away from a lamp: 0.03 where
 *             a strip of 22 % was seen, 0.055 with one of 35 % whose grain runs in waves, 0.02 with half.
 */
const BEYOND = 0.07;

/**
 * How much surer light is that is so even, and how far its hue is off between a paper and the white card.
 *
 * Source      rendered pictures whose light is known, tuning seeds 100 to 239: root mean square of log light 0.019 over 45
 *             photos of papers, 0.015 over 80 of squares and smears and 0.006 over 35 scans; red and blue against green
 *             0.009 to 0.015 on photos. That of light taken as even is a judgement.
 */
const PRESSED = 0.4;
const TINT = { laid: 0.011, pressed: 0.004, unknown: 0.03 };

/** Light in each channel at a place of the preview, relative to nothing in particular. */
export function lightAt(field: LightField, x: number, y: number): [number, number, number] {
  const u = (2 * x) / field.width - 1;
  const v = (2 * y) / field.height - 1;
  const left = field.left == null ? 0 : leftAt(field.left, u, v);
  return [
    Math.exp(heightAt(field.of[0], u, v) + left),
    Math.exp(heightAt(field.of[1], u, v) + left),
    Math.exp(heightAt(field.of[2], u, v) + left),
  ];
}
