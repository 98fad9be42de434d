import { workRoom } from '../colour/work-room.ts';
import type { Quad } from '../geometry/points.ts';
import { inReadingOrder, sidesOf } from '../geometry/quad.ts';
import { correctedWhite, correctionOf } from './correction.ts';
import { findThings } from './find-things.ts';
import type { FoundThings } from './find-things.ts';
import { pictureOf, readingOf } from './flatten.ts';
import type { LightTie } from './flatten.ts';
import { lightOnTable } from './light.ts';
import type { LightField } from './light.ts';
import { coveredOf } from './covered.ts';
import { noiseOf } from './noise.ts';
import { notesOnLight, notesOnTones, notesOnWhite } from './notes.ts';
import { tiedPhoto } from './chips.ts';
import { patchAround } from './patch-around.ts';
import { lightTie } from './tied.ts';
import type { FlatSheet, Found, OpenedPixels, PhotoAsk, PhotoReading, Spot } from './picture.ts';
import { scaledQuad } from './find-sheets.ts';
import { straightTones } from './straight-tones.ts';
import { straighten } from './straighten.ts';
import { openBeside, referenceOf } from './white-reference.ts';
import type { Reference } from './white-reference.ts';

/**
 * Reads a photo of papers on a table: where they lie, and what each looks like laid flat under even,
 * white light.
 *
 * Takes       the opened photo, what to look for, the size of a sheet if known, and what she showed.
 * Gives       the papers in reading order, corners in pixels of the upright photo as the camera made it.
 * Good up to  a photo is not a measurement: see each sheet's `error`.
 */
export function readPhoto(photo: OpenedPixels, ask: PhotoAsk): PhotoReading {
  const found = findThings(photo, ask);
  return flattenThings(photo, ask, found);
}

/** The second half of readPhoto, for things already found. */
export function flattenThings(
  asTaken: OpenedPixels,
  ask: PhotoAsk,
  found: FoundThings,
): PhotoReading {
  const asLit = lightOnTable(asTaken.preview, found.reached);
  const { photo, bend, left } = straightTones(asTaken, found.papers, asLit);
  const bare = bend === 0 ? asLit : lightOnTable(photo.preview, found.reached);
  const { corners: tapped, notes: lost } = whiteShown(photo, ask.tap?.white);
  const developed = photo.developed ?? false;
  const first = referenceOf(photo.preview, bare, found.others, tapped, found.white, developed);
  // Knowing where white and other papers lie tells more of the light, and the light more of the white.
  const papers = found.things
    .filter(({ confidence, smear }) => confidence >= SURE && smear !== true)
    .map(({ corners }) => scaledQuad(corners, 1 / photo.scale));
  const field = lightOnTable(photo.preview, found.reached, first.corners, {
    corners: papers,
    known: bare,
  });
  const reference = referenceOf(photo.preview, field, found.others, tapped, found.white, developed);
  const shown = ask.tap?.chips?.map((spot) => onPreview(photo, spot));
  const chips = tiedPhoto(
    photo.preview,
    field,
    reference.white,
    found.others.filter(({ corners }) => corners !== reference.corners),
    {
      card: reference.corners,
      shown: shown?.filter((corners) => corners !== null) ?? null,
      known: ask.chipColours ?? [],
    },
  );
  const tie = chips.tie === null ? null : lightTie(chips.tie);
  const sheets = found.things.map((thing) =>
    flattenOne(photo, ask, thing, field, reference, tie, chips.left, left),
  );
  return {
    sheets,
    chips: {
      tie: chips.seen.tie,
      scraps: chips.seen.scraps.map(({ corners, lab }) => ({
        corners: scaledQuad(corners, photo.scale),
        lab,
      })),
    },
    white: {
      kind: reference.kind,
      corners: reference.corners === null ? null : scaledQuad(reference.corners, photo.scale),
    },
    notes: [
      ...found.notes,
      ...notesOnLight(field),
      ...notesOnTones(bend),
      ...lost,
      ...notesOnWhite(reference),
      ...chips.notes,
    ],
  };
}

/** Whose corners are surer than this holds no table, so that what is plain in it is paper. */
const SURE = 0.5;

/** The white that she showed, on the preview; when she touched nothing plain, the card is looked for as ever. */
function whiteShown(
  photo: OpenedPixels,
  spot: Spot | undefined,
): { readonly corners: Quad<'photo'> | null; readonly notes: readonly string[] } {
  if (spot === undefined) return { corners: null, notes: [] };
  const corners = onPreview(photo, spot);
  return corners === null
    ? {
        corners,
        notes: [
          'Where you touched there is nothing plain and white; touch the middle of the white card, or drag its corners.',
        ],
      }
    : { corners, notes: [] };
}

/** Four corners on the preview for what she showed; of a touched place, the plain patch around it. */
function onPreview({ preview, scale }: OpenedPixels, spot: Spot): Quad<'photo'> | null {
  if ('x' in spot)
    return patchAround(preview, { x: spot.x / scale, y: spot.y / scale })?.corners ?? null;
  return scaledQuad(inReadingOrder(spot), 1 / scale);
}

/** Dots an inch of the flat picture, half as many for reading; where the photo holds fewer too: at 120 more thin strokes were missed. */
const DPI = 150;
const INCH = 25.4;
/** Part of a side left out at the rim when colours are read, so that no table comes in. */
const INSET = 0.012;

/** One sheet after the other is laid flat in the same place; what is kept of it is copied from there. */
const room = workRoom((length) => new Uint8Array(length));

function flattenOne(
  photo: OpenedPixels,
  ask: PhotoAsk,
  thing: Found,
  field: LightField,
  reference: Reference,
  tie: LightTie | null,
  tieLeft: number,
  tasteLeft: number,
): FlatSheet {
  const fullScale = photo.fullScale ?? 1;
  const corners = scaledQuad(thing.corners, 1 / fullScale);
  const correct = correctionOf(field, reference.white, fullScale / photo.scale);
  const size = sizeOf(corners, ask.look === 'sheets' ? ask.sheetMillimetres : null);
  const flat = straighten(photo.full, corners, size, room(3 * size.width * size.height));
  const gains = correct(flat.rows, size.width, size.height);
  const picture = pictureOf(flat, gains, tie);
  const rim = Math.ceil(INSET * Math.min(size.width, size.height));
  const reading = readingOf(flat, gains, tie, size.perReading, rim);
  const card = correctedWhite(reference.white);
  const error = {
    noise: noiseOf(reading),
    field: PER_LOG_LIGHT * field.error,
    tint: field.tint,
    ...openBeside(reference, tieLeft),
    ...(photo.developed === true ? { camera: { white: card } } : {}),
    ...(tasteLeft > 0 ? { camera: { white: card, part: tasteLeft } } : {}),
  };
  return {
    ...thing,
    picture,
    reading: thing.smear === true ? coveredOf(reading, card) : reading,
    millimetresPerPixel: size.across === null ? null : (size.across * size.perReading) / size.width,
    error,
  };
}

/** CIELAB units that a paper of middle lightness (66) moves for a change of 1 in the logarithm of light: (66 + 16) / 3. */
const PER_LOG_LIGHT = 27.3;

/** Size of the flat picture, how many of its pixels a side make one for reading, and the width in millimetres. */
interface FlatSize {
  readonly width: number;
  readonly height: number;
  readonly perReading: 1 | 2;
  readonly across: number | null;
}

function sizeOf(corners: Quad<'photo'>, millimetres: PhotoAsk['sheetMillimetres']): FlatSize {
  const [upper, right, lower, left] = sidesOf(corners);
  const across = (upper + lower) / 2;
  const down = (left + right) / 2;
  if (millimetres === null) {
    const by = Math.min(1, SOLID / Math.max(across, down));
    return {
      width: atLeast(across * by),
      height: atLeast(down * by),
      perReading: 1,
      across: null,
    };
  }
  const turned = across > down !== millimetres.width > millimetres.height;
  const oblong = Math.abs(Math.log(millimetres.width / millimetres.height)) > 0.02;
  const { width, height } =
    turned && oblong ? { width: millimetres.height, height: millimetres.width } : millimetres;
  return {
    width: atLeast((width / INCH) * DPI),
    height: atLeast((height / INCH) * DPI),
    perReading: 2,
    across: width,
  };
}

/** Pixels for the longer side of a square of cardstock, whose size in millimetres nobody knows. */
const SOLID = 160;

function atLeast(pixels: number): number {
  return Math.max(8, Math.round(pixels));
}
