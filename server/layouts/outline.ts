import type { CardPoint, Polygon } from '../geometry/points.ts';
import { MILLIMETRE } from '../lengths/length.ts';
import type { Box, Layer, Shape } from './layout.ts';

/** Corners that stand for a quarter of a circle: its area comes out 0.16 % too small. */
const QUARTER_STEPS = 16;

/** The outline of a layer on the card front, in millimetres from the front's upper left corner, clockwise. */
export function outline(layer: Layer): Polygon<'card'> {
  const { x, y } = layer.box;
  return shapeCorners(layer.shape, layer.box).map((corner) => ({
    x: (x + corner.x) / MILLIMETRE,
    y: (y + corner.y) / MILLIMETRE,
  }));
}

/** The corners of a shape inside its box, in 1/320 mm from the box's upper left corner, clockwise. */
export function shapeCorners(
  shape: Shape,
  { width, height }: Pick<Box, 'width' | 'height'>,
): CardPoint[] {
  switch (shape.kind) {
    case 'rectangle':
      return arcs(width, height, 0, 0);
    case 'rounded':
      return arcs(width, height, shape.radius, shape.radius);
    case 'circle':
      return arcs(width, height, width / 2, height / 2);
    case 'banner':
      return [
        { x: 0, y: 0 },
        { x: width, y: 0 },
        { x: width - shape.notch, y: height / 2 },
        { x: width, y: height },
        { x: 0, y: height },
      ];
    case 'corners':
      return shape.points.map(({ x, y }) => ({ x, y }));
  }
}

/** A box whose four corners are quarters of an ellipse with radii rx and ry; sharp when both are 0. */
function arcs(width: number, height: number, rx: number, ry: number): CardPoint[] {
  const centres: readonly (readonly [number, number, number])[] = [
    [rx, ry, 2],
    [width - rx, ry, 3],
    [width - rx, height - ry, 0],
    [rx, height - ry, 1],
  ];
  if (rx === 0) return centres.map(([x, y]) => ({ x, y }));
  const corners = centres.flatMap(([x, y, quarter]) =>
    Array.from({ length: QUARTER_STEPS + 1 }, (_, step) => {
      const angle = ((quarter + step / QUARTER_STEPS) * Math.PI) / 2;
      return { x: Math.round(x + rx * Math.cos(angle)), y: Math.round(y + ry * Math.sin(angle)) };
    }),
  );
  return corners.filter((corner, index) => {
    const last = corners.at(index - 1)!;
    return corner.x !== last.x || corner.y !== last.y;
  });
}
