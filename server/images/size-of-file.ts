import type { PhotoFormat } from './kind-of-file.ts';
import { text } from './kind-of-file.ts';

/** What a file says of its picture before anything is decoded. */
export interface StatedSize {
  readonly width: number;
  readonly height: number;
  /** Bytes that one decoded pixel will take. */
  readonly bytesPerPixel: number;
}

/**
 * Reads the size that a photo file states, from its own bytes, so that a bomb is refused before a
 * decoder has seen it. Null when the file does not say.
 *
 * Source      JPEG: ITU-T T.81, B.2.2. PNG: ISO/IEC 15948, 11.2.2. WebP: RFC 9649. HEIC and AVIF:
 *             ISO/IEC 23008-12, 6.5.3 (`ispe`; the largest counts).
 */
export function sizeOfFile(bytes: Uint8Array, format: PhotoFormat): StatedSize | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  try {
    return READERS[format](view, bytes);
  } catch (error) {
    // A header that ends in the middle of a number.
    if (error instanceof RangeError) return null;
    throw error;
  }
}

type Reader = (view: DataView, bytes: Uint8Array) => StatedSize | null;

const READERS: Record<PhotoFormat, Reader> = {
  jpeg: sizeOfJpeg,
  png: sizeOfPng,
  webp: sizeOfWebp,
  avif: sizeOfMedia,
  heic: sizeOfMedia,
};

function sizeOfJpeg(view: DataView): StatedSize | null {
  let at = 2;
  while (at + 9 < view.byteLength) {
    if (view.getUint8(at) !== 0xff) {
      at++;
      continue;
    }
    const marker = view.getUint8(at + 1);
    const startsFrame = marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);
    if (startsFrame)
      return {
        height: view.getUint16(at + 5),
        width: view.getUint16(at + 7),
        bytesPerPixel: view.getUint8(at + 9),
      };
    const bare =
      marker === 0xff || marker === 0 || marker === 1 || (marker >= 0xd0 && marker <= 0xd8);
    at += bare ? (marker === 0xff ? 1 : 2) : 2 + view.getUint16(at + 2);
  }
  return null;
}

const PNG_CHANNELS: Record<number, number> = { 0: 1, 2: 3, 3: 4, 4: 2, 6: 4 };

function sizeOfPng(view: DataView, bytes: Uint8Array): StatedSize | null {
  if (text(bytes, 12, 16) !== 'IHDR') return null;
  const deep = view.getUint8(24) === 16 ? 2 : 1;
  return {
    width: view.getUint32(16),
    height: view.getUint32(20),
    bytesPerPixel: (PNG_CHANNELS[view.getUint8(25)] ?? 4) * deep,
  };
}

function sizeOfWebp(view: DataView, bytes: Uint8Array): StatedSize | null {
  const bytesPerPixel = 4;
  switch (text(bytes, 12, 16)) {
    case 'VP8X':
      return {
        width: 1 + (view.getUint32(24, true) & 0xffffff),
        height: 1 + (view.getUint16(27, true) | (view.getUint8(29) << 16)),
        bytesPerPixel,
      };
    case 'VP8L': {
      const packed = view.getUint32(21, true);
      return { width: 1 + (packed & 0x3fff), height: 1 + ((packed >> 14) & 0x3fff), bytesPerPixel };
    }
    default:
      return {
        width: view.getUint16(26, true) & 0x3fff,
        height: view.getUint16(28, true) & 0x3fff,
        bytesPerPixel,
      };
  }
}

/** Where the boxes of an ISO media file may be searched: phones keep `meta` in front. */
const FRONT = 1 << 20;

function sizeOfMedia(view: DataView, bytes: Uint8Array): StatedSize | null {
  let size: StatedSize | null = null;
  const end = Math.min(bytes.length - 16, FRONT);
  for (let at = 4; at < end; at++) {
    if (bytes[at] !== 0x69 || text(bytes, at, at + 4) !== 'ispe') continue;
    const width = view.getUint32(at + 8);
    const height = view.getUint32(at + 12);
    if (size === null || width * height > size.width * size.height)
      size = { width, height, bytesPerPixel: 4 };
  }
  return size;
}
