import type { LabImage } from '../colour/lab.ts';

/** How fast and in which direction the colour changes at each pixel of the preview. */
export interface Edges {
  readonly width: number;
  readonly height: number;
  /** CIELAB units a pixel. */
  readonly steep: Float32Array;
  /** Direction of the change, doubled so that a step up and a step down are alike: cosine and sine. */
  readonly cos2: Float32Array;
  readonly sin2: Float32Array;
}

/**
 * The gradient of a colour picture: the direction in which all three channels together change most.
 *
 * Source      Di Zenzo (1986), A note on the gradient of a multi-image, doi:10.1016/0734-189X(86)90223-9.
 */
export function edgesOf({ width, height, lab }: LabImage): Edges {
  const steep = new Float32Array(width * height);
  const cos2 = new Float32Array(width * height);
  const sin2 = new Float32Array(width * height);
  const row = 3 * width;
  for (let y = 1; y < height - 1; y++)
    for (let pixel = y * width + 1, end = (y + 1) * width - 1; pixel < end; pixel++) {
      const at = 3 * pixel;
      let xx = 0;
      let xy = 0;
      let yy = 0;
      for (let c = at; c < at + 3; c++) {
        const dx = lab[c + 3]! - lab[c - 3]!;
        const dy = lab[c + row]! - lab[c - row]!;
        xx += dx * dx;
        xy += dx * dy;
        yy += dy * dy;
      }
      const twice = xx - yy;
      const length = Math.sqrt(twice * twice + 4 * xy * xy);
      steep[pixel] = Math.sqrt((xx + yy + length) / 8);
      if (length > 0) {
        cos2[pixel] = twice / length;
        sin2[pixel] = (2 * xy) / length;
      }
    }
  return { width, height, steep, cos2, sin2 };
}

/**
 * How well a line is borne out by edges of its direction: the part of it, from 0 to 1, along which an
 * edge stands within `reach` pixels.
 */
export function supportOf(
  { width, height, steep, cos2, sin2 }: Edges,
  from: { readonly x: number; readonly y: number },
  to: { readonly x: number; readonly y: number },
  reach: number,
  least: number,
): number {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const nx = (from.y - to.y) / length;
  const ny = (to.x - from.x) / length;
  const along2 = nx * nx - ny * ny;
  const across2 = 2 * nx * ny;
  const count = Math.max(8, Math.min(48, Math.round(length / 3)));
  let borne = 0;
  let asked = 0;
  for (let i = 0; i < count; i++) {
    const t = (i + 0.5) / count;
    const x = from.x + t * (to.x - from.x);
    const y = from.y + t * (to.y - from.y);
    if (x < 1 || y < 1 || x >= width - 1 || y >= height - 1) continue;
    asked++;
    for (let d = -reach; d <= reach; d++) {
      const px = (x + d * nx) | 0;
      const py = (y + d * ny) | 0;
      if (px < 0 || py < 0 || px >= width || py >= height) continue;
      const pixel = py * width + px;
      if (steep[pixel]! > least && cos2[pixel]! * along2 + sin2[pixel]! * across2 > STRAIGHT) {
        borne++;
        break;
      }
    }
  }
  return asked === 0 ? 0 : borne / asked;
}

/** Cosine of twice the angle that an edge may be off the line: 17 degrees. */
const STRAIGHT = 0.83;
