import type { Quad } from '../geometry/points.ts';
import { polygonArea } from '../geometry/polygon.ts';
import type { OpenedPixels } from './picture.ts';
import { pickSides } from './pick-sides.ts';
import type { Settled, ToLay } from './settled.ts';
import { edgesBeside } from './side-lines.ts';
import type { Table } from './table.ts';
import { offSize } from './table-metric.ts';
import { tableOutside } from './table-outside.ts';

/**
 * What lays outlines that are good to a pixel or two onto the edges of the sheets in the large picture, and says what
 * bears them out. An outline beside which no four edges make a sheet stays where it was.
 *
 * Takes       the photo, its table, and width over height or its inverse of a sheet (1 and more).
 */
export function layerOf(
  photo: OpenedPixels,
  table: Table,
  aspect: number,
): (one: ToLay) => Settled {
  const perPreview = photo.scale / (photo.fullScale ?? 1);
  return ({ start, reach, metric, misfit, lead }) => {
    const side = Math.sqrt(polygonArea(start));
    const fine = Math.max(2, 0.7 * perPreview, (2 * reach * side) / 24);
    const edges = start.map((from, at) =>
      edgesBeside(photo.full, from, start[(at + 1) % 4]!, fine).map((line) => {
        const outside = tableOutside(photo.full, line, table.colours, perPreview);
        return { ...line, outside, worth: line.borne + TABLE_OUTSIDE * outside };
      }),
    );
    const laid = pickSides(edges, metric, aspect, misfit);
    const quad = laid !== null && isNear(laid.quad, start, 4 * fine) ? laid.quad : null;
    const corners = quad ?? start;
    const off = metric === null ? [0] : offSize(metric, corners, aspect).map(Math.abs);
    return {
      corners,
      borne: quad === null ? [0, 0, 0, 0] : laid!.lines.map(({ borne }) => borne),
      outside: laid?.lines.map(({ outside }) => outside) ?? [0, 0, 0, 0],
      offSize: Math.max(...off),
      lead,
    };
  };
}

/** What counts for an edge is above all that table begins there; the border of a print can be the stronger edge. */
export const TABLE_OUTSIDE = 0.8;

function isNear(quad: Quad<'photo'>, other: Quad<'photo'>, within: number): boolean {
  return quad.every(
    (corner, at) => Math.hypot(corner.x - other[at]!.x, corner.y - other[at]!.y) < within,
  );
}
