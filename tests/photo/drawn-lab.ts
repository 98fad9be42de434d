import type { LabImage } from '../../server/colour/lab.ts';
import { contains } from '../../server/geometry/polygon.ts';
import type { Quad } from '../../server/geometry/points.ts';
import { random } from './scene.ts';

type Colour = readonly [l: number, a: number, b: number];

/** Plain quads on a plain ground, in CIELAB, with a little noise: the last one that covers a place is seen. */
export function drawnLab(
  width: number,
  height: number,
  ground: Colour,
  things: readonly { readonly corners: Quad<'photo'>; readonly colour: Colour }[],
  noise = 0.2,
): LabImage {
  const chance = random(5);
  const lab = new Float32Array(3 * width * height);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      for (const [dx, dy] of SUBPIXELS) {
        const place = { x: x + dx, y: y + dy };
        const seen = things.findLast(({ corners }) => contains(corners, place))?.colour ?? ground;
        seen.forEach((value, axis) => {
          lab[3 * (y * width + x) + axis]! += value / SUBPIXELS.length;
        });
      }
      for (let axis = 0; axis < 3; axis++)
        lab[3 * (y * width + x) + axis]! += noise * (2 * chance() - 1);
    }
  return { width, height, lab };
}

/** Nine places in each pixel: edges that slant come out as a lens draws them, not as stairs. */
const SUBPIXELS = [1, 3, 5].flatMap((x) => [1, 3, 5].map((y) => [x / 6, y / 6] as const));
