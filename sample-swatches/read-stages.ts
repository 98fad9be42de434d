import { hexFromLab } from '../server/colour/spaces.ts';
import { difference } from '../server/colour/difference.ts';
import { flatPixels } from '../server/colour/flat-pixels.ts';
import type { Lab, LabImage } from '../server/colour/lab.ts';
import type { Labels } from '../server/colour/label-pixels.ts';
import { nameOf } from '../server/colour/names.ts';
import { readColours } from '../server/colour/read-palette.ts';
import type { Quad } from '../server/geometry/points.ts';
import { openPhoto } from '../server/images/open-photo.ts';
import { findThings } from '../server/photo/find-things.ts';
import { scaledQuad } from '../server/photo/find-sheets.ts';
import { lightOnTable } from '../server/photo/light.ts';
import type { LightField } from '../server/photo/light.ts';
import type { Picture, RgbImage } from '../server/photo/picture.ts';
import { flattenThings } from '../server/photo/read-photo.ts';
import { straighten } from '../server/photo/straighten.ts';

/** What reading one photo, and one sheet in it, comes to on the way. Places are in pixels of the preview. */
export interface Stages {
  readonly preview: Picture;
  readonly sheets: readonly Quad<'photo'>[];
  readonly white: Quad<'photo'> | null;
  /** Which pixels of the preview are bare table: the light is read from them and from what is plain on the sheets. */
  readonly table: Uint8Array;
  readonly field: LightField;
  /** The sheet laid flat, as the photo shows it and with the light evened. */
  readonly before: RgbImage;
  readonly after: RgbImage;
  readonly reading: LabImage;
  /** One byte a pixel of `reading`: 1 inside a printed shape, 0 on a soft border. */
  readonly flat: Uint8Array;
  readonly labels: Labels;
  readonly colours: readonly StageColour[];
}

/** A colour of the palette beside the nearest that was printed. */
export interface StageColour {
  readonly lab: Lab;
  readonly hex: string;
  readonly name: string;
  readonly role: string;
  readonly share: number;
  /** The error that is stated, and the one that was made, in CIEDE2000. */
  readonly stated: number;
  readonly made: number;
  readonly trueHex: string;
}

/**
 * Reads a sample photo step by step and keeps what each step gives.
 *
 * Takes       the photo's bytes, the size of its sheets, which sheet to follow (in reading order) and the
 *             colours that are printed on it.
 */
export async function readStages(
  bytes: Uint8Array,
  sheetMillimetres: number,
  follow: number,
  printed: readonly Lab[],
): Promise<Stages> {
  const photo = await openPhoto(bytes);
  const size = { width: sheetMillimetres, height: sheetMillimetres };
  const ask = { look: 'sheets', sheetMillimetres: size } as const;
  const found = findThings(photo, ask);
  const read = flattenThings(photo, ask, found);
  const sheet = read.sheets[follow]!;
  const onPreview = (quad: Quad<'photo'>): Quad<'photo'> => scaledQuad(quad, 1 / photo.scale);
  const white = read.white.corners === null ? null : onPreview(read.white.corners);
  const sheets = read.sheets.map(({ corners }) => onPreview(corners));
  const { palette, labels } = readColours(sheet.reading, sheet.error, SEED);
  return {
    preview: photo.preview,
    sheets,
    white,
    table: found.reached,
    field: lightOnTable(photo.preview, found.reached, white, {
      corners: sheets,
      known: lightOnTable(photo.preview, found.reached),
    }),
    before: straighten(
      photo.full,
      scaledQuad(sheet.corners, 1 / (photo.fullScale ?? 1)),
      sheet.picture,
    ),
    after: sheet.picture,
    reading: sheet.reading,
    flat: flatPixels(sheet.reading, sheet.error.noise),
    labels,
    colours: palette.colours.map(({ lab, role, share, uncertainty }) => {
      const [nearest] = [...printed].sort((p, q) => difference(lab, p) - difference(lab, q));
      return {
        lab,
        hex: hexFromLab(lab),
        name: nameOf(lab).words,
        role,
        share,
        stated: uncertainty,
        made: difference(lab, nearest!),
        trueHex: hexFromLab(nearest!),
      };
    }),
  };
}

const SEED = 1;
