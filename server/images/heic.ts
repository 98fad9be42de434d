import decode from 'heic-decode';
import { notAPhoto } from './kind-of-file.ts';
import type { Raw } from './orient.ts';

/**
 * Decodes a HEIC photo through libheif as WebAssembly, because sharp's own build leaves HEVC out.
 * The picture comes upright: libheif turns it as the file says.
 *
 * Good up to  some 20 megapixels a second; runs on the calling thread, so call it in a worker.
 */
export async function decodeHeic(bytes: Uint8Array): Promise<Raw> {
  try {
    const { width, height, data } = await decode({ buffer: bytes });
    const rgb = new Uint8Array(3 * width * height);
    for (let from = 0, to = 0; to < rgb.length; from += 4, to += 3) {
      rgb[to] = data[from]!;
      rgb[to + 1] = data[from + 1]!;
      rgb[to + 2] = data[from + 2]!;
    }
    return { width, height, rgb };
  } catch {
    throw notAPhoto(
      'a HEIC file that is damaged or not complete',
      'Send it again, or export it as JPEG and send that.',
    );
  }
}
