/** A colour in CIELAB under D65, 2 degree observer: l in [0, 100], a and b without unit. */
export interface Lab {
  readonly l: number;
  readonly a: number;
  readonly b: number;
}

/** A colour with the name that the pad gives it in which it was read (padNames). */
export interface CalledLab extends Lab {
  readonly called: string;
}

/**
 * A flat picture in CIELAB (D65): `lab` holds l, a, b for each pixel, row by row.
 * Colours outside sRGB are kept, not clipped.
 */
export interface LabImage {
  readonly width: number;
  readonly height: number;
  readonly lab: Float32Array;
}

/**
 * How far off the colours of one picture may be, as standard errors (one sigma) in CIELAB units.
 * `noise` is that of a single pixel; `field` and `reference` shift whole areas at once and so do not
 * shrink when more pixels are averaged.
 */
export interface ColourError {
  readonly noise: number;
  readonly field: number;
  readonly reference: number;
  /** By which part red and blue light may each be off against green, as a logarithm. Nothing when not said. */
  readonly tint?: number;
  /** The part of what white papers differ by in hue that is still open, in [0, 1]; all of it when not said. */
  readonly hueOpen?: number;
  /**
   * Set when a camera developed the picture to its own taste (a tone curve, livelier colours): what white looks
   * like in it. The further a colour is from that white, the less the white tells of it. `part` of that taste is left
   * when some of it was undone; all of it when that is not said.
   */
  readonly camera?: { readonly white: Lab; readonly part?: number };
}
