import { sharp } from './sharp.ts';

/** Longest side in pixels: a 6 in side at 150 dots an inch, 12 in at 75. */
const LONGEST = 900;

/**
 * A swatch made smaller for the printed guide, so that a batch of many papers stays a file that can be
 * mailed: a JPEG of at most 900 pixels a side, lighter than the swatch that is kept.
 */
export async function printPicture(bytes: Uint8Array): Promise<Uint8Array> {
  return sharp(bytes)
    .resize({ width: LONGEST, height: LONGEST, fit: 'inside', withoutEnlargement: true })
    .jpeg({ quality: 78, chromaSubsampling: '4:2:0' })
    .toBuffer();
}
