import type { Lab } from '../../server/colour/lab.ts';
import type { PaperSide } from '../paper/paper-side.ts';

export type Difficulty = 'scanner' | 'normal' | 'hard';

export type SurfaceKind = 'white board' | 'grey desk' | 'wood' | 'cutting mat' | 'cloth';

/** Where something lies on the table: its middle in millimetres, turned clockwise in degrees. */
export interface Place {
  readonly x: number;
  readonly y: number;
  readonly turn: number;
  readonly width: number;
  readonly height: number;
}

export type Thing =
  | { readonly kind: 'sheet'; readonly place: Place; readonly side: PaperSide }
  | {
      readonly kind: 'card' | 'square' | 'chip' | 'smear';
      readonly place: Place;
      readonly name: string;
      readonly lab: Lab;
      readonly seed: number;
    };

export interface Camera {
  /** Degrees by which the camera leans forward, sideways, and is turned. */
  readonly lean: number;
  readonly sway: number;
  readonly turn: number;
  /** What the picture must hold, in millimetres of the table. */
  readonly view: {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
  };
  /** Distance from the table, in widths of the view. */
  readonly distance: number;
}

export interface Light {
  /** Where the window or lamp stands, in millimetres; far away is even. */
  readonly from: { readonly x: number; readonly y: number; readonly z: number };
  /** Red, green and blue of the light after the camera's white balance. */
  readonly colour: readonly [number, number, number];
  /** A second light of another colour from another place, as a part of all light. */
  readonly second: {
    readonly from: { readonly x: number; readonly y: number; readonly z: number };
    readonly colour: readonly [number, number, number];
    readonly part: number;
  };
  /** Linear value of a perfect white in the middle of the picture, less if it would burn out elsewhere. */
  readonly exposure: number;
  /** A broad soft shadow: a line across the table, how wide its edge is, how dark it is. */
  readonly shadow: {
    readonly x: number;
    readonly y: number;
    readonly towards: number;
    readonly edge: number;
    readonly depth: number;
  };
  /** How much the corners of the picture darken. */
  readonly vignette: number;
}

export interface Scene {
  readonly seed: number;
  readonly difficulty: Difficulty;
  readonly width: number;
  readonly height: number;
  readonly surface: SurfaceKind;
  readonly things: readonly Thing[];
  readonly camera: Camera;
  readonly light: Light;
  /** How often a small blur is laid over the picture. */
  readonly blur: number;
  readonly noise: { readonly read: number; readonly shot: number };
  /** How strongly the camera bends the tones, 0 not at all. */
  readonly toneCurve: number;
  /** How much a sheet lifts from the table: its shading, as a part. */
  readonly lift: number;
  readonly quality: number;
}
