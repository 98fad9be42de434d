import { sharp } from './sharp.ts';

/**
 * A swatch as small as the screen shows it, so that a page full of papers is light: a JPEG as wide as
 * asked, never wider than the swatch itself.
 *
 * Takes       one of our own swatches (a JPEG) and a width in pixels, 16 to 2400.
 */
export async function smallSwatch(bytes: Uint8Array, width: number): Promise<Uint8Array> {
  return sharp(bytes)
    .resize({ width, withoutEnlargement: true })
    .jpeg({ quality: 84, chromaSubsampling: '4:4:4' })
    .toBuffer();
}
