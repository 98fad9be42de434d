import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openPhoto } from '../../server/images/open-photo.ts';
import { upright } from '../../server/images/orient.ts';
import { turnedHeic } from './turned-heic.ts';

const FILE = readFileSync(join(import.meta.dirname, 'heic/patch.heic'));

describe('a HEIC photo that a phone took upright', () => {
  // ISO/IEC 23008-12, 6.5.10: quarter turns against the clock; CIPA DC-008 (Exif 2.32): 8, 3 and 6 bring the same about.
  it.each([
    [1, 8],
    [2, 3],
    [3, 6],
  ])('is turned once by %i quarters, not a pixel else', async (quarters, orientation) => {
    const lying = await openPhoto(FILE);
    const turned = await openPhoto(turnedHeic(FILE, quarters));
    const wanted = upright(lying.full, orientation);
    expect([turned.width, turned.height]).toEqual([wanted.width, wanted.height]);
    expect(Buffer.compare(Buffer.from(turned.full.rgb), Buffer.from(wanted.rgb))).toBe(0);
  });
});
