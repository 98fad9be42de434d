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
  for (let y = 0; y < height; y++) {
    const up = y > 0 ? -row : 0;
    const down = y < height - 1 ? row : 0;
    for (let x = 0; x < width; x++) {
      const at = y * row + 3 * x;
      const left = x > 0 ? at - 3 : at;
      const right = x < width - 1 ? at + 3 : at;
      if (apart(lab, left, right) < limit && apart(lab, at + up, at + down) < limit)
        flat[y * width + x] = 1;
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
