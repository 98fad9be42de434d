import { describe, expect, it } from 'vitest';
import { renderPhoto } from '../../sample-swatches/render-photo.ts';
import { smearsScene, squaresScene } from '../../sample-swatches/scene/make-scene.ts';
import type { Scene } from '../../sample-swatches/scene/scene.ts';
import { difference } from '../../server/colour/difference.ts';
import { readSolid } from '../../server/colour/read-solid.ts';
import { labFromHex } from '../../server/colour/spaces.ts';
import { polygonArea } from '../../server/geometry/polygon.ts';
import { openPhoto } from '../../server/images/open-photo.ts';
import { middleOf } from '../../server/photo/find-sheets.ts';
import { readPhoto } from '../../server/photo/read-photo.ts';

const HEXES = ['#2d6f77', '#b5443c', '#35506e', '#3f6f52', '#8c3b4a', '#5a6672'];
const COLOURS = HEXES.map((hex) => ({ name: hex, lab: labFromHex(hex) }));

/** The same smears, on a card so large that all of its edges lie outside the picture. */
function closeTo(scene: Scene): Scene {
  const [card, ...smears] = scene.things;
  const { place } = card!;
  return {
    ...scene,
    things: [
      { ...card!, place: { ...place, width: 2 * place.width, height: 2 * place.height } },
      ...smears,
    ],
  };
}

describe('supplies without an edge of the white card in the picture', () => {
  it('finds each smear on a card that fills the picture, and reads it against the card', async () => {
    const scene = closeTo(smearsScene(3, 'normal', COLOURS, { pixels: 1200 }));
    const { jpeg, truth } = await renderPhoto(scene);
    const photo = await openPhoto(jpeg);
    const reading = readPhoto(photo, { look: 'squares', sheetMillimetres: null });
    expect(reading.sheets).toHaveLength(6);
    expect(reading.white.kind).toBe('found');
    expect(reading.notes.join(' ')).toContain('No edge of the white card shows');
    for (const smear of truth.smears) {
      const { x, y } = middleOf(smear.corners);
      const reach = Math.sqrt(polygonArea(smear.corners)) / 4;
      const found = reading.sheets.find(
        ({ corners }) => Math.hypot(middleOf(corners).x - x, middleOf(corners).y - y) < reach,
      );
      expect(found?.smear).toBe(true);
      expect(difference(readSolid(found!.reading, found!.error).lab, smear.lab)).toBeLessThan(4);
    }
  });

  it.each(['cutting mat'] as const)(
    'finds each square that lies straight on a %s, and says that no white card lies there',
    async (surface) => {
      const scene = squaresScene(3, 'normal', COLOURS, { pixels: 1200, card: false, surface });
      const { jpeg } = await renderPhoto(scene);
      const photo = await openPhoto(jpeg);
      const reading = readPhoto(photo, { look: 'squares', sheetMillimetres: null });
      expect(reading.sheets.filter(({ smear }) => smear !== true)).toHaveLength(6);
      expect(reading.white.kind).toBe('none');
      expect(reading.notes.join(' ')).toContain('No white card was found');
    },
  );
});
