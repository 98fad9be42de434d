import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { crc32, deflateSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { labOfBytes } from '../../server/colour/spaces.ts';
import { drawPng } from '../../server/images/draw-png.ts';
import { encodeSwatch } from '../../server/images/encode-swatch.ts';
import { openPhoto } from '../../server/images/open-photo.ts';
import { primariesOf } from '../../server/images/profile.ts';
import { screenPicture } from '../../server/images/screen-picture.ts';
import { sharp } from '../../server/images/sharp.ts';
import { Refusal } from '../../server/refusals/refusal.ts';

const [WIDTH, HEIGHT] = [120, 80];

/** Red in the upper left quarter, green in the upper right, blue in the lower left, white in the lower right. */
function quarters(): Buffer {
  const rgb = Buffer.alloc(3 * WIDTH * HEIGHT);
  for (let y = 0; y < HEIGHT; y++)
    for (let x = 0; x < WIDTH; x++) {
      const colour = [
        [220, 30, 40],
        [30, 160, 60],
        [40, 60, 200],
        [250, 250, 250],
      ][2 * Number(y >= HEIGHT / 2) + Number(x >= WIDTH / 2)]!;
      rgb.set(colour, 3 * (y * WIDTH + x));
    }
  return rgb;
}

const drawn = (): ReturnType<typeof sharp> =>
  sharp(quarters(), { raw: { width: WIDTH, height: HEIGHT, channels: 3 } });

/** A PNG whose pixels are said to mean what a profile says (PNG, third edition, 11.3.2.3: iCCP, before the pixels). */
function withProfile(png: Buffer, profile: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from('iCCPp\0\0'), deflateSync(profile)]);
  const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)];
  length.writeUInt32BE(body.length - 4);
  sum.writeUInt32BE(crc32(body));
  return Buffer.concat([png.subarray(0, AFTER_IHDR), length, body, sum, png.subarray(AFTER_IHDR)]);
}

const AFTER_IHDR = 33;

/** CIELAB as in CIE 15, with the white of IEC 61966-2-1 (x 0.3127, y 0.3290). */
function labFromXyz(xyz: readonly [number, number, number]): [number, number, number] {
  const white = [0.3127 / 0.329, 1, (1 - 0.3127 - 0.329) / 0.329];
  const [x, y, z] = xyz.map((value, k) => {
    const t = value / white[k]!;
    return t > (6 / 29) ** 3 ? Math.cbrt(t) : t / (3 * (6 / 29) ** 2) + 4 / 29;
  });
  return [116 * y! - 16, 500 * (x! - y!), 200 * (y! - z!)];
}

type Pixels = Awaited<ReturnType<typeof openPhoto>>['full'];

function at({ width, height, rgb }: Pixels, u: number, v: number): number[] {
  const pixel = Math.floor(v * height) * width + Math.floor(u * width);
  return [...rgb.subarray(3 * pixel, 3 * pixel + 3)];
}

function isNear(colour: readonly number[], wanted: readonly number[], by = 12): boolean {
  return colour.every((value, k) => Math.abs(value - wanted[k]!) <= by);
}

describe('openPhoto', () => {
  it.each(['jpeg', 'png', 'webp', 'avif'] as const)('opens a %s', async (format) => {
    const photo = await openPhoto(await drawn().toFormat(format, { quality: 95 }).toBuffer());
    expect([photo.format, photo.width, photo.height]).toEqual([format, WIDTH, HEIGHT]);
    expect(isNear(at(photo.full, 0.25, 0.25), [220, 30, 40])).toBe(true);
    expect(isNear(at(photo.full, 0.75, 0.25), [30, 160, 60])).toBe(true);
    expect(isNear(at(photo.full, 0.25, 0.75), [40, 60, 200])).toBe(true);
  });

  // CIPA DC-008 (Exif 2.32): where the first row and the first column of the stored picture belong.
  it.each([1, 2, 3, 4, 5, 6, 7, 8])('turns orientation %i upright', async (orientation) => {
    const stored = await drawn().withMetadata({ orientation }).png().toBuffer();
    const { full, width, height } = await openPhoto(stored);
    expect([width, height]).toEqual(orientation < 5 ? [WIDTH, HEIGHT] : [HEIGHT, WIDTH]);
    const upright = await sharp(stored).autoOrient().removeAlpha().raw().toBuffer();
    expect(Buffer.compare(Buffer.from(full.rgb), upright)).toBe(0);
  });

  it('opens grayscale, CMYK and 16-bit pictures', async () => {
    const gray = await openPhoto(await drawn().toColourspace('b-w').jpeg().toBuffer());
    const [r, g, b] = at(gray.full, 0.25, 0.25);
    expect(r).toBe(g);
    expect(g).toBe(b);
    const deep = await openPhoto(await drawn().toColourspace('rgb16').png().toBuffer());
    expect(isNear(at(deep.full, 0.25, 0.25), [220, 30, 40], 3)).toBe(true);
    const cmyk = await openPhoto(
      await drawn().toColourspace('cmyk').jpeg({ quality: 95 }).toBuffer(),
    );
    // Inks cannot print these colours fully; they only have to stay what they are called.
    const [red, green, blue] = at(cmyk.full, 0.25, 0.25);
    expect(red! > 150 && red! > green! + 60 && red! > blue! + 60).toBe(true);
    expect(isNear(at(cmyk.full, 0.75, 0.75), [250, 250, 250], 14)).toBe(true);
  });

  it('keeps Display P3 as it is and says so', async () => {
    const bytes = await drawn().withIccProfile('p3').png().toBuffer();
    const { icc } = await sharp(bytes).metadata();
    expect(primariesOf(icc!)).toBe('display-p3');
    const { full } = await openPhoto(bytes);
    expect(full.primaries).toBe('display-p3');
    const { data } = await sharp(bytes, { ignoreIcc: true })
      .raw()
      .toBuffer({ resolveWithObject: true });
    expect(Buffer.compare(Buffer.from(full.rgb), data)).toBe(0);
  });

  // SMPTE EG 432-1: the primaries of P3 as x, y, and their Y, which adds up to 1 for white D65 (numbers from memory).
  it.each([
    ['red', [255, 0, 0], [0.68, 0.32, 0.22897]],
    ['green', [0, 255, 0], [0.265, 0.69, 0.69174]],
    ['blue', [0, 0, 255], [0.15, 0.06, 0.07929]],
  ] as const)('does not clip the %s of Display P3', async (_name, colour, [x, y, light]) => {
    const tagged = await drawn().withIccProfile('p3').png().toBuffer();
    const { icc } = await sharp(tagged).metadata();
    const background = { r: colour[0], g: colour[1], b: colour[2] };
    const plain = await sharp({ create: { width: 80, height: 80, channels: 3, background } })
      .png()
      .toBuffer();
    const { full } = await openPhoto(withProfile(plain, icc!));
    expect(full.primaries).toBe('display-p3');
    const lab = labOfBytes(full.rgb.subarray(0, 3), full.primaries);
    const wanted = labFromXyz([(light * x) / y, light, (light * (1 - x - y)) / y]);
    [...lab].forEach((value, k) => expect(Math.abs(value - wanted[k]!)).toBeLessThan(0.3));
  });

  it('reads 8 and 16 bits of the same PNG alike', async () => {
    const [plain, deep] = await Promise.all([
      openPhoto(await drawn().png().toBuffer()),
      openPhoto(await drawn().toColourspace('rgb16').png().toBuffer()),
    ]);
    expect(deep.full.rgb.every((value, at) => Math.abs(value - plain.full.rgb[at]!) <= 1)).toBe(
      true,
    );
  });

  it('gives a preview shrunk by a whole number whose pixels are means', async () => {
    const width = 2100;
    const rgb = Buffer.alloc(3 * width * 1400);
    for (let pixel = 0; pixel < width * 1400; pixel++)
      rgb.fill((pixel % width) % 2 === 0 ? 100 : 140, 3 * pixel, 3 * pixel + 3);
    const bytes = await sharp(rgb, { raw: { width, height: 1400, channels: 3 } })
      .png()
      .toBuffer();
    const { preview, scale } = await openPhoto(bytes);
    expect([scale, preview.width, preview.height]).toEqual([2, 1050, 700]);
    expect(at(preview, 0.5, 0.5)).toEqual([120, 120, 120]);
  });

  it('refuses a photo that was cut off, and one that is too large, without decoding it', async () => {
    const noisy = Buffer.from(
      Uint8Array.from({ length: 3 * WIDTH * HEIGHT }, (_, i) => (i * 2654435761) >>> 24),
    );
    const whole = await sharp(noisy, { raw: { width: WIDTH, height: HEIGHT, channels: 3 } })
      .jpeg()
      .toBuffer();
    await expect(openPhoto(whole.subarray(0, whole.length / 2))).rejects.toMatchObject({
      kind: 'not-a-photo',
    });
    // A PNG header that states 786464 x 128 pixels of 16 bits, interlaced, in 37 bytes.
    const header = Buffer.from(
      '89504e470d0a1a0a0000000d49484452000c00200000008010020000010000000000000000',
      'hex',
    );
    await expect(openPhoto(header)).rejects.toMatchObject({ kind: 'too-large' });
  });

  it('refuses a drawing whatever it is called, though its own drawings are drawn', async () => {
    const svg =
      '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 20 10"><rect width="20" height="10" fill="#cc3344"/></svg>';
    await expect(openPhoto(Buffer.from(svg))).rejects.toMatchObject({ kind: 'not-a-photo' });
    const png = await drawPng(svg, 100);
    expect(await sharp(Buffer.from(png)).metadata()).toMatchObject({
      format: 'png',
      width: 100,
      height: 50,
    });
  });
});

describe('pictures for the screen', () => {
  it('carry nothing but their pixels, upright and not larger than asked', async () => {
    const stored = await sharp({
      create: { width: 2400, height: 1200, channels: 3, background: '#886644' },
    })
      .withMetadata({ orientation: 6 })
      .withExif({ IFD0: { Copyright: 'not to be passed on' } })
      .jpeg()
      .toBuffer();
    const shown = await screenPicture(await openPhoto(stored));
    const { format, width, height, exif, orientation } = await sharp(Buffer.from(shown)).metadata();
    expect([format, width, height, exif, orientation]).toEqual([
      'jpeg',
      800,
      1600,
      undefined,
      undefined,
    ]);
  });

  it('swatches keep their colours through the JPEG', async () => {
    const rgb = new Uint8Array(quarters());
    const { full } = await openPhoto(await encodeSwatch({ width: WIDTH, height: HEIGHT, rgb }));
    expect(isNear(at(full, 0.25, 0.25), [220, 30, 40], 4)).toBe(true);
  });
});

const hostile = join(import.meta.dirname, '../../../shared/bad-images');

const heic = (name: string): string => join(hostile, `libheif/fuzzing_data_corpus_${name}.heic`);

describe('HEIC', () => {
  it.skipIf(!existsSync(heic('colors-no-alpha')))(
    'is decoded from HEVC: a wheel of colours, the same with and without a layer of alpha (skipped where ../shared/bad-images is absent)',
    async () => {
      const [plain, layered] = await Promise.all(
        ['colors-no-alpha', 'colors-with-alpha'].map(async (name) =>
          openPhoto(readFileSync(heic(name))),
        ),
      );
      expect([plain!.format, plain!.width, plain!.height]).toEqual(['heic', 64, 64]);
      expect(isNear(at(plain!.full, 0.95, 0.95), [255, 0, 0], 20)).toBe(true);
      expect(isNear(at(plain!.full, 0.25, 0.97), [60, 200, 20], 60)).toBe(true);
      expect(isNear(at(plain!.full, 0.9, 0.05), [10, 0, 245], 20)).toBe(true);
      expect(Buffer.compare(Buffer.from(plain!.full.rgb), Buffer.from(layered!.full.rgb))).toBe(0);
    },
  );
});

describe('hostile files', () => {
  it.skipIf(!existsSync(hostile))(
    'end in a picture or a refusal, all of them (skipped where ../shared/bad-images is absent)',
    { timeout: 600_000 },
    async () => {
      const files = readdirSync(hostile, { recursive: true, withFileTypes: true }).filter((entry) =>
        entry.isFile(),
      );
      let opened = 0;
      for (const { parentPath, name } of files) {
        const bytes = readFileSync(join(parentPath, name));
        await openPhoto(bytes).then(
          ({ full }) => {
            opened++;
            expect(full.rgb.length, name).toBe(3 * full.width * full.height);
          },
          (error: unknown) => expect(error, name).toBeInstanceOf(Refusal),
        );
      }
      expect(files.length).toBeGreaterThan(500);
      expect(opened).toBeGreaterThan(30);
    },
  );
});
