import type { PhotoPoint, Quad } from '../geometry/points.ts';
import { middleOf } from './find-sheets.ts';
import type { Candidate } from './find-sheets.ts';
import { SHREDS } from './left-over.ts';
import type { Region } from './regions.ts';
import { median } from './surface.ts';

/**
 * Where shreds lie that make no outline: a sheet like the nearest one, laid over their middle. Shreds that reach over
 * two sheets' length or more are those of two sheets or more that lie side by side.
 *
 * Takes       groups of shreds, the sheets already told, the area of one sheet, and the width of the preview.
 * Gives       quads that say where to look, not where the edges are.
 */
export function aboutShreds(
  shreds: readonly Region[],
  sheets: readonly Candidate[],
  one: number,
  width: number,
): Candidate[] {
  return shreds
    .flatMap((region) => oneByOne(region, Math.sqrt(one), width))
    .flatMap(({ pixels, middle }): Candidate[] => {
      if (pixels < SHREDS * one) return [];
      const away = ({ corners }: Candidate): number => {
        const { x, y } = middleOf(corners);
        return Math.hypot(x - middle.x, y - middle.y);
      };
      const [nearest] = [...sheets].sort((p, q) => away(p) - away(q));
      if (nearest === undefined || away(nearest) < 0.6 * Math.sqrt(one)) return [];
      const { x, y } = middleOf(nearest.corners);
      const corners = nearest.corners.map((corner) => ({
        x: corner.x - x + middle.x,
        y: corner.y - y + middle.y,
      })) as unknown as Quad<'photo'>;
      return [{ corners, area: nearest.area, fill: 0 }];
    });
}

interface Group {
  /** How many pixels. */
  readonly pixels: number;
  readonly middle: PhotoPoint;
}

/** A sheet with its gap, in sides of a sheet. */
const STEP = 1.1;
/** How far, in sides, the reach of shreds may be off a sheet's to tell its middle better than their mass does. */
const WHOLE = 0.15;

/** A group of shreds cut up so that no part reaches much further than a sheet of such a side. */
function oneByOne(
  { pixels, left, right, top, bottom }: Region,
  side: number,
  width: number,
): Group[] {
  const across = Math.max(1, Math.round((right - left + 1) / side / STEP));
  const down = Math.max(1, Math.round((bottom - top + 1) / side / STEP));
  const parts = Array.from({ length: across * down }, (): { xs: number[]; ys: number[] } => ({
    xs: [],
    ys: [],
  }));
  for (const pixel of pixels) {
    const x = pixel % width;
    const y = (pixel - x) / width;
    const column = Math.floor((across * (x - left)) / (right - left + 1));
    const row = Math.floor((down * (y - top)) / (bottom - top + 1));
    const { xs, ys } = parts[row * across + column]!;
    xs.push(x);
    ys.push(y);
  }
  return parts
    .filter(({ xs }) => xs.length > 0)
    .map(({ xs, ys }) => ({
      pixels: xs.length,
      middle: { x: middleAlong(xs, side), y: middleAlong(ys, side) },
    }));
}

function middleAlong(places: readonly number[], side: number): number {
  const [first, last] = [least(places), -least(places.map((place) => -place))];
  return Math.abs((last - first) / side - 1) < WHOLE ? (first + last) / 2 : median(places);
}

function least(values: readonly number[]): number {
  return values.reduce((low, value) => Math.min(low, value), Infinity);
}
