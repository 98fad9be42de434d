import { bytesOfLinear, linearOfBytes } from '../colour/spaces.ts';
import type { OpenedPixels, Picture } from '../photo/picture.ts';
import { sharp } from './sharp.ts';

/**
 * A photo made fit for the screen: upright, at most 1600 pixels a side, in sRGB, as JPEG.
 * It is written anew from its pixels, so nothing else that the file carried (place, camera, a hidden
 * tail) comes along.
 */
export async function screenPicture({ full }: OpenedPixels): Promise<Uint8Array> {
  const { width, height } = full;
  return sharp(srgbBytes(full), { raw: { width, height, channels: 3 } })
    .resize({ width: 1600, height: 1600, fit: 'inside', withoutEnlargement: true })
    .jpeg({ quality: 85 })
    .toBuffer();
}

function srgbBytes({ rgb, primaries }: Picture): Uint8Array {
  return primaries === 'srgb' ? rgb : bytesOfLinear(linearOfBytes(rgb, primaries));
}
