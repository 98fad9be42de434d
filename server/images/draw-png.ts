import { expected } from '../refusals/refusal.ts';
import { sharp } from './sharp.ts';

/**
 * Draws one of our own SVG pictures as a PNG.
 *
 * Takes       the drawing (pictures in it as data addresses) and the width in pixels, 1 to 4096.
 */
export async function drawPng(svg: string, width: number): Promise<Uint8Array> {
  if (!Number.isInteger(width) || width < 1 || width > 4096)
    throw expected(
      'a whole number of pixels from 1 to 4096',
      'width',
      width,
      'Ask for a smaller picture.',
    );
  // `unlimited`: swatches inside the drawing make its text longer than the reader expects of a stranger's.
  return sharp(Buffer.from(svg), { unlimited: true, limitInputPixels: 64e6 })
    .resize({ width })
    .png()
    .toBuffer();
}
