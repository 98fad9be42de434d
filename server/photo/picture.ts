import type { ColourError, Lab, LabImage } from '../colour/lab.ts';
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
  /** A smear of ink: the quad only bounds it, and only what is covered is read. */
  readonly smear?: boolean;
}

/** What the photo told about one sheet lying in it. */
export interface FlatSheet extends Found {
  /** The swatch for pictures: corrected, straightened, at about 150 dots an inch. */
  readonly picture: RgbImage;
  /** The swatch for reading colours and patterns: corrected, smaller, in Lab, nothing clipped. */
  readonly reading: LabImage;
  /** Millimetres that a pixel of `reading` is wide; null when the size of the thing is not known. */
  readonly millimetresPerPixel: number | null;
  readonly error: ColourError;
}

export interface WhiteReference {
  readonly kind: 'found' | 'tapped' | 'none';
  readonly corners: Quad<'photo'> | null;
}

/** A scrap that ties photos together: where it lies, and the colour that it has in all of them. */
export interface ChipSeen {
  readonly corners: Quad<'photo'>;
  readonly lab: Lab;
}

export interface ChipsSeen {
  /** 'first' when this photo defines the colours of the chips, 'tied' when it was corrected towards them. */
  readonly tie: 'none' | 'first' | 'tied';
  readonly scraps: readonly ChipSeen[];
}

export interface PhotoReading {
  readonly sheets: readonly FlatSheet[];
  readonly white: WhiteReference;
  readonly chips: ChipsSeen;
  /** Sentences for her: light uneven, no white card, a sheet partly out of the picture ... */
  readonly notes: readonly string[];
}

/** Four corners, or one place that she touched. */
export type Spot = Quad<'photo'> | PhotoPoint;

/** What she showed in the photo. */
export interface Tap {
  readonly white?: Spot;
  readonly corners?: readonly Quad<'photo'>[];
  readonly chips?: readonly Spot[];
}

/** A photo opened: small for finding sheets, large for cutting their swatches. */
export interface OpenedPixels {
  readonly preview: Picture;
  readonly full: Picture;
  /** Pixels of the photo as the camera made it for each pixel of the preview, a whole number. */
  readonly scale: number;
  /** The same for each pixel of `full`; 1 unless the photo is so large that it was halved. */
  readonly fullScale?: number;
  /** The file names the camera that developed it, or carries its profile: tones and colours are to its taste. */
  readonly developed?: boolean;
}

/** What to look for in a photo, and what she already showed. */
export interface PhotoAsk {
  /** Sheets of patterned paper, or cardstock squares and ink smears on white card. */
  readonly look: 'sheets' | 'squares';
  /** The size of a sheet when it is known. */
  readonly sheetMillimetres: { readonly width: number; readonly height: number } | null;
  readonly tap?: Tap;
  /** The colours that the chips have in the pad's other photos; none while no photo has defined them. */
  readonly chipColours?: readonly Lab[];
}
