import type { ColourError, LabImage } from '../colour/lab.ts';
import type { PhotoPoint, Quad } from '../geometry/points.ts';

/**
 * A decoded photo: upright (orientation applied), three channels, row by row.
 * Values are encoded with the sRGB transfer curve in the named primaries, 0..255.
 */
export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly rgb: Uint8Array;
  readonly primaries: 'srgb' | 'display-p3';
}

/** A flat picture ready to be shown: sRGB, 3 bytes a pixel, row by row. */
export interface RgbImage {
  readonly width: number;
  readonly height: number;
  readonly rgb: Uint8Array;
}

/** One sheet (or cardstock square, or smear) found in a photo. Corners in pixels of the full upright photo. */
export interface Found {
  readonly corners: Quad<'photo'>;
  /** How sure, in [0, 1]; below 0.5 she is asked to drag the corners. */
  readonly confidence: number;
  readonly notes: readonly string[];
}

/** What the photo told about one sheet lying in it. */
export interface FlatSheet extends Found {
  /** The swatch for pictures: corrected, straightened, at about 150 dots an inch. */
  readonly picture: RgbImage;
  /** The swatch for reading colours and patterns: corrected, smaller, in Lab, nothing clipped. */
  readonly reading: LabImage;
  readonly error: ColourError;
}

export interface WhiteReference {
  readonly kind: 'found' | 'tapped' | 'none';
  readonly corners: Quad<'photo'> | null;
}

export interface PhotoReading {
  readonly sheets: readonly FlatSheet[];
  readonly white: WhiteReference;
  /** Sentences for her: light uneven, no white card, a sheet partly out of the picture ... */
  readonly notes: readonly string[];
}

export interface Tap {
  readonly white?: Quad<'photo'>;
  readonly corners?: readonly Quad<'photo'>[];
  readonly at?: PhotoPoint;
}
