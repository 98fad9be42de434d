import type { LabImage } from '../colour/lab.ts';

/** The outlines of a print: how strong each pixel's edge is, and where it points. */
export interface Outlines {
  readonly width: number;
  readonly height: number;
  /** In [0, 1], whatever the colours on either side: 1 where shapes plainly meet. */
  readonly strength: Float32Array;
  /** Direction from dark to light, in [0, 2 pi), x right and y down. */
  readonly towardsLight: Float32Array;
}

/**
 * Finds the outlines of the printed shapes, as strong in a quiet colourway as in a loud one.
 *
 * The edge of a pixel (Sobel's differences in l, a, b together) is measured against the stronger edges
 * of the same picture, so colours and light drop out; what noise alone would give counts as nothing.
 *
 * Takes       a flat picture.
 */
export function outlinesOf({ width, height, lab }: LabImage): Outlines {
  const pixels = width * height;
  const slope = new Float32Array(pixels);
  const towardsLight = new Float32Array(pixels);
  const gradient = [0, 0];
  for (let y = 1; y < height - 1; y++)
    for (let x = 1; x < width - 1; x++) {
      const at = 3 * (y * width + x);
      let sum = 0;
      for (let axis = 2; axis >= 0; axis--) {
        sobel(lab, at + axis, 3 * width, gradient);
        sum += gradient[0]! ** 2 + gradient[1]! ** 2;
      }
      slope[y * width + x] = Math.sqrt(sum);
      const angle = Math.atan2(gradient[1]!, gradient[0]!);
      towardsLight[y * width + x] = angle < 0 ? angle + 2 * Math.PI : angle;
    }
  const level = Math.max(FAINTEST, PART_OF_STRONG * percentile(slope, 0.98));
  const strength = slope.map((value) => value ** 4 / (value ** 4 + level ** 4));
  return { width, height, strength, towardsLight };
}

/** An edge counts half when it has this part of the slope of the picture's strong edges ... */
const PART_OF_STRONG = 0.3;
/** ... and at least this slope, in CIELAB units a pixel. */
const FAINTEST = 1.5;

/** Differences across and down over two pixels, smoothed along the edge, in units a pixel. */
function sobel(lab: Float32Array, at: number, row: number, out: number[]): void {
  const nw = lab[at - row - 3]!;
  const n = lab[at - row]!;
  const ne = lab[at - row + 3]!;
  const w = lab[at - 3]!;
  const e = lab[at + 3]!;
  const sw = lab[at + row - 3]!;
  const s = lab[at + row]!;
  const se = lab[at + row + 3]!;
  out[0] = (ne + 2 * e + se - nw - 2 * w - sw) / 8;
  out[1] = (sw + 2 * s + se - nw - 2 * n - ne) / 8;
}

function percentile(values: Float32Array, part: number): number {
  const every = Math.max(1, Math.floor(values.length / 8000));
  const sample = values.filter((_, index) => index % every === 0).sort();
  return sample[Math.floor(part * (sample.length - 1))] ?? 0;
}
