import { encodedByte, linearOfByte } from '../colour/curves.ts';
import type { OpenedPixels, Picture } from './picture.ts';

/**
 * How much steeper or flatter than light a camera's tones run that develops to please, by the encoded value in [0, 1].
 *
 * Deep and middle tones are spread, highlights rolled off: an S. Strength 1 is that of a phone.
 *
 * Takes       an encoded value, as it stands in the file.
 * Gives       the change of log light in the file over that in the scene, less 1, at strength 1.
 * Source      the six greys of four phone photographs of known colours (target-cc-01, -03, -05, target-mini-02), green channel:
 *             from grey to grey 0.65 to 0.83 at 0.76, 1.11 to 1.32 at 0.50, 1.25 to 1.45 at 0.18; a parabola by least squares.
 */
export function bendAt(encoded: number): number {
  return 0.34 + 0.47 * encoded - 1.64 * encoded * encoded;
}

/**
 * The encoded value that each one of the file would be, had the tones not been bent; the end of the scale stays.
 *
 * Takes       the strength of the bend, in [0, 1.2].
 */
export function straightBytes(strength: number): Uint8Array {
  const straight = new Uint8Array(256);
  let log = 0;
  straight[255] = 255;
  for (let byte = 254; byte > 0; byte--) {
    const step = Math.log(linearOfByte[byte + 1]! / linearOfByte[byte]!);
    log -= step / (1 + strength * bendAt((byte + 0.5) / 255));
    straight[byte] = encodedByte(Math.exp(log));
  }
  return straight;
}

/** The same photo with its tones made straight. */
export function unbent(photo: OpenedPixels, strength: number): OpenedPixels {
  const straight = straightBytes(strength);
  return {
    ...photo,
    preview: through(photo.preview, straight),
    full: through(photo.full, straight),
  };
}

function through(picture: Picture, table: Uint8Array): Picture {
  const rgb = new Uint8Array(picture.rgb.length);
  for (let at = 0; at < rgb.length; at++) rgb[at] = table[picture.rgb[at]!]!;
  return { ...picture, rgb };
}
