import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { TruthFile } from '../../sample-swatches/truth-file.ts';
import { difference } from '../../server/colour/difference.ts';
import { readTouched } from '../../server/from-photo-to-guide.ts';
import type { PhotoPoint } from '../../server/geometry/points.ts';

const sample = (name: string): Buffer =>
  readFileSync(new URL(`../../sample-swatches/${name}`, import.meta.url));
const { photos } = JSON.parse(sample('truth.json').toString()) as TruthFile;

describe('a touch in a photo', () => {
  // The truth of the rendered sample photos: what would be measured on the cardstock itself.
  test('on a square of cardstock reads its colour within three of its stated errors', async () => {
    const photo = photos.find(({ file }) => file === 'tidewrack-cardstock.jpg')!;
    const bytes = sample(photo.file);
    for (const { lab, corners } of photo.squares.slice(3, 5)) {
      const read = await readTouched(bytes, {
        at: middleOf(corners),
        look: 'squares',
        tap: {},
        chipColours: [],
      });
      expect(read).not.toBeNull();
      expect(difference(read!.lab, lab)).toBeLessThan(3 * read!.uncertainty);
      expect(read!.uncertainty).toBeLessThan(4);
    }
  });
});

function middleOf(corners: readonly PhotoPoint[]): PhotoPoint {
  const sum = corners.reduce((all, { x, y }) => ({ x: all.x + x / 4, y: all.y + y / 4 }), {
    x: 0,
    y: 0,
  });
  return { x: sum.x, y: sum.y };
}
