import type { RgbImage } from '../photo/picture.ts';
import { sharp } from './sharp.ts';

/** A flat picture as a JPEG of good quality, in full colour resolution so that fine prints stay crisp. */
export async function encodeSwatch({ width, height, rgb }: RgbImage): Promise<Uint8Array> {
  return sharp(rgb, { raw: { width, height, channels: 3 } })
    .jpeg({ quality: 90, chromaSubsampling: '4:4:4' })
    .toBuffer();
}
