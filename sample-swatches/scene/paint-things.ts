import { applyHomography } from '../../server/geometry/homography.ts';
import type { Homography } from '../../server/geometry/homography.ts';
import type { Quad } from '../../server/geometry/points.ts';
import type { Raster } from '../paper/raster.ts';
import { SURFACE_SIDE } from './surfaces.ts';
import type { Place } from './scene.ts';

/** The picture as the sensor sees it before the light: linear, three numbers a pixel. */
export interface Canvas {
  readonly width: number;
  readonly height: number;
  readonly light: Float32Array;
}

type Back = Homography<'photo', 'table'>;

/** Lays the table over the whole picture. */
export function paintTable({ width, height, light }: Canvas, surface: Raster, back: Back): void {
  const [a, b, c, d, e, f, g, h, i] = back.rows;
  const perMillimetre = surface.side / SURFACE_SIDE;
  const mask = surface.side - 1;
  const from = surface.light;
  for (let y = 0; y < height; y++) {
    const v = y + 0.5;
    for (let x = 0; x < width; x++) {
      const u = x + 0.5;
      const w = perMillimetre / (g * u + h * v + i);
      const tx = (a * u + b * v + c) * w;
      const ty = (d * u + e * v + f) * w;
      const left = Math.floor(tx);
      const top = Math.floor(ty);
      const fx = tx - left;
      const fy = ty - top;
      const x0 = left & mask;
      const x1 = (left + 1) & mask;
      const y0 = (top & mask) * surface.side;
      const y1 = ((top + 1) & mask) * surface.side;
      const at = 3 * (y * width + x);
      mix(from, light, at, 3 * (y0 + x0), 3 * (y0 + x1), 3 * (y1 + x0), 3 * (y1 + x1), fx, fy);
    }
  }
}

function mix(
  from: Float32Array,
  to: Float32Array,
  at: number,
  p: number,
  q: number,
  r: number,
  s: number,
  fx: number,
  fy: number,
): void {
  const pp = (1 - fx) * (1 - fy);
  const qq = fx * (1 - fy);
  const rr = (1 - fx) * fy;
  const ss = fx * fy;
  to[at] = from[p]! * pp + from[q]! * qq + from[r]! * rr + from[s]! * ss;
  to[at + 1] = from[p + 1]! * pp + from[q + 1]! * qq + from[r + 1]! * rr + from[s + 1]! * ss;
  to[at + 2] = from[p + 2]! * pp + from[q + 2]! * qq + from[r + 2]! * rr + from[s + 2]! * ss;
}

/** Goes over the pixels around a thing with its own millimetres from its middle. */
function over(
  { width, height }: Canvas,
  corners: Quad<'photo'>,
  margin: number,
  back: Back,
  place: Place,
  visit: (pixel: number, x: number, y: number) => void,
): void {
  const xs = corners.map((p) => p.x);
  const ys = corners.map((p) => p.y);
  const left = Math.max(0, Math.floor(Math.min(...xs) - margin));
  const right = Math.min(width - 1, Math.ceil(Math.max(...xs) + margin));
  const top = Math.max(0, Math.floor(Math.min(...ys) - margin));
  const bottom = Math.min(height - 1, Math.ceil(Math.max(...ys) + margin));
  const [a, b, c, d, e, f, g, h, i] = back.rows;
  const angle = (place.turn * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  for (let y = top; y <= bottom; y++)
    for (let x = left; x <= right; x++) {
      const u = x + 0.5;
      const v = y + 0.5;
      const w = g * u + h * v + i;
      const tx = (a * u + b * v + c) / w - place.x;
      const ty = (d * u + e * v + f) / w - place.y;
      visit(y * width + x, tx * cos + ty * sin, ty * cos - tx * sin);
    }
}

/** Millimetres of the table that a pixel spans at the middle of a thing. */
function pixelSize(back: Back, corners: Quad<'photo'>): number {
  const x = corners.reduce((sum, p) => sum + p.x, 0) / 4;
  const y = corners.reduce((sum, p) => sum + p.y, 0) / 4;
  const [p, q] = [applyHomography(back, { x, y }), applyHomography(back, { x: x + 1, y })];
  return Math.hypot(q.x - p.x, q.y - p.y);
}

/** The thin soft shadow around a thing, longer on the side that lies away from the light. */
export function paintShadow(
  canvas: Canvas,
  corners: Quad<'photo'>,
  back: Back,
  place: Place,
  from: { readonly x: number; readonly y: number },
): void {
  const size = pixelSize(back, corners);
  const far = Math.hypot(place.x - from.x, place.y - from.y) || 1;
  const angle = (-place.turn * Math.PI) / 180;
  const [dx, dy] = [((place.x - from.x) / far) * REACH, ((place.y - from.y) / far) * REACH];
  const [ox, oy] = [
    dx * Math.cos(angle) - dy * Math.sin(angle),
    dx * Math.sin(angle) + dy * Math.cos(angle),
  ];
  over(canvas, corners, (4 * SOFT) / size, back, place, (pixel, x, y) => {
    const outX = Math.max(0, Math.abs(x - ox) - place.width / 2);
    const outY = Math.max(0, Math.abs(y - oy) - place.height / 2);
    const off = Math.hypot(outX, outY) / SOFT;
    if (off > 3) return;
    const by = 1 - DARK * Math.exp(-off * off);
    for (let k = 0; k < 3; k++) canvas.light[3 * pixel + k]! *= by;
  });
}

const REACH = 0.7;
const SOFT = 1.1;
const DARK = 0.42;

/**
 * Lays a thing on the table: its picture fills its place, edges soft by the part of a pixel that it covers.
 * `lift` shades it from one end to the other as a sheet does that does not lie quite flat. `cover`, if
 * given, says how much of the place each point fills (a smear of ink does not fill its place).
 */
export function paintThing(
  canvas: Canvas,
  corners: Quad<'photo'>,
  back: Back,
  place: Place,
  raster: Raster,
  lift: readonly [number, number],
  cover?: Float32Array,
): void {
  const size = pixelSize(back, corners);
  const last = raster.side - 1;
  const colour = new Float32Array(3);
  over(canvas, corners, 2, back, place, (pixel, x, y) => {
    const inside =
      Math.min(place.width / 2 - Math.abs(x), place.height / 2 - Math.abs(y)) / size + 0.5;
    if (inside <= 0) return;
    const u = x / place.width + 0.5;
    const v = y / place.height + 0.5;
    const tx = Math.min(last - 1e-3, Math.max(0, u * raster.side - 0.5));
    const ty = Math.min(last - 1e-3, Math.max(0, v * raster.side - 0.5));
    const p = Math.floor(ty) * raster.side + Math.floor(tx);
    mix(
      raster.light,
      colour,
      0,
      3 * p,
      3 * p + 3,
      3 * (p + raster.side),
      3 * (p + raster.side) + 3,
      tx % 1,
      ty % 1,
    );
    const covered = Math.min(1, inside) * (cover === undefined ? 1 : cover[p]!);
    const by = 1 + lift[0] * (u - 0.5) + lift[1] * (v - 0.5);
    const at = 3 * pixel;
    for (let k = 0; k < 3; k++)
      canvas.light[at + k] = canvas.light[at + k]! * (1 - covered) + colour[k]! * by * covered;
  });
}
