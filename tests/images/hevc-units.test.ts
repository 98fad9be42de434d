import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import libheif from 'libheif-js/wasm-bundle.js';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { decodeHeic } from '../../server/images/heic.ts';
import { isWhole, lengthSizesIn } from '../../server/images/hevc-units.ts';
import { picturesIn } from './tiled-heic.ts';

const FILE = readFileSync(join(import.meta.dirname, 'heic/tiles.heic'));

/** Units with lengths of so many bytes (ISO/IEC 14496-15, 8.3.2). */
function units(size: number, ...contents: readonly (readonly number[])[]): Buffer {
  return Buffer.concat(
    contents.map((content) => {
      const length = Buffer.alloc(size);
      length.writeUIntBE(content.length, 0, size);
      return Buffer.concat([length, Buffer.from(content)]);
    }),
  );
}

describe('units of HEVC in a file', () => {
  it.each([1, 2, 4])('are whole or not with lengths of %i bytes', (size) => {
    const whole = units(size, [0x28, 1, 175, 9], [0x28, 1, 7]);
    expect(isWhole(whole, size)).toBe(true);
    expect(isWhole(whole.subarray(0, -1), size)).toBe(false);
    expect(isWhole(units(size, [0x28, 1, 0, 0, 0, 9]), size)).toBe(false);
    for (const other of [1, 2, 4]) if (other !== size) expect(isWhole(whole, other)).toBe(false);
  });

  it('have lengths of as many bytes as their file says: four, as heif-enc writes it', () => {
    expect(lengthSizesIn(FILE)).toEqual([4]);
    expect(picturesIn(FILE).every(({ data }) => isWhole(data, 4))).toBe(true);
    const two = Buffer.from(FILE);
    const at = two.indexOf('hvcC') + 4 + 21;
    two[at] = (two[at]! & 0xfc) | 1;
    expect(lengthSizesIn(two)).toContain(2);
    expect(lengthSizesIn(Buffer.from('nothing'))).toEqual([4]);
  });

  it('with short lengths are not called damaged', () => {
    const short = Buffer.from(FILE);
    for (let at = short.indexOf('hvcC'); at >= 0; at = short.indexOf('hvcC', at + 1))
      short[at + 25] = (short[at + 25]! & 0xfc) | 1;
    expect(() => decodeHeic(short)).toThrow(/short lengths/);
  });
});

describe('lack of memory', () => {
  afterEach(() => vi.restoreAllMocks());

  it('is not called a damaged file', () => {
    vi.spyOn(libheif, '_malloc').mockReturnValue(0);
    expect(() => decodeHeic(FILE)).toThrow(RangeError);
  });

  it('is told apart from a file that points outside of itself', () => {
    vi.spyOn(libheif, '_heif_decode_image').mockImplementation(() => {
      throw new RangeError('Offset is outside the bounds of the DataView');
    });
    expect(() => decodeHeic(FILE)).toThrow(expect.objectContaining({ kind: 'not-a-photo' }));
  });
});
