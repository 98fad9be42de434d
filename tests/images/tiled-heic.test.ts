import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { openPhoto } from '../../server/images/open-photo.ts';
import { upright } from '../../server/images/orient.ts';
import type { Raw } from '../../server/images/orient.ts';
import { nclx, picturesIn, tiledHeic } from './tiled-heic.ts';

const FILE = readFileSync(join(import.meta.dirname, 'heic/tiles.heic'));
const SHOWN = { columns: 2, rows: 2, width: 1000, height: 760 } as const;
/** As phones write it: a small picture and one of distances beside the photo, whose colours are Display P3. */
const PHONE = { ...SHOWN, thumbnail: 4, depth: 5, colour: nclx(12) } as const;

/** The tiles, each opened from a file of its own, laid beside each other. */
async function laidOut(): Promise<Raw> {
  const rgb = new Uint8Array(3 * SHOWN.width * SHOWN.height);
  for (let tile = 0; tile < 4; tile++) {
    const [left, top] = [512 * (tile % 2), 512 * (tile >> 1)];
    const one = tiledHeic(FILE, { columns: 1, rows: 1, width: 512, height: 512, first: tile });
    const { full } = await openPhoto(one);
    const across = Math.min(512, SHOWN.width - left);
    for (let y = 0; y < Math.min(512, SHOWN.height - top); y++)
      rgb.set(
        full.rgb.subarray(3 * 512 * y, 3 * (512 * y + across)),
        3 * (SHOWN.width * (top + y) + left),
      );
  }
  return { width: SHOWN.width, height: SHOWN.height, rgb };
}

function isSame(p: Raw, q: Raw): boolean {
  return p.width === q.width && p.height === q.height && Buffer.compare(p.rgb, q.rgb) === 0;
}

describe('a HEIC photo in tiles, as phones write it', () => {
  it('is put together from its tiles, each in its place, and what hangs over is cut off', async () => {
    expect(isSame((await openPhoto(tiledHeic(FILE, PHONE))).full, await laidOut())).toBe(true);
  });

  // Quarter turns against the clock, then mirrored: top and bottom change places (0) or left and right (1), ISO/IEC
  // 23008-12, 6.5.10 and 6.5.12 (from memory); the orientation that does the same: CIPA DC-008 (Exif 2.32).
  it.each([
    { quarters: 1, orientation: 8 },
    { quarters: 2, orientation: 3 },
    { quarters: 3, orientation: 6 },
    { quarters: 0, mirror: 0, orientation: 4 },
    { quarters: 0, mirror: 1, orientation: 2 },
    { quarters: 1, mirror: 0, orientation: 5 },
    { quarters: 1, mirror: 1, orientation: 7 },
  ] as const)('comes upright, once, though its Exif says it again: %o', async (turn) => {
    const { full } = await openPhoto(tiledHeic(FILE, { ...PHONE, ...turn }));
    expect(isSame(full, upright(await laidOut(), turn.orientation))).toBe(true);
  });

  it('has the colours of the picture that it was made from', async () => {
    const { full } = await openPhoto(tiledHeic(FILE, SHOWN));
    const sample = join(import.meta.dirname, '../../sample-swatches/tidewrack-a-front.jpg');
    const before = await sharp(readFileSync(sample))
      .resize(1600)
      .extract({ left: 300, top: 200, width: SHOWN.width, height: SHOWN.height })
      .blur(1.2)
      .raw()
      .toBuffer();
    const off = [0, 1, 2].map((channel) => {
      let [sum, apart] = [0, 0];
      for (let at = channel; at < before.length; at += 3) {
        sum += full.rgb[at]! - before[at]!;
        apart += Math.abs(full.rgb[at]! - before[at]!);
      }
      return { mean: (3 * sum) / before.length, apart: (3 * apart) / before.length };
    });
    // Video range, or the matrix of another standard, would move a mean by 5 and more; the rest is a quality of 20.
    for (const { mean, apart } of off) {
      expect(Math.abs(mean)).toBeLessThan(1);
      expect(apart).toBeLessThan(9);
    }
  });

  it('has its own primaries, by code points or by a profile, not those of the small picture', async () => {
    const pixel = sharp({ create: { width: 8, height: 8, channels: 3, background: '#888' } });
    const p3 = (await sharp(await pixel.withIccProfile('p3').png().toBuffer()).metadata()).icc!;
    const profile = Buffer.concat([Buffer.from('prof'), p3]);
    for (const [colour, primaries] of [
      [nclx(12), 'display-p3'],
      [nclx(1), 'srgb'],
      [profile, 'display-p3'],
    ] as const)
      expect((await openPhoto(tiledHeic(FILE, { ...PHONE, colour }))).full.primaries).toBe(
        primaries,
      );
    const unsaid = { ...SHOWN, thumbnail: 4, depth: 5 };
    expect((await openPhoto(tiledHeic(FILE, unsaid))).full.primaries).toBe('srgb');
  });

  it('is the picture that the file calls its primary one, not the first', async () => {
    const file = Buffer.from(FILE);
    const pitm = file.indexOf('pitm');
    file.writeUInt16BE(5, pitm + 8);
    const { width, height } = await openPhoto(file);
    expect([width, height]).toEqual([160, 120]);
  });
});

describe('a HEIC photo of which something is missing', () => {
  const whole = tiledHeic(FILE, PHONE);

  function damaged(picture: number, damage: (tile: Buffer) => void): Buffer {
    const file = Buffer.from(whole);
    const { data } = picturesIn(FILE)[picture]!;
    const at = file.indexOf(data);
    damage(file.subarray(at, at + data.length));
    return file;
  }

  it.each([0, 1, 2, 3])('tile %i: never written, half written, of a wrong length', async (tile) => {
    for (const damage of [
      (bytes: Buffer) => bytes.fill(0),
      (bytes: Buffer) => bytes.fill(0, bytes.length >> 1),
      (bytes: Buffer) => bytes.writeUInt32BE(0x7fffffff, 0),
    ])
      await expect(openPhoto(damaged(tile, damage))).rejects.toMatchObject({
        kind: 'not-a-photo',
        message: expect.stringContaining('1 of 4 tiles is damaged') as string,
      });
  });

  it('a small picture that is broken is no loss', async () => {
    const { full } = await openPhoto(damaged(4, (bytes) => bytes.fill(0)));
    expect(isSame(full, await laidOut())).toBe(true);
  });

  it('cut off anywhere, it is refused as damaged', async () => {
    for (const part of [0.1, 0.3, 0.6, 0.9, 0.999])
      await expect(
        openPhoto(whole.subarray(0, Math.round(part * whole.length))),
      ).rejects.toMatchObject({ kind: 'not-a-photo' });
  });
});
