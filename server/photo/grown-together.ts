import { applyHomography, homographyOf } from '../geometry/homography.ts';
import type { Homography } from '../geometry/homography.ts';
import type { Quad } from '../geometry/points.ts';
import { polygonArea } from '../geometry/polygon.ts';
import { inReadingOrder, isConvex, rectangleQuad, sidesOf } from '../geometry/quad.ts';
import { supportOf } from './edges.ts';
import type { Edges } from './edges.ts';
import type { Candidate } from './find-sheets.ts';
import { quadOf } from './region-quad.ts';
import type { Region } from './regions.ts';

/**
 * Sheets that lie so close in rows and columns that they look like one block: the block is divided evenly
 * where edges run all through it.
 *
 *     +---++---++---+
 *     |   ||   ||   |     a block of 3 x 2: its own sides, two lines down and one across,
 *     +---++---++---+     each borne out by edges from one end to the other
 *     +---++---+          where the block does not fill a place, no sheet lies
 *     |   ||   |          a gap that shows in the block's shape has two lines, else one counts for both
 *     +---++---+
 *
 * Takes       a region of the preview that is no table, the edges, width over height of a sheet, and the area of a
 *             sheet there if others tell it (else 0).
 * Gives       rough quads, good to some 2 % of a side: to be laid onto the edges. None when the block
 *             divides into nothing that edges bear out.
 */
export function dividedBlock(
  region: Region,
  edges: Edges,
  aspect: number,
  usual: number,
): Candidate[] {
  const block = quadOf(region, edges.width);
  if (block === null || block.fill < LEAST_FILL || !isConvex(block.corners)) return [];
  const corners = inReadingOrder(block.corners);
  const grids = gridsOf(corners, aspect, usual);
  const toPhoto = homographyOf(rectangleQuad<'sheet'>(0, 0, 1, 1), corners);
  let best: { readonly grid: Grid; readonly borne: number } | null = null;
  for (const grid of grids) {
    if (best !== null && grid.n * grid.m <= best.grid.n * best.grid.m) continue;
    const borne = weakestLine(grid, toPhoto, edges);
    if (borne >= BORNE) best = { grid, borne };
  }
  if (best === null) return [];
  const { grid, borne } = best;
  const filled = fillOf(
    region,
    grid,
    homographyOf(corners, rectangleQuad<'sheet'>(0, 0, 1, 1)),
    edges,
  );
  const cells: Candidate[] = [];
  for (let row = 0; row < grid.m; row++)
    for (let column = 0; column < grid.n; column++) {
      const cell = rectangleQuad<'sheet'>(
        column * (grid.width + grid.across),
        row * (grid.height + grid.down),
        grid.width,
        grid.height,
      ).map((corner) => applyHomography(toPhoto, corner)) as unknown as Quad<'photo'>;
      const area = polygonArea(cell);
      if (filled[row * grid.n + column]! > FILLED * area)
        cells.push({ corners: cell, area, fill: borne });
    }
  return cells;
}

/** Part of its quad that a block has to fill; a corner place may be empty. */
const LEAST_FILL = 0.6;
/** Part of each dividing line that edges have to bear out. */
const BORNE = 0.5;
/** Part of a place that has to be filled for a sheet to lie there. */
const FILLED = 0.55;
/** How far the shape of a place may be off a sheet's, as a logarithm: gaps and perspective. */
const OFF_SHAPE = 0.09;

interface Grid {
  /** Places across and down. */
  readonly n: number;
  readonly m: number;
  /** Size of a place, as parts of the block's sides. */
  readonly width: number;
  readonly height: number;
  /** Gaps between places that are neighbours across, and down, as parts of the block's sides. */
  readonly across: number;
  readonly down: number;
}

function gridsOf(corners: Quad<'photo'>, aspect: number, usual: number): Grid[] {
  const [upper, right, lower, left] = sidesOf(corners);
  const across = (upper + lower) / 2;
  const down = (left + right) / 2;
  const grids: Grid[] = [];
  for (let n = 1; n <= MOST; n++)
    for (let m = 1; m <= MOST; m++) {
      if (n * m === 1) continue;
      for (const wanted of new Set([aspect, 1 / aspect])) {
        const gap = gapOf(n, m, across, down, wanted);
        const width = (across - (n - 1) * gap) / n;
        const height = (down - (m - 1) * gap) / m;
        const isShaped = Math.abs(Math.log(width / height / wanted)) < OFF_SHAPE;
        const area = width * height;
        const isSized = usual === 0 ? area > SMALLEST : Math.abs(Math.log(area / usual)) < 0.35;
        if (isShaped && isSized)
          grids.push({
            n,
            m,
            width: width / across,
            height: height / down,
            across: gap / across,
            down: gap / down,
          });
      }
    }
  return grids;
}

/**
 * The gap between sheets that makes up for the block's shape, where its sides tell it: with more places across than
 * down there are more gaps across too. 0 where they do not, and where there is hardly any.
 */
function gapOf(n: number, m: number, across: number, down: number, aspect: number): number {
  // across = n w + (n - 1) g, down = m w / aspect + (m - 1) g
  const determinant = n * (m - 1) - ((n - 1) * m) / aspect;
  if (Math.abs(determinant) < 0.5) return 0;
  const width = (across * (m - 1) - down * (n - 1)) / determinant;
  const gap = (n * down - (m * across) / aspect) / determinant;
  return gap > NARROW * width && gap < WIDE * width ? gap : 0;
}

/** Parts of a sheet's width: a narrower gap is none, over a wider one nothing grows together. */
const NARROW = 0.025;
const WIDE = 0.2;

const MOST = 6;
/** Pixels of a sheet of 60 x 60; smaller ones could not be told from motifs. */
const SMALLEST = 3600;

/**
 * The least part of a dividing line that is borne out, after looking a little to both sides of it; 0 as soon as one is
 * borne out too little.
 */
function weakestLine(
  { n, m, width, height, across, down }: Grid,
  toPhoto: Homography<'sheet', 'photo'>,
  edges: Edges,
): number {
  let weakest = 1;
  const at = (u: number, v: number): { x: number; y: number } =>
    applyHomography(toPhoto, { x: u, y: v });
  const borders = (count: number, size: number, gap: number): number[] =>
    Array.from({ length: count - 1 }, (_, k) => (k + 1) * (size + gap)).flatMap((next) =>
      gap === 0 ? [next] : [next - gap, next],
    );
  for (const u of borders(n, width, across)) {
    const borne = bestBeside((d, wanted) =>
      supportOf(edges, at(u + d / n, 0), at(u + d / n, 1), 1, wanted),
    );
    if (borne < BORNE) return 0;
    weakest = Math.min(weakest, borne);
  }
  for (const v of borders(m, height, down)) {
    const borne = bestBeside((d, wanted) =>
      supportOf(edges, at(0, v + d / m), at(1, v + d / m), 1, wanted),
    );
    if (borne < BORNE) return 0;
    weakest = Math.min(weakest, borne);
  }
  return weakest;
}

/** Takes what tells the part that is borne out at an offset, given the part from which on it is of use. */
function bestBeside(borneAt: (offset: number, wanted: number) => number): number {
  let best = 0;
  for (let step = -4; step <= 4; step++)
    best = Math.max(best, borneAt(0.006 * step, Math.max(best, BORNE)));
  return best;
}

/** How many pixels of the region lie in each place. */
function fillOf(
  { pixels }: Region,
  { n, m }: Grid,
  toBlock: Homography<'photo', 'sheet'>,
  { width }: Edges,
): Int32Array {
  const counts = new Int32Array(n * m);
  const perWidth = 1 / width;
  const place = { x: 0, y: 0 };
  for (let at = pixels.length - 1; at >= 0; at--) {
    const pixel = pixels[at]!;
    const row = ((pixel + 0.5) * perWidth) | 0;
    place.x = pixel - row * width + 0.5;
    place.y = row + 0.5;
    const { x: u, y: v } = applyHomography(toBlock, place);
    if (u >= 0 && v >= 0 && u < 1 && v < 1) counts[Math.floor(v * m) * n + Math.floor(u * n)]!++;
  }
  return counts;
}
