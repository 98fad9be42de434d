import { shapeCorners } from '../layouts/outline.ts';
import type { Shape } from '../layouts/layout.ts';
import { units } from '../lengths/length.ts';
import type { Length, Size } from '../lengths/length.ts';
import type { Slot } from './piece.ts';

export type Corner = 'upper left' | 'upper right' | 'lower right' | 'lower left';
export type Side = 'upper' | 'right' | 'lower' | 'left';

/** A pencil mark on an edge of a piece: so far from a corner along an edge; 0 is the corner itself. */
export interface Mark {
  readonly corner: Corner;
  readonly edge: Side;
  readonly distance: Length;
}

/** What is done to a piece after the trimmer; corners are named as the piece lies on the card. */
export type FinishingStep =
  | {
      readonly kind: 'slant';
      readonly number: number;
      readonly piece: string;
      /** The other triangle, when the cut parts two of one rectangle; marks are named by the first. */
      readonly twin?: string;
      readonly from: Mark;
      readonly to: Mark;
    }
  | {
      readonly kind: 'finish';
      readonly number: number;
      readonly piece: string;
      readonly shape: Exclude<Shape, { kind: 'rectangle' | 'corners' }>;
    };

/** The slants and finishes of a sheet's pieces, numbered on from the trimmer's cuts. */
export function finishingSteps(slot: Slot, done: number): FinishingStep[] {
  let number = done;
  const parted = new Set<string>();
  return slot.pieces.flatMap(({ piece, pair }): FinishingStep[] => {
    const { shape, size, id } = piece;
    if (shape.kind === 'rectangle' || parted.has(id)) return [];
    if (pair !== undefined) parted.add(pair.with);
    if (shape.kind !== 'corners') return [{ kind: 'finish', number: ++number, piece: id, shape }];
    return slants(shape, size).map(([from, to]) => ({
      kind: 'slant',
      number: ++number,
      piece: id,
      ...(pair === undefined ? {} : { twin: pair.with }),
      from,
      to,
    }));
  });
}

/** The edges of a shape that do not lie on its rectangle, each by two marks. */
export function slants(shape: Shape, size: Size): [Mark, Mark][] {
  const corners = shapeCorners(shape, size);
  return corners.flatMap((from, index): [Mark, Mark][] => {
    const to = corners[(index + 1) % corners.length]!;
    const along =
      (from.x === to.x && (from.x === 0 || from.x === size.width)) ||
      (from.y === to.y && (from.y === 0 || from.y === size.height));
    return along ? [] : [[markAt(from, size), markAt(to, size)]];
  });
}

/** Measured from the nearer corner of the edge that the point lies on. */
function markAt({ x, y }: { x: number; y: number }, { width, height }: Size): Mark {
  const upper = y * 2 <= height ? 'upper' : 'lower';
  const left = x * 2 <= width ? 'left' : 'right';
  if (x === 0 || x === width)
    return {
      corner: `${upper} ${left}`,
      edge: left,
      distance: units(upper === 'upper' ? y : height - y),
    };
  return {
    corner: `${upper} ${left}`,
    edge: upper,
    distance: units(left === 'left' ? x : width - x),
  };
}
