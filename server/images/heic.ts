import libheif from 'libheif-js/wasm-bundle.js';
import type { Picture } from '../photo/picture.ts';
import { Refusal } from '../refusals/refusal.ts';
import { isWhole, lengthSizesIn } from './hevc-units.ts';
import { notAPhoto } from './kind-of-file.ts';
import { asked, borrowed, tried, uint32At } from './libheif-calls.ts';
import type { Raw } from './orient.ts';
import { primariesOf, primariesOfCode } from './profile.ts';

export interface DecodedHeic {
  readonly raw: Raw;
  readonly primaries: Picture['primaries'];
}

/**
 * Decodes a HEIC photo through libheif as WebAssembly, because sharp's own build leaves HEVC out.
 *
 * Takes       the file. Of several pictures in it the primary one counts, with its own colours: small pictures and
 *             distances that phones put beside it say others.
 * Gives       the picture upright: libheif puts its tiles together, and turns and mirrors it as the file says, so that
 *             the orientation in the Exif block, which says the same again, is not to be heeded (ISO/IEC 23008-12, A.2.1).
 * Refuses     a damaged file, and one whose tiles are not all there: libheif leaves such a tile grey, without an error.
 * Good up to  some 20 megapixels a second; runs on the calling thread, so call it in a worker. What is damaged within
 *             a tile so that it still looks like HEVC is not noticed.
 */
export function decodeHeic(bytes: Uint8Array): DecodedHeic {
  try {
    return borrowed(bytes.length, (file) => {
      libheif.HEAPU8.set(bytes, file);
      return decodedIn(file, bytes.length, lengthSizesIn(bytes));
    });
  } catch (fault) {
    if (fault instanceof Refusal || isLackOfMemory(fault)) throw fault;
    // libheif hands units to its decoder as if all lengths had four bytes.
    if (!lengthSizesIn(bytes).includes(4))
      throw notAPhoto(
        'a HEIC file written in a way that is not decoded here (short lengths)',
        'Export it as JPEG and send that.',
      );
    throw notAPhoto('a HEIC file that is damaged or not complete', MEND);
  }
}

/** Says nothing of the file. Numbers in it that point outside of it make errors of the same class, with other words. */
function isLackOfMemory(fault: unknown): boolean {
  return fault instanceof RangeError && fault.message.includes('allocation failed');
}

function decodedIn(file: number, length: number, lengthSizes: readonly number[]): DecodedHeic {
  const context = libheif._heif_context_alloc();
  try {
    tried((error) =>
      libheif._heif_context_read_from_memory_without_copy(error, context, file, length, 0),
    );
    holdWhole(tilesMissing(context, lengthSizes));
    const handle = asked((error, out) =>
      libheif._heif_context_get_primary_image_handle(error, context, out),
    );
    try {
      return { raw: decoded(handle), primaries: primariesIn(handle) };
    } finally {
      libheif._heif_image_handle_release(handle);
    }
  } finally {
    libheif._heif_context_free(context);
  }
}

/** heif_colorspace_RGB, heif_chroma_interleaved_RGB, heif_channel_interleaved. */
const RGB = 1;
const INTERLEAVED = 10;

function decoded(handle: number): Raw {
  const image = asked((error, out) =>
    libheif._heif_decode_image(error, handle, out, RGB, INTERLEAVED, 0),
  );
  try {
    if (libheif._heif_image_get_decoding_warnings(image, 0, 0, 0) > 0)
      throw new Error('libheif left a part of the picture out.');
    const width = libheif._heif_image_get_width(image, INTERLEAVED);
    const height = libheif._heif_image_get_height(image, INTERLEAVED);
    return borrowed(4, (stride) => {
      const from = libheif._heif_image_get_plane_readonly(image, INTERLEAVED, stride);
      const step = uint32At(stride);
      const rgb = new Uint8Array(3 * width * height);
      const { HEAPU8 } = libheif;
      for (let y = 0; y < height; y++) {
        const row = from + y * step;
        rgb.set(HEAPU8.subarray(row, row + 3 * width), 3 * width * y);
      }
      return { width, height, rgb };
    });
  } finally {
    libheif._heif_image_release(image);
  }
}

/** By an ICC profile ('prof', 'rICC'), or by code points ('nclx': ISO/IEC 14496-12, 12.1.5). */
function primariesIn(handle: number): Picture['primaries'] {
  const type = libheif._heif_image_handle_get_color_profile_type(handle);
  if (type === NCLX) {
    const nclx = asked((error, out) =>
      libheif._heif_image_handle_get_nclx_color_profile(error, handle, out),
    );
    // A byte for the version, then, where the next four bytes begin, the primaries.
    const code = uint32At(nclx + 4);
    libheif._heif_nclx_color_profile_free(nclx);
    return primariesOfCode(code);
  }
  const length = libheif._heif_image_handle_get_raw_color_profile_size(handle);
  if (type === 0 || length === 0) return 'srgb';
  return borrowed(length, (at) => {
    tried((error) => libheif._heif_image_handle_get_raw_color_profile(error, handle, at));
    return primariesOf(libheif.HEAPU8.slice(at, at + length)) ?? 'srgb';
  });
}

/** For each tile of the primary picture, in their order, whether its bytes are not those of a tile. */
function tilesMissing(context: number, lengthSizes: readonly number[]): boolean[] {
  const primary = asked((error, out) =>
    libheif._heif_context_get_primary_image_ID(error, context, out),
  );
  return tilesOf(context, primary)
    .filter((item) => libheif._heif_item_get_item_type(context, item) === HVC1)
    .map((item) => dataOf(context, item))
    .map((data) => !lengthSizes.some((size) => isWhole(data, size)));
}

/** The items that a grid is put together from (reference 'dimg'); a picture that is none is its own. */
function tilesOf(context: number, item: number): readonly number[] {
  if (libheif._heif_item_get_item_type(context, item) !== GRID) return [item];
  return borrowed(8, (at) => {
    for (let index = 0; ; index++) {
      const count = libheif._heif_context_get_item_references(context, item, index, at, at + 4);
      if (count === 0) return [];
      const items = uint32At(at + 4);
      const found = Array.from({ length: count }, (_, n) => uint32At(items + 4 * n));
      const isOfTiles = uint32At(at) === DIMG;
      libheif._heif_release_item_references(context, at + 4);
      if (isOfTiles) return found;
    }
  });
}

function dataOf(context: number, item: number): Uint8Array {
  return borrowed(8, (at) => {
    tried((error) => libheif._heif_item_get_item_data(error, context, item, 0, at, at + 4));
    const from = uint32At(at);
    const bytes = libheif.HEAPU8.slice(from, from + uint32At(at + 4));
    libheif._heif_release_item_data(context, at);
    return bytes;
  });
}

/** Four letters as one number. */
const [HVC1, GRID, DIMG, NCLX] = ['hvc1', 'grid', 'dimg', 'nclx'].map((code) =>
  Buffer.from(code).readUInt32BE(),
) as [number, number, number, number];

/** Nothing is told of a picture of which a part is not there. */
function holdWhole(missing: readonly boolean[]): void {
  const count = missing.filter((one) => one).length;
  if (count === 0) return;
  if (missing.length === 1) throw new Error('The picture is not whole.');
  throw notAPhoto(
    `a HEIC file of which ${count} of ${missing.length} tiles ${count === 1 ? 'is' : 'are'} damaged`,
    MEND,
  );
}

const MEND = 'Send it again, or export it as JPEG and send that.';
