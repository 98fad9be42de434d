import type { PhotoPoint, Point, Quad } from '../../server/geometry/points.ts';
import { homographyOf } from '../../server/geometry/homography.ts';
import type { Homography } from '../../server/geometry/homography.ts';
import type { Camera, Place } from './scene.ts';

type TablePoint = Point<'table'>;

/**
 * How the table is seen in the picture: a pinhole camera that leans, sways and turns, and whose picture just
 * holds the view.
 */
export function viewOf(
  camera: Camera,
  width: number,
  height: number,
): Homography<'table', 'photo'> {
  const { x, y, width: across, height: down } = camera.view;
  const corners = rectangle(x, y, across, down);
  const seen = corners.map((corner) => projected(camera, corner));
  const [left, right] = [Math.min(...seen.map((p) => p.x)), Math.max(...seen.map((p) => p.x))];
  const [top, bottom] = [Math.min(...seen.map((p) => p.y)), Math.max(...seen.map((p) => p.y))];
  const scale = Math.min(width / (right - left), height / (bottom - top));
  const inPhoto = seen.map((p) => ({
    x: width / 2 + scale * (p.x - (left + right) / 2),
    y: height / 2 + scale * (p.y - (top + bottom) / 2),
  })) as unknown as Quad<'photo'>;
  return homographyOf(corners, inPhoto);
}

function projected({ lean, sway, turn, view, distance }: Camera, point: TablePoint): PhotoPoint {
  const [a, b, c] = [radians(lean), radians(sway), radians(turn)];
  const x = point.x - view.x - view.width / 2;
  const y = point.y - view.y - view.height / 2;
  const u = x * Math.cos(c) - y * Math.sin(c);
  const v = x * Math.sin(c) + y * Math.cos(c);
  const depth = distance * view.width - v * Math.sin(a) - u * Math.sin(b);
  return { x: (u * Math.cos(b)) / depth, y: (v * Math.cos(a)) / depth };
}

/** Corners of a thing on the table, clockwise from its own top left. */
export function cornersOf({ x, y, turn, width, height }: Place): Quad<'table'> {
  const [cos, sin] = [Math.cos(radians(turn)), Math.sin(radians(turn))];
  return rectangle(-width / 2, -height / 2, width, height).map((corner) => ({
    x: x + corner.x * cos - corner.y * sin,
    y: y + corner.x * sin + corner.y * cos,
  })) as unknown as Quad<'table'>;
}

/** Whether two things leave so much room between them: one has an edge that all of the other lies beyond. */
export function areApart(a: Place, b: Place, room: number): boolean {
  return liesBeyond(a, b, room) || liesBeyond(b, a, room);
}

function liesBeyond(one: Place, other: Place, room: number): boolean {
  const [cos, sin] = [Math.cos(radians(one.turn)), Math.sin(radians(one.turn))];
  const seen = cornersOf(other).map((p) => {
    const [x, y] = [p.x - one.x, p.y - one.y];
    return { x: x * cos + y * sin, y: y * cos - x * sin };
  });
  const [w, h] = [one.width / 2 + room, one.height / 2 + room];
  return (
    seen.every(({ x }) => x >= w) ||
    seen.every(({ x }) => x <= -w) ||
    seen.every(({ y }) => y >= h) ||
    seen.every(({ y }) => y <= -h)
  );
}

function rectangle(x: number, y: number, width: number, height: number): Quad<'table'> {
  return [
    { x, y },
    { x: x + width, y },
    { x: x + width, y: y + height },
    { x, y: y + height },
  ];
}

function radians(degrees: number): number {
  return (degrees * Math.PI) / 180;
}
