import { linearSrgbOf } from '../colour/spaces.ts';
import type { LightTie } from './flatten.ts';
import type { Light3 } from './tie-by-chips.ts';

/**
 * Ties light to another photo's colours, a line of pixels at a time. The tie is smooth, so it is asked for once on
 * a grid of the cube roots of light (about even steps for the eye) and interpolated between eight neighbours.
 */
export function lightTie(tie: (light: Light3) => Light3): LightTie {
  const cube = cubeOf(tie);
  const from: [number, number, number] = [0, 0, 0];
  return (light, primaries) => {
    for (let at = 0; at < light.length; at += 3) {
      from[0] = light[at]!;
      from[1] = light[at + 1]!;
      from[2] = light[at + 2]!;
      readCube(cube, primaries === 'srgb' ? from : linearSrgbOf(from, primaries), light, at);
    }
  };
}

/** Steps along each axis; between two of them a tie bends by less than a tenth of a CIELAB unit. */
const STEPS = 24;
const SIDE = STEPS + 1;
/** Cube roots of light that the grid spans: somewhat below nothing, for colours beyond sRGB, to above white. */
const LOW = -0.3;
const HIGH = 1.15;

/** Cube roots of the tied light. */
function cubeOf(tie: (light: Light3) => Light3): Float32Array {
  const cube = new Float32Array(3 * SIDE ** 3);
  const value = (step: number): number => (LOW + ((HIGH - LOW) * step) / STEPS) ** 3;
  let at = 0;
  for (let r = 0; r < SIDE; r++)
    for (let g = 0; g < SIDE; g++)
      for (let b = 0; b < SIDE; b++) {
        const to = tie([value(r), value(g), value(b)]);
        for (let k = 0; k < 3; k++) cube[at++] = Math.cbrt(to[k]!);
      }
  return cube;
}

function readCube(cube: Float32Array, [r, g, b]: Light3, out: Float32Array, to: number): void {
  const u = along(r);
  const v = along(g);
  const w = along(b);
  const i = Math.min(STEPS - 1, u | 0);
  const j = Math.min(STEPS - 1, v | 0);
  const k = Math.min(STEPS - 1, w | 0);
  const fu = u - i;
  const fv = v - j;
  const fw = w - k;
  const first = 3 * ((i * SIDE + j) * SIDE + k);
  const down = 3 * SIDE;
  const deep = 3 * SIDE * SIDE;
  for (let c = 0; c < 3; c++) {
    const p = first + c;
    const q = p + deep;
    const low = mix(
      mix(cube[p]!, cube[p + 3]!, fw),
      mix(cube[p + down]!, cube[p + down + 3]!, fw),
      fv,
    );
    const high = mix(
      mix(cube[q]!, cube[q + 3]!, fw),
      mix(cube[q + down]!, cube[q + down + 3]!, fw),
      fv,
    );
    const root = mix(low, high, fu);
    out[to + c] = root * root * root;
  }
}

function along(light: number): number {
  const at = ((Math.cbrt(light) - LOW) / (HIGH - LOW)) * STEPS;
  return at < 0 ? 0 : at > STEPS ? STEPS : at;
}

function mix(p: number, q: number, part: number): number {
  return p + part * (q - p);
}
