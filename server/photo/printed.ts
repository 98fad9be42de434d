import { labOfBytes } from '../colour/spaces.ts';
import type { Picture } from './picture.ts';

/**
 * Whether a picture shows a print rather than a bare table: clearly different colours, each over a good part
 * of it, and each in most parts of the picture, so that neither light nor one thing lying there makes them.
 *
 * Good up to  wood and plain boards (their colours lie close together); a patterned cloth passes for a print.
 */
export function isPrinted(preview: Picture): boolean {
  const { width, height, rgb, primaries } = preview;
  let printed = 0;
  for (let row = 0; row < PARTS; row++)
    for (let column = 0; column < PARTS; column++) {
      const bytes: number[] = [];
      for (let j = 0; j < SAMPLES; j++)
        for (let i = 0; i < SAMPLES; i++) {
          const x = Math.floor((width * (column + (i + 0.5) / SAMPLES)) / PARTS);
          const y = Math.floor((height * (row + (j + 0.5) / SAMPLES)) / PARTS);
          const at = 3 * (y * width + x);
          bytes.push(rgb[at]!, rgb[at + 1]!, rgb[at + 2]!);
        }
      if (farFromGround(labOfBytes(Uint8Array.from(bytes), primaries)) > OTHER) printed++;
    }
  return printed > MOST_PARTS * PARTS * PARTS;
}

const PARTS = 4;
const SAMPLES = 24;
/** Part of the samples that have to be of another colour than the ground. */
const OTHER = 0.06;
const MOST_PARTS = 0.6;
/** CIELAB units from the ground's middle colour: the grain of wood stays within. */
const CLEARLY = 20;

function farFromGround(lab: Float32Array): number {
  const count = lab.length / 3;
  const middle = [0, 1, 2].map((axis) => {
    const values = Float32Array.from({ length: count }, (_, i) => lab[3 * i + axis]!).sort();
    return values[count >> 1]!;
  });
  let far = 0;
  for (let at = 0; at < lab.length; at += 3)
    if (
      Math.hypot(lab[at]! - middle[0]!, lab[at + 1]! - middle[1]!, lab[at + 2]! - middle[2]!) >
      CLEARLY
    )
      far++;
  return far / count;
}
