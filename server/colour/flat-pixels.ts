import type { LabImage } from './lab.ts';

/**
 * Which pixels lie inside a printed shape and not on its soft border, where two colours mix.
 *
 * A pixel is flat when the colours on either side of it agree, across and down. That spares the
 * middle of thin lines too, where both neighbours differ from the pixel but not from each other.
 *
 * Takes       a flat picture and the noise of one pixel (one sigma, CIELAB units).
 * Gives       one byte a pixel: 1 flat, 0 mixed.
 */
export function flatPixels({ width, height, lab }: LabImage, noise: number): Uint8Array {
  const flat = new Uint8Array(width * height);
  const limit = (BORDER_STEP + NOISE_STEPS * noise) ** 2;
  const row = 3 * width;
  for (let y = 0, pixel = 0; y < height; y++) {
    const up = y > 0 ? -row : 0;
    const down = y < height - 1 ? row : 0;
    // Beyond the rim a row goes on as it ends.
    let at = y * row;
    const last = at + row - 3;
    let leftL = lab[at]!;
    let leftA = lab[at + 1]!;
    let leftB = lab[at + 2]!;
    let hereL = leftL;
    let hereA = leftA;
    let hereB = leftB;
    for (; at <= last; at += 3, pixel++) {
      const right = at < last ? at + 3 : at;
      const rightL = lab[right]!;
      const rightA = lab[right + 1]!;
      const rightB = lab[right + 2]!;
      const l = leftL - rightL;
      const a = leftA - rightA;
      const b = leftB - rightB;
      if (l * l + a * a + b * b < limit && apart(lab, at + up, at + down) < limit) flat[pixel] = 1;
      leftL = hereL;
      leftA = hereA;
      leftB = hereB;
      hereL = rightL;
      hereA = rightA;
      hereB = rightB;
    }
  }
  return flat;
}

/** Across a soft border the colour moves by more than this from one neighbour to the next but one. */
const BORDER_STEP = 4;
/** Two noisy neighbours differ by sqrt(2) times the noise in each of three channels; most by less than this. */
const NOISE_STEPS = 2.5;

function apart(lab: Float32Array, p: number, q: number): number {
  const l = lab[p]! - lab[q]!;
  const a = lab[p + 1]! - lab[q + 1]!;
  const b = lab[p + 2]! - lab[q + 2]!;
  return l * l + a * a + b * b;
}
