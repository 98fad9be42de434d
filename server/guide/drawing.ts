import type { Polygon } from '../geometry/points.ts';

/**
 * The few kinds of marks that a drawing is made of, in millimetres, x right and y down. The screen
 * (SVG) and the printed guide (PDF) draw the very same marks.
 */
export type Mark = Words | Line | Stroke | Area | Picture | Group;

export interface Words {
  readonly kind: 'words';
  readonly x: number;
  /** Of the line that the letters stand on. */
  readonly y: number;
  readonly text: string;
  /** Height of the font in mm: 4.2 is 12 point. */
  readonly size: number;
  readonly bold?: boolean;
  readonly align?: 'left' | 'middle' | 'right';
  readonly colour?: string;
}

export interface Line {
  readonly kind: 'line';
  readonly from: Spot;
  readonly to: Spot;
  readonly width: number;
  readonly colour?: string;
  /** Lengths of dashes and gaps in mm. */
  readonly dashes?: readonly number[];
}

/** A pen's way from spot to spot, with round ends and corners. */
export interface Stroke {
  readonly kind: 'stroke';
  readonly spots: readonly Spot[];
  readonly width: number;
  readonly colour: string;
  /** In [0, 1], of the whole stroke, also where it crosses itself; 1 when left out. */
  readonly opacity?: number;
}

export interface Area {
  readonly kind: 'area';
  readonly corners: Outline;
  readonly fill?: string;
  /** In [0, 1], of fill and edge; 1 when left out. */
  readonly opacity?: number;
  readonly edge?: { readonly width: number; readonly colour: string };
}

export interface Picture {
  readonly kind: 'picture';
  /** Address of the picture, or its key where pictures are handed over apart. */
  readonly href: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Marks moved, then turned and enlarged around the place they were moved to; clipped in their own measure. */
export interface Group {
  readonly kind: 'group';
  readonly x: number;
  readonly y: number;
  /** Degrees, clockwise as seen. */
  readonly turned?: number;
  readonly scale?: number;
  readonly clip?: Outline;
  readonly marks: readonly Mark[];
}

export interface Spot {
  readonly x: number;
  readonly y: number;
}

export type Outline = Polygon<string>;

export interface Extent {
  readonly width: number;
  readonly height: number;
}

/** An upright rectangle as an outline. */
export function rectangle(x: number, y: number, width: number, height: number): Outline {
  return [
    { x, y },
    { x: x + width, y },
    { x: x + width, y: y + height },
    { x, y: y + height },
  ];
}

/** A disc as an outline of 32 corners. */
export function disc(x: number, y: number, radius: number): Outline {
  return Array.from({ length: 32 }, (_, step) => ({
    x: x + radius * Math.cos((step * Math.PI) / 16),
    y: y + radius * Math.sin((step * Math.PI) / 16),
  }));
}

/** An outline moved. */
export function moved(outline: Outline, dx: number, dy: number): Outline {
  return outline.map(({ x, y }) => ({ x: x + dx, y: y + dy }));
}

/** The addresses of all pictures in a drawing, each once. */
export function picturesIn(marks: readonly Mark[]): string[] {
  const all = marks.flatMap((mark): string[] => {
    if (mark.kind === 'picture') return [mark.href];
    return mark.kind === 'group' ? picturesIn(mark.marks) : [];
  });
  return [...new Set(all)];
}
