import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { makePad } from '../../sample-swatches/pad/make-pad.ts';
import { renderPhoto } from '../../sample-swatches/render-photo.ts';
import { cornersOf, viewOf } from '../../sample-swatches/scene/look-through.ts';
import {
  makeScene,
  smearsScene,
  squaresScene,
  turnedOver,
} from '../../sample-swatches/scene/make-scene.ts';
import type { Scene } from '../../sample-swatches/scene/scene.ts';
import { difference } from '../../server/colour/difference.ts';
import type { Lab } from '../../server/colour/lab.ts';
import { labOfBytes } from '../../server/colour/spaces.ts';
import { applyHomography, inverseHomography } from '../../server/geometry/homography.ts';
import type { Quad } from '../../server/geometry/points.ts';
import { isConvex } from '../../server/geometry/quad.ts';

const fronts = makePad(3).sheets.map(({ front }) => front);
const backs = makePad(3).sheets.map(({ back }) => back);

/** No light but even white light, no noise: what is left is the drawing and the camera's place. */
function plainly(scene: Scene): Scene {
  const above = { x: 0, y: 0, z: 1e7 };
  return {
    ...scene,
    light: {
      ...scene.light,
      from: above,
      colour: [1, 1, 1],
      second: { from: above, colour: [1, 1, 1], part: 0 },
      exposure: 0.98,
      shadow: { ...scene.light.shadow, depth: 0 },
      vignette: 0,
    },
    noise: { read: 0, shot: 0 },
    toneCurve: 0,
    lift: 0,
    quality: 98,
  };
}

async function meanIn(jpeg: Buffer, [p, , r]: Quad<'photo'>): Promise<Lab> {
  const [x, y] = [(p.x + r.x) / 2, (p.y + r.y) / 2];
  const size = Math.max(2, Math.floor(Math.abs(r.x - p.x) / 4));
  const region = {
    left: Math.round(x - size / 2),
    top: Math.round(y - size / 2),
    width: size,
    height: size,
  };
  const bytes = await sharp(jpeg).extract(region).raw().toBuffer();
  const lab = labOfBytes(Uint8Array.from(bytes), 'srgb');
  const mean = (k: number): number =>
    lab.filter((_, at) => at % 3 === k).reduce((sum, v) => sum + v, 0) / (lab.length / 3);
  return { l: mean(0), a: mean(1), b: mean(2) };
}

describe('the camera', () => {
  it.each(['scanner', 'normal', 'hard'] as const)(
    '%s: holds every sheet whole, corners clockwise',
    (difficulty) => {
      for (let seed = 1; seed <= 25; seed++) {
        const scene = makeScene(seed, difficulty, fronts, { pixels: 800 });
        for (const turn of [scene, turnedOver(scene, backs, seed)]) {
          const view = viewOf(turn.camera, turn.width, turn.height);
          for (const { place } of turn.things) {
            const seen = cornersOf(place).map((p) =>
              applyHomography(view, p),
            ) as unknown as Quad<'photo'>;
            expect(isConvex(seen)).toBe(true);
            for (const { x, y } of seen) {
              expect(x).toBeGreaterThan(0);
              expect(x).toBeLessThan(turn.width);
              expect(y).toBeGreaterThan(0);
              expect(y).toBeLessThan(turn.height);
            }
          }
        }
      }
    },
  );

  it('sees a place on the table where the way back finds it again', () => {
    const scene = makeScene(9, 'hard', fronts, { pixels: 800 });
    const view = viewOf(scene.camera, scene.width, scene.height);
    const back = inverseHomography(view);
    for (const corner of scene.things.flatMap(({ place }) => cornersOf(place))) {
      const again = applyHomography(back, applyHomography(view, corner));
      expect(again.x).toBeCloseTo(corner.x, 6);
      expect(again.y).toBeCloseTo(corner.y, 6);
    }
  });

  it('lays no sheet over another', () => {
    for (let seed = 1; seed <= 40; seed++)
      for (const difficulty of ['scanner', 'normal', 'hard'] as const) {
        const { things } = makeScene(seed, difficulty, fronts);
        for (const [index, { place }] of things.entries())
          for (const other of things.slice(0, index))
            expect(apartOnTable(place, other.place)).toBe(true);
      }
  });
});

/** Two turned rectangles lie apart when one of their edges has all of the other on its far side. */
function apartOnTable(
  a: Parameters<typeof cornersOf>[0],
  b: Parameters<typeof cornersOf>[0],
): boolean {
  const beyond = (one: typeof a, other: typeof a): boolean => {
    const angle = (one.turn * Math.PI) / 180;
    const local = cornersOf(other).map(({ x, y }) => {
      const [dx, dy] = [x - one.x, y - one.y];
      return {
        x: dx * Math.cos(angle) + dy * Math.sin(angle),
        y: dy * Math.cos(angle) - dx * Math.sin(angle),
      };
    });
    const [w, h] = [one.width / 2, one.height / 2];
    return (
      local.every(({ x }) => x > w) ||
      local.every(({ x }) => x < -w) ||
      local.every(({ y }) => y > h) ||
      local.every(({ y }) => y < -h)
    );
  };
  return beyond(a, b) || beyond(b, a);
}

describe('a photo', () => {
  it('is the same, byte for byte, for the same scene', async () => {
    const scene = makeScene(4, 'normal', fronts.slice(0, 2), { pixels: 400 });
    const [one, two] = [await renderPhoto(scene), await renderPhoto(scene)];
    expect(one.jpeg.equals(two.jpeg)).toBe(true);
    expect(one.truth).toEqual(two.truth);
    const other = await renderPhoto(makeScene(5, 'normal', fronts.slice(0, 2), { pixels: 400 }));
    expect(other.jpeg.equals(one.jpeg)).toBe(false);
  });

  it('shows each plain colour at its true place: even light, read back from the file', async () => {
    const colours = [
      { name: 'teal', lab: { l: 34, a: -16, b: -12 } },
      { name: 'coral', lab: { l: 61, a: 40, b: 32 } },
      { name: 'sand', lab: { l: 84, a: 1, b: 24 } },
    ];
    const scene = plainly(
      squaresScene(6, 'normal', colours, { pixels: 900, surface: 'grey desk', chips: true }),
    );
    const { jpeg, truth } = await renderPhoto(scene);
    expect(truth.squares.map(({ name }) => name)).toEqual(['teal', 'coral', 'sand']);
    expect(truth.chips).toHaveLength(6);
    // Exposure 0.98 darkens by a hair; JPEG and rounding do the rest.
    for (const { lab, corners } of [...truth.squares, ...truth.chips, truth.white!])
      expect(difference(await meanIn(jpeg, corners), lab)).toBeLessThan(1);
  });

  it('tells of a smear the mean of what is covered, between its darkest and lightest', async () => {
    const scene = smearsScene(2, 'normal', [{ name: 'teal', lab: { l: 34, a: -16, b: -12 } }], {
      pixels: 600,
    });
    const { smears } = (await renderPhoto(scene)).truth;
    const [{ lab, range }] = smears as [(typeof smears)[number]];
    expect(range!.darkest.l).toBeLessThan(lab.l - 1);
    expect(range!.lightest.l).toBeGreaterThan(lab.l + 1);
    expect(difference(lab, { l: 34, a: -16, b: -12 })).toBeLessThan(8);
  });

  it('knows the quarter turn that brings a print upright', async () => {
    const scene = makeScene(3, 'hard', fronts, { pixels: 400 });
    const { sheets } = (await renderPhoto(scene)).truth;
    expect(new Set(sheets.map(({ up }) => up)).size).toBeGreaterThan(1);
    for (const { up, corners } of sheets) {
      // The own top left of a sheet that must be turned clockwise to stand up lies further anticlockwise.
      const [topLeft, , bottomRight] = corners;
      const angle =
        (Math.atan2(topLeft.y - bottomRight.y, topLeft.x - bottomRight.x) * 180) / Math.PI;
      const upright = -135;
      const turned = (((angle - upright + up) % 360) + 360) % 360;
      expect(Math.min(turned, 360 - turned)).toBeLessThan(40);
    }
  });

  it('is uneven, tinted and noisy by difficulty', async () => {
    const white = async (difficulty: Scene['difficulty']): Promise<number> => {
      const { jpeg, truth } = await renderPhoto(
        makeScene(12, difficulty, fronts.slice(0, 2), { pixels: 600 }),
      );
      return difference(await meanIn(jpeg, truth.white!.corners), truth.white!.lab);
    };
    const [scanner, hard] = [await white('scanner'), await white('hard')];
    expect(hard).toBeGreaterThan(scanner);
  });
});
