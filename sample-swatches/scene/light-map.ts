import { applyHomography } from '../../server/geometry/homography.ts';
import type { Homography } from '../../server/geometry/homography.ts';
import type { Light, Scene } from './scene.ts';

const COLUMNS = 64;
const ROWS = 48;
/** The camera meters so that no white paper burns out. */
const BURNT = 0.98;

/**
 * The light over the picture, at 65 x 49 places: window and lamp by the square of their distance and the
 * slant of their rays, a soft shadow, the darker corners of the lens.
 */
export function lightMapOf(scene: Scene, table: Homography<'photo', 'table'>): Float32Array {
  const { light, width, height, camera } = scene;
  const middle = {
    x: camera.view.x + camera.view.width / 2,
    y: camera.view.y + camera.view.height / 2,
  };
  const map = new Float32Array(3 * (COLUMNS + 1) * (ROWS + 1));
  for (let row = 0; row <= ROWS; row++)
    for (let column = 0; column <= COLUMNS; column++) {
      const u = column / COLUMNS;
      const v = row / ROWS;
      const here = applyHomography(table, { x: u * width, y: v * height });
      const first = (1 - light.second.part) * falling(light.from, here, middle);
      const second = light.second.part * falling(light.second.from, here, middle);
      const shade =
        shadeAt(light, here) * (1 - light.vignette * ((u - 0.5) ** 2 + (v - 0.5) ** 2) * 2);
      for (let k = 0; k < 3; k++)
        map[3 * (row * (COLUMNS + 1) + column) + k] =
          shade * (first * light.colour[k]! + second * light.second.colour[k]!);
    }
  const brightest = map.reduce((most, value) => Math.max(most, value), 0);
  const by = Math.min(light.exposure, BURNT / brightest);
  return map.map((value) => value * by);
}

interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Light on a flat table by a small source, 1 at the middle of the view. */
function falling(from: Light['from'], here: Spot, middle: Spot): number {
  const far = (spot: Spot): number => Math.hypot(from.x - spot.x, from.y - spot.y, from.z);
  return (far(middle) / far(here)) ** 3;
}

function shadeAt({ shadow }: Light, here: Spot): number {
  const angle = (shadow.towards * Math.PI) / 180;
  const behind = (here.x - shadow.x) * Math.cos(angle) + (here.y - shadow.y) * Math.sin(angle);
  return 1 - shadow.depth / (1 + Math.exp((-4 * behind) / shadow.edge));
}

/** Multiplies a picture by the light map, smoothly between its places. */
export function shine(
  picture: Float32Array,
  width: number,
  height: number,
  map: Float32Array,
): void {
  const line = new Float32Array(3 * (COLUMNS + 1));
  for (let y = 0; y < height; y++) {
    const down = ((y + 0.5) * ROWS) / height;
    const row = Math.min(ROWS - 1, Math.floor(down));
    for (let k = 0; k < line.length; k++) {
      const upper = map[row * line.length + k]!;
      line[k] = upper + (down - row) * (map[(row + 1) * line.length + k]! - upper);
    }
    for (let x = 0; x < width; x++) {
      const across = ((x + 0.5) * COLUMNS) / width;
      const column = Math.min(COLUMNS - 1, Math.floor(across));
      const part = across - column;
      const at = 3 * (y * width + x);
      for (let k = 0; k < 3; k++) {
        const here = line[3 * column + k]!;
        picture[at + k]! *= here + part * (line[3 * column + 3 + k]! - here);
      }
    }
  }
}
