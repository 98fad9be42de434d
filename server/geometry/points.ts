/**
 * Points carry the space they live in as a type, so that a point on the photo (pixels of the upright
 * photo, x right, y down) is never taken for a point on the sheet or card (millimetres from the
 * upper left corner, x right, y down).
 */
export interface Point<Space extends string> {
  readonly x: number;
  readonly y: number;
  /** Never set: only the type differs. */
  readonly space?: Space;
}

export type PhotoPoint = Point<'photo'>;
export type CardPoint = Point<'card'>;

/** Four corners, clockwise as seen, from the upper left of the thing. */
export type Quad<Space extends string> = readonly [
  Point<Space>,
  Point<Space>,
  Point<Space>,
  Point<Space>,
];

/** A simple polygon, clockwise as seen (y down), the last point not repeated. */
export type Polygon<Space extends string> = readonly Point<Space>[];
