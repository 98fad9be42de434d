import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { openPhoto } from '../../server/images/open-photo.ts';
import { sharp } from '../../server/images/sharp.ts';
import { withoutPlace } from '../../server/images/without-place.ts';

const ROAD = 'Gannet Lane 7';
/** Exif as it stands in a file: TIFF 6.0, section 2, with a GPS directory (Exif 2.32, 4.6.6). */
const EXIF = {
  IFD0: { Make: 'Testphone' },
  IFD3: {
    GPSLatitudeRef: 'N',
    GPSLatitude: '51/1 30/1 4711/100',
    GPSLongitude: '7/1 5/1 815/100',
    GPSMapDatum: ROAD,
  },
};
const XMP = `<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"><rdf:Description rdf:about="" xmlns:exif="http://ns.adobe.com/exif/1.0/" exif:GPSLatitude="51,30.785N"/></rdf:RDF></x:xmpmeta>`;

const told = (): ReturnType<typeof sharp> =>
  sharp({ create: { width: 96, height: 64, channels: 3, background: '#3a6b6f' } })
    .withExif(EXIF)
    .withXmp(XMP);

/** 51 and 30 and 47.11 as three fractions, in the order of bytes that libexif writes. */
const LATITUDE = [51, 1, 30, 1, 4711, 100];
const numbers = Buffer.concat(
  LATITUDE.map((value) => {
    const four = Buffer.alloc(4);
    four.writeUInt32LE(value);
    return four;
  }),
);

describe('the place where a photo was taken', () => {
  test.each([
    ['JPEG', () => told().jpeg().toBuffer()],
    ['PNG', () => told().png().toBuffer()],
    ['WebP', () => told().webp().toBuffer()],
    ['AVIF', () => told().avif({ effort: 0 }).toBuffer()],
  ])('is blanked in a %s, which still opens as the same picture', async (format, make) => {
    const bytes = await make();
    expect(bytes.includes(ROAD)).toBe(true);
    expect(bytes.includes(numbers)).toBe(true);
    const without = withoutPlace(bytes);
    for (const word of [numbers, ROAD, 'GPSLatitude'])
      expect([format, without.includes(word)]).toEqual([format, false]);
    const [before, after] = [await openPhoto(bytes), await openPhoto(without)];
    expect(Buffer.compare(Buffer.from(after.full.rgb), Buffer.from(before.full.rgb))).toBe(0);
    // Who made it is asked for when its colours are read.
    expect(after.developed).toBe(format !== 'PNG' && before.developed);
    expect(withoutPlace(without).equals(without)).toBe(true);
  });

  test('is blanked in a HEIC', async () => {
    const heic = await readFile(join(import.meta.dirname, 'heic/patch.heic'));
    const exif = (await sharp(await told().jpeg().toBuffer()).metadata()).exif!;
    const size = Buffer.alloc(4);
    size.writeUInt32BE(8 + exif.length);
    const bytes = Buffer.concat([heic, size, Buffer.from('free'), exif]);
    expect(bytes.includes(numbers)).toBe(true);
    const without = withoutPlace(bytes);
    expect(without.includes(numbers) || without.includes(ROAD)).toBe(false);
    expect((await openPhoto(without)).format).toBe('heic');
  });

  test('where nothing tells of it the bytes stay the same, whatever they are', async () => {
    const plain = await sharp(await told().jpeg().toBuffer())
      .jpeg()
      .toBuffer();
    expect(withoutPlace(plain)).toBe(plain);
    const exif = Buffer.from((await sharp(await told().jpeg().toBuffer()).metadata()).exif!);
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 200 }), fc.nat(exif.length), (wild, cut) => {
        // Directories that end early, or point beyond the file, are left alone.
        withoutPlace(Buffer.concat([exif.subarray(0, cut), wild]));
        withoutPlace(Buffer.concat([Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'), wild]));
      }),
      { numRuns: 300, seed: 20260504 },
    );
  });

  test('a file that repeats itself is searched eight times and no more', async () => {
    const exif = (await sharp(await told().jpeg().toBuffer()).metadata()).exif!;
    const without = withoutPlace(Buffer.concat(Array.from({ length: 20 }, () => exif)));
    expect(without.toString('latin1').split(numbers.toString('latin1'))).toHaveLength(1 + 12);
  });

  test('a photo cut off within its notes is a photo like others', () => {
    // IPTC in an APP13 segment that says to be longer than the file is.
    const cutOff = Buffer.concat([
      Buffer.from([0xff, 0xed, 0x10, 0x00]),
      Buffer.from(`Photoshop 3.0\0${ROAD}`, 'latin1'),
    ]);
    expect(withoutPlace(cutOff).includes(ROAD)).toBe(false);
    const open = Buffer.from('<x:xmpmeta'.repeat(50), 'latin1');
    expect(withoutPlace(open)).toBe(open);
  });
});
