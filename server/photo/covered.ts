import type { LabImage } from '../colour/lab.ts';
import type { Lab } from '../colour/lab.ts';

/**
 * Of a smear on white card, only the pixels that ink covers, packed row by row: their places are lost,
 * their colours stay. `card` is what the bare card looks like. The picture whole when next to nothing is covered.
 */
export function coveredOf(image: LabImage, card: Lab): LabImage {
  const { width, height, lab } = image;
  const inked = new Uint8Array(width * height);
  for (let pixel = 0; pixel < inked.length; pixel++) {
    const l = lab[3 * pixel]! - card.l;
    const a = lab[3 * pixel + 1]! - card.a;
    const b = lab[3 * pixel + 2]! - card.b;
    if (l * l + a * a + b * b > INKED * INKED) inked[pixel] = 1;
  }
  const kept: number[] = [];
  for (let y = 1; y < height - 1; y++)
    for (let x = 1; x < width - 1; x++) {
      const pixel = y * width + x;
      // At the rim of the ink a pixel shows card too.
      const whole =
        inked[pixel] === 1 &&
        inked[pixel - 1] === 1 &&
        inked[pixel + 1] === 1 &&
        inked[pixel - width] === 1 &&
        inked[pixel + width] === 1;
      if (whole) kept.push(pixel);
    }
  const across = Math.floor(Math.sqrt(kept.length));
  if (across < 6) return image;
  const packed = new Float32Array(3 * across * across);
  for (let at = 0; at < across * across; at++)
    packed.set(lab.subarray(3 * kept[at]!, 3 * kept[at]! + 3), 3 * at);
  return { width: across, height: across, lab: packed };
}

/** Distance from bare card, in CIELAB units, from which a pixel counts as inked. */
const INKED = 9;
