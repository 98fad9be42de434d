import { Refusal } from '../refusals/refusal.ts';
import { notAPhoto } from './kind-of-file.ts';
import type { StatedSize } from './size-of-file.ts';

/** A pixel limit alone is no memory limit: 16-bit interlaced PNGs of few bytes decode to gigabytes. */
export const LIMITS = {
  fileBytes: 40e6,
  side: 16384,
  pixels: 64e6,
  aspect: 20,
  decodedBytes: 400e6,
  /** Below this no paper can be seen. */
  leastSide: 64,
} as const;

export function holdFileLimit(bytes: Uint8Array): void {
  if (bytes.length > LIMITS.fileBytes)
    throw tooLarge(`${Math.round(bytes.length / 1e6)} MB`, 'a file of at most 40 MB');
}

export function holdSizeLimits({ width, height, bytesPerPixel }: StatedSize): void {
  const received = `${width} x ${height} pixels`;
  if (width < LIMITS.leastSide || height < LIMITS.leastSide)
    throw notAPhoto(
      `a picture of ${received}`,
      `Send the photo as the camera made it, at least ${LIMITS.leastSide} pixels a side.`,
    );
  if (Math.max(width, height) > LIMITS.side)
    throw tooLarge(received, 'sides of at most 16384 pixels');
  if (width * height > LIMITS.pixels) throw tooLarge(received, 'at most 64 megapixels');
  if (Math.max(width / height, height / width) > LIMITS.aspect)
    throw tooLarge(received, 'a picture at most twenty times as long as wide');
  if (width * height * bytesPerPixel > LIMITS.decodedBytes)
    throw tooLarge(received, 'at most 400 MB when unpacked');
}

function tooLarge(received: string, limit: string): Refusal {
  return new Refusal({
    kind: 'too-large',
    field: 'photo',
    received,
    mend: 'Send a smaller copy; 12 megapixels are plenty.',
    message: `Expected ${limit} for photo but received ${received}`,
  });
}
