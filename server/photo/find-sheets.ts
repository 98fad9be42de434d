import { polygonArea } from '../geometry/polygon.ts';
import type { PhotoPoint, Quad } from '../geometry/points.ts';
import { isConvex, sidesOf } from '../geometry/quad.ts';
import type { OpenedPixels, PhotoAsk } from './picture.ts';
import { quadOf } from './region-quad.ts';
import { regionsOf } from './regions.ts';
import type { Mask, Region } from './regions.ts';
import { filledWithoutThin, withoutThin } from './spread.ts';
import { smoothLab } from './smooth-lab.ts';
import type { LabImage } from '../colour/lab.ts';
import { findTable } from './table.ts';
import type { Table } from './table.ts';
import { tableInShadow } from './table-in-shadow.ts';
import { turnOfRows, turned } from './turn-of-rows.ts';

/** Something four-cornered lying on the table, in pixels of the preview. */
export interface Candidate {
  readonly corners: Quad<'photo'>;
  /** How well its region fills the quad. */
  readonly fill: number;
  readonly area: number;
  /** Told by its motifs alone, its ground looking like the table: its sides lie a little further out. */
  readonly byMotifs?: boolean;
  /** The outline of motifs that lie far apart: its sides may lie a good part of a repeat further out. */
  readonly loose?: boolean;
}

/** All that was seen on the preview, for the steps that follow. */
export interface Overview {
  readonly image: LabImage;
  readonly table: Table;
  readonly candidates: readonly Candidate[];
  /** Regions that have no clear four corners or reach out of the picture. */
  readonly unclear: readonly Region[];
  /** Looser ones: what fills a quad once the ground between motifs is filled. */
  readonly motifs: readonly Candidate[];
  /** All regions that lie whole in the picture, largest first: some may be several sheets grown together. */
  readonly blocks: readonly Region[];
  /** Regions that end at the rim of the picture. */
  readonly cutOff: readonly Region[];
  /** All that is no table, thin things left out. */
  readonly things: Mask;
}

/** Looks the preview over: the table, and what lies on it. */
export function overlook(photo: OpenedPixels): Overview {
  const image = smoothLab(photo.preview);
  return lyingOn(findTable(image), image);
}

/**
 * The same with the table on both sides of a shadow's edge; null where that shows no more table, and where all that
 * lies there was told as whole things without it.
 */
export function overlookShadow({ image, table, cutOff, unclear }: Overview): Overview | null {
  if (cutOff.length + unclear.length === 0) return null;
  const lit = tableInShadow(image, table);
  return lit === null ? null : lyingOn(lit, image);
}

/** What lies on a table, parted by whether it is whole, unclear, or ends at the rim of the picture. */
function lyingOn(table: Table, image: LabImage): Overview {
  const { width, height } = image;
  const things = withoutThin(
    { width, height, of: notOf(table.reached) },
    Math.max(1, Math.round(Math.max(width, height) / 500)),
  );
  const regions = regionsOf(things, LEAST_PART * width * height);
  const candidates: Candidate[] = [];
  const unclear: Region[] = [];
  const cutOff: Region[] = [];
  for (const region of regions) {
    if (endsAtRim(region, image)) {
      cutOff.push(region);
      continue;
    }
    const quad = quadOf(region, width);
    if (quad === null || quad.fill < WHOLE || !isConvex(quad.corners)) unclear.push(region);
    else candidates.push({ ...quad, area: polygonArea(quad.corners) });
  }
  const blocks = regions.filter((region) => !cutOff.includes(region));
  const motifs = unclear.length === 0 ? [] : motifsIn(things);
  return { image, table, candidates, unclear, motifs, blocks, cutOff, things };
}

/** Motifs on a ground that looks like the table stand in it like islands; together they fill a quad. */
function motifsIn(things: Mask): Candidate[] {
  const { width, height } = things;
  const found = [1 / 170, 1 / 110, 1 / 85].flatMap((part) => {
    const by = Math.round(part * Math.max(width, height));
    const filled = filledWithoutThin(things, by);
    return regionsOf(filled, 4 * LEAST_PART * width * height).flatMap((region): Candidate[] => {
      if (endsAtRim(region, things)) return [];
      const quad = quadOf(region, width);
      if (quad === null || quad.fill < MOTIFS || !isConvex(quad.corners)) return [];
      return [{ ...quad, area: polygonArea(quad.corners), byMotifs: true }];
    });
  });
  return found.sort((p, q) => q.fill - p.fill);
}

/** Part of its quad that motifs fill with what lies between them. */
const MOTIFS = 0.86;

function notOf(mask: Uint8Array): Uint8Array {
  const out = new Uint8Array(mask.length);
  for (let pixel = 0; pixel < out.length; pixel++) out[pixel] = 1 - mask[pixel]!;
  return out;
}

/** Less than this part of the picture is no sheet, square or card. */
const LEAST_PART = 0.0015;
/** A region that fills less of its quad is several things, or part of one. */
const WHOLE = 0.92;

export function endsAtRim(
  { left, top, right, bottom }: Region,
  { width, height }: Pick<Mask, 'width' | 'height'>,
): boolean {
  return left <= 2 || top <= 2 || right >= width - 3 || bottom >= height - 3;
}

/** Longer over shorter side of a quad, by the means of opposite sides. */
export function aspectOf(quad: Quad<'photo'>): number {
  const [upper, right, lower, left] = sidesOf(quad);
  const across = upper + lower;
  const down = left + right;
  return Math.max(across / down, down / across);
}

/** Whether a quad can be a sheet of the known size, seen a little aslant. */
export function isLikeSheet(
  quad: Quad<'photo'>,
  size: PhotoAsk['sheetMillimetres'],
  tolerance = 0.16,
): boolean {
  if (size === null) return aspectOf(quad) < 2.2;
  const aspect = Math.max(size.width / size.height, size.height / size.width);
  return Math.abs(Math.log(aspectOf(quad) / aspect)) < tolerance;
}

/** Sheets in rows from top to bottom, each row from left to right; rows may run aslant. */
export function byReading<T extends { readonly corners: Quad<'photo'> }>(
  things: readonly T[],
): T[] {
  const turn = turnOfRows(things.map(({ corners }) => middleOf(corners)));
  const rest = things
    .map((thing) => ({
      thing,
      half: 0.5 * Math.sqrt(polygonArea(thing.corners)),
      ...turned(middleOf(thing.corners), -turn),
    }))
    .sort((p, q) => p.y - q.y);
  const ordered: T[] = [];
  while (rest.length > 0) {
    const row = rest.splice(0, 1);
    const { half, y: top } = row[0]!;
    // What is next to the row goes on it, so that a row may bend a little, as it does in a picture taken aslant.
    for (let next = 0; next >= 0;) {
      next = rest.findIndex((one) => {
        const beside = row.reduce((p, q) =>
          Math.abs(q.x - one.x) < Math.abs(p.x - one.x) ? q : p,
        );
        return Math.abs(one.y - beside.y) < half && one.y - top < 2 * half;
      });
      if (next >= 0) row.push(...rest.splice(next, 1));
    }
    row.sort((p, q) => p.x - q.x);
    ordered.push(...row.map(({ thing }) => thing));
  }
  return ordered;
}

export function middleOf(quad: Quad<'photo'>): PhotoPoint {
  return {
    x: quad.reduce((sum, p) => sum + p.x, 0) / 4,
    y: quad.reduce((sum, p) => sum + p.y, 0) / 4,
  };
}

export function scaledQuad(quad: Quad<'photo'>, by: number): Quad<'photo'> {
  return quad.map(({ x, y }) => ({ x: x * by, y: y * by })) as unknown as Quad<'photo'>;
}
