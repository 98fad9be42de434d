import { linearOfByte } from '../colour/curves.ts';
import { contains } from '../geometry/polygon.ts';
import type { Quad } from '../geometry/points.ts';
import type { Picture } from './picture.ts';
import { medianInPlace } from './surface.ts';

/** What a quad of the preview shows, seen whole. */
export interface Patch {
  /** Mean linear light in the photo's primaries, strays left out. */
  readonly light: readonly [number, number, number];
  /** How uneven it is: standard deviation over mean, in the green channel, light that falls off evenly over it taken out. */
  readonly uneven: number;
  /** Part of its pixels that are at the camera's limit in some channel. */
  readonly burnt: number;
}

/** Looks at the middle of a quad, 12 % of its width left out all round. */
export function patchOf(preview: Picture, corners: Quad<'photo'>): Patch | null {
  const inner = shrunken(corners, 0.12);
  const left = Math.max(0, Math.floor(Math.min(...inner.map((p) => p.x))));
  const right = Math.min(preview.width - 1, Math.ceil(Math.max(...inner.map((p) => p.x))));
  const top = Math.max(0, Math.floor(Math.min(...inner.map((p) => p.y))));
  const bottom = Math.min(preview.height - 1, Math.ceil(Math.max(...inner.map((p) => p.y))));
  const step = Math.max(1, Math.floor(Math.sqrt(((right - left) * (bottom - top)) / 4000)));
  const pixels: number[] = [];
  for (let y = top; y <= bottom; y += step)
    for (let x = left; x <= right; x += step)
      if (contains(inner, { x: x + 0.5, y: y + 0.5 })) pixels.push(y * preview.width + x);
  return pixels.length < 12 ? null : patchOfPixels(preview, pixels);
}

/** What the given pixels show together. */
export function patchOfPixels({ rgb, width }: Picture, pixels: readonly number[]): Patch {
  let burnt = 0;
  const channels = [0, 1, 2].map((channel) =>
    pixels.map((pixel) => linearOfByte[rgb[3 * pixel + channel]!]!),
  );
  for (const pixel of pixels)
    if (Math.max(rgb[3 * pixel]!, rgb[3 * pixel + 1]!, rgb[3 * pixel + 2]!) >= BURNT) burnt++;
  const means = channels.map(trimmedMean) as [number, number, number];
  const green = channels[1]!;
  const off = Math.min(
    deviation(green, means[1]),
    deviation(withoutSlope(green, pixels, width), means[1]),
  );
  return {
    light: means,
    uneven: off / means[1],
    burnt: burnt / pixels.length,
  };
}

/** Encoded values from here on may be cut off by the camera. */
const BURNT = 253;

function trimmedMean(values: number[]): number {
  const sorted = Float64Array.from(values).sort();
  const cut = Math.floor(0.15 * sorted.length);
  const kept = sorted.subarray(cut, sorted.length - cut);
  return kept.reduce((sum, value) => sum + value, 0) / kept.length;
}

/** The values less the plane through them, their mean kept: beside a lamp a card is a tenth lighter on one side. */
function withoutSlope(
  values: readonly number[],
  pixels: readonly number[],
  width: number,
): number[] {
  const mean = (of: readonly number[]): number => of.reduce((sum, v) => sum + v, 0) / of.length;
  const xs = pixels.map((pixel) => pixel % width);
  const ys = pixels.map((pixel) => Math.floor(pixel / width));
  const [x0, y0, v0] = [mean(xs), mean(ys), mean(values)];
  let [xx, xy, yy, xv, yv] = [0, 0, 0, 0, 0];
  values.forEach((value, i) => {
    const [x, y, v] = [xs[i]! - x0, ys[i]! - y0, value - v0];
    xx += x * x;
    xy += x * y;
    yy += y * y;
    xv += x * v;
    yv += y * v;
  });
  const whole = xx * yy - xy * xy;
  if (whole <= 0) return [...values];
  const [across, down] = [(yy * xv - xy * yv) / whole, (xx * yv - xy * xv) / whole];
  return values.map((value, i) => value - across * (xs[i]! - x0) - down * (ys[i]! - y0));
}

function deviation(values: number[], mean: number): number {
  const off = new Float64Array(values.length);
  for (let i = 0; i < off.length; i++) off[i] = Math.abs(values[i]! - mean);
  return 1.4826 * medianInPlace(off);
}

/** A quad with a part of its width taken off all round. */
export function shrunken(corners: Quad<'photo'>, by: number): Quad<'photo'> {
  const x = corners.reduce((sum, p) => sum + p.x, 0) / 4;
  const y = corners.reduce((sum, p) => sum + p.y, 0) / 4;
  const keep = 1 - 2 * by;
  return corners.map((p) => ({
    x: x + keep * (p.x - x),
    y: y + keep * (p.y - y),
  })) as unknown as Quad<'photo'>;
}

/**
 * Whether a patch can be white card: even, and as bright in all channels as nearly anything in the photo.
 *
 * Takes       how many times brighter in blue than in red and green it may be, beside what is brightest.
 */
export function isWhite(
  patch: Patch,
  brightest: readonly [number, number, number],
  bluer = TINTED,
): boolean {
  const [r, g, b] = patch.light.map((value, k) => value / brightest[k]!) as [
    number,
    number,
    number,
  ];
  const least = Math.min(r, g, b);
  return (
    patch.uneven < 0.06 &&
    least > 0.62 &&
    Math.max(r, g) / least < TINTED &&
    b / Math.min(r, g) < bluer
  );
}

/** A paper of another tint is this many times brighter in one channel than in another. */
const TINTED = 1.25;

/**
 * Beside printed papers the brightest in red and green may be a cream ground, and white with its brighteners lies some
 * 16 units along b from it: a third in blue light. Among squares of cardstock one so blue may be a pale blue.
 */
export const BESIDE_CREAM = 1.4;
