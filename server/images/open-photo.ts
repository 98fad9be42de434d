import type { OpenedPixels, Picture } from '../photo/picture.ts';
import { decodeHeic } from './heic.ts';
import type { PhotoFormat } from './kind-of-file.ts';
import { kindOfFile, notAPhoto, text } from './kind-of-file.ts';
import { holdFileLimit, holdSizeLimits } from './limits.ts';
import type { Raw } from './orient.ts';
import { upright } from './orient.ts';
import { primariesOf } from './profile.ts';
import { sharp } from './sharp.ts';
import { shrink } from './shrink.ts';
import { sizeOfFile } from './size-of-file.ts';

export interface OpenedPhoto extends OpenedPixels {
  readonly format: PhotoFormat;
  /** Pixels of the upright photo as the camera made it; corners are told in these. */
  readonly width: number;
  readonly height: number;
}

/**
 * Opens a photo as a phone or scanner made it.
 *
 * Takes       the bytes of a JPEG (any orientation, gray, CMYK), PNG (also 16-bit), WebP, AVIF or HEIC.
 * Gives       the upright pixels, large for cutting swatches and small for finding sheets. Pixels in
 *             Display P3 stay as they are and say so; those in other profiles are converted to sRGB.
 *             Photos over 24 megapixels come at half their size in `full`.
 * Refuses     other files, damaged ones ('not-a-photo') and those beyond the limits ('too-large'),
 *             by their first bytes and before a decoder has seen them where the header tells.
 */
export async function openPhoto(bytes: Uint8Array): Promise<OpenedPhoto> {
  holdFileLimit(bytes);
  const format = kindOfFile(bytes);
  const size = sizeOfFile(bytes, format);
  if (size === null) throw damaged(format);
  holdSizeLimits(size);
  const { raw, primaries, developed } =
    format === 'heic'
      ? { ...decodeHeic(bytes), developed: true }
      : await decodeWithSharp(bytes, format);
  const { width, height } = raw;
  // What came may differ from what the header stated.
  holdSizeLimits({ width, height, bytesPerPixel: 3 });
  const fullScale = width * height > PLENTY ? 2 : 1;
  const full = shrink(raw, fullScale);
  const by = Math.max(1, Math.round(Math.max(full.width, full.height) / PREVIEW));
  return {
    format,
    width,
    height,
    full: { ...full, primaries },
    preview: { ...shrink(full, by), primaries },
    scale: by * fullScale,
    fullScale,
    developed,
  };
}

const PREVIEW = 1008;
const PLENTY = 24e6;

interface Decoded {
  readonly raw: Raw;
  readonly primaries: Picture['primaries'];
  readonly developed: boolean;
}

async function decodeWithSharp(bytes: Uint8Array, format: PhotoFormat): Promise<Decoded> {
  try {
    return await decodeStrictly(bytes, 'warning');
  } catch (error) {
    if (!isHarmless(error)) throw damaged(format);
  }
  try {
    return await decodeStrictly(bytes, 'error');
  } catch {
    throw damaged(format);
  }
}

/** Oddities that some phones write into every JPEG and that spoil no pixel. */
function isHarmless(error: unknown): boolean {
  return /Invalid SOS parameters|extraneous bytes before marker/.test(String(error));
}

async function decodeStrictly(bytes: Uint8Array, failOn: 'warning' | 'error'): Promise<Decoded> {
  const options = { failOn, limitInputPixels: 64e6, pages: 1 } as const;
  const { icc, exif, space, orientation = 1 } = await sharp(bytes, options).metadata();
  const coloured = space === 'srgb' || space === 'rgb16' || space === 'rgb';
  const known = coloured ? (icc === undefined ? 'srgb' : primariesOf(icc)) : null;
  // Our own loops convert what they know; sharp would cut off saturated colours on the way.
  const { data, info } = await sharp(bytes, { ...options, ignoreIcc: known !== null })
    .flatten({ background: '#ffffff' })
    .toColourspace('srgb')
    .raw({ depth: 'uchar' })
    .toBuffer({ resolveWithObject: true });
  const rgb = new Uint8Array(data.buffer, data.byteOffset, data.byteLength);
  const three = info.channels === 1 ? spread(rgb) : rgb;
  const raw = upright({ width: info.width, height: info.height, rgb: three }, orientation);
  return { raw, primaries: known ?? 'srgb', developed: coloured && isDeveloped(icc, exif) };
}

/** Cameras write who they are (Exif 2.32, tag Make, 0x010f) or the profile they developed to; scans and drawings seldom do. */
function isDeveloped(icc: Uint8Array | undefined, exif: Uint8Array | undefined): boolean {
  return icc !== undefined || (exif !== undefined && holdsMake(exif));
}

/** Looks through the first directory of the Exif block (TIFF 6.0, section 2). */
function holdsMake(exif: Uint8Array): boolean {
  const start = text(exif, 0, 6) === 'Exif\0\0' ? 6 : 0;
  const view = new DataView(exif.buffer, exif.byteOffset + start, exif.byteLength - start);
  const little = text(exif, start, start + 2) === 'II';
  if (view.byteLength < 10) return false;
  const first = view.getUint32(4, little);
  if (first + 2 > view.byteLength) return false;
  const entries = view.getUint16(first, little);
  for (let at = first + 2; at + 12 <= Math.min(view.byteLength, first + 2 + 12 * entries); at += 12)
    if (view.getUint16(at, little) === 0x010f) return true;
  return false;
}

function spread(gray: Uint8Array): Uint8Array {
  const rgb = new Uint8Array(3 * gray.length);
  for (let pixel = 0; pixel < gray.length; pixel++)
    rgb.fill(gray[pixel]!, 3 * pixel, 3 * pixel + 3);
  return rgb;
}

function damaged(format: PhotoFormat): Error {
  return notAPhoto(
    `a damaged or cut-off ${format.toUpperCase()} file`,
    'Send the photo again; if it stays broken, open it and save it anew as JPEG.',
  );
}
