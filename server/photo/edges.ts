import type { LabImage } from '../colour/lab.ts';

/** How fast and in which direction the colour changes at each pixel of the preview. */
export interface Edges {
  readonly width: number;
  readonly height: number;
  /** How steep an edge is at least, in CIELAB units a pixel. */
  readonly least: number;
  /** CIELAB units a pixel; 0 where no edge is. */
  readonly steep: Float32Array;
  /**
   * Direction of the change, two numbers a pixel: cosine and sine of its double, so that a step up and a step down are
   * alike. Both are 0 where no edge is.
   */
  readonly ways: Float32Array;
}

/**
 * The gradient of a colour picture: the direction in which all three channels together change most.
 *
 * Takes       the picture, and how steep an edge is at least.
 * Source      Di Zenzo (1986), A note on the gradient of a multi-image, doi:10.1016/0734-189X(86)90223-9.
 */
export function edgesOf({ width, height, lab }: LabImage, least: number): Edges {
  const steep = new Float32Array(width * height);
  const ways = new Float32Array(2 * width * height);
  const row = 3 * width;
  // No direction is steeper than both axes together.
  const flat = 4 * least * least;
  for (let y = 1; y < height - 1; y++)
    for (
      let pixel = y * width + 1, end = (y + 1) * width - 1, at = 3 * pixel;
      pixel < end;
      pixel++, at += 3
    ) {
      const xl = lab[at + 3]! - lab[at - 3]!;
      const xa = lab[at + 4]! - lab[at - 2]!;
      const xb = lab[at + 5]! - lab[at - 1]!;
      const yl = lab[at + row]! - lab[at - row]!;
      const ya = lab[at + row + 1]! - lab[at - row + 1]!;
      const yb = lab[at + row + 2]! - lab[at - row + 2]!;
      const xx = xl * xl + xa * xa + xb * xb;
      const yy = yl * yl + ya * ya + yb * yb;
      if (xx + yy <= flat) continue;
      const xy = xl * yl + xa * ya + xb * yb;
      const twice = xx - yy;
      const length = Math.sqrt(twice * twice + 4 * xy * xy);
      const change = Math.sqrt((xx + yy + length) / 8);
      if (change <= least) continue;
      steep[pixel] = change;
      if (length === 0) continue;
      ways[2 * pixel] = twice / length;
      ways[2 * pixel + 1] = (2 * xy) / length;
    }
  return { width, height, least, steep, ways };
}

/**
 * How well a line is borne out by edges of its direction: the part of it, from 0 to 1, along which an
 * edge stands within `reach` pixels.
 *
 * Takes       the edges, the ends of the line, the reach, and what part is asked for: a line that cannot come to it is
 *             not followed to its end.
 * Gives       the part, or -1 where it is less than was asked for.
 */
export function supportOf(
  { width, height, ways }: Edges,
  from: { readonly x: number; readonly y: number },
  to: { readonly x: number; readonly y: number },
  reach: number,
  wanted = 0,
): number {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const length = Math.sqrt(dx * dx + dy * dy);
  const nx = -dy / length;
  const ny = dx / length;
  const along2 = nx * nx - ny * ny;
  const across2 = 2 * nx * ny;
  const count = Math.max(8, Math.min(48, Math.round(length / 3)));
  const most = (1 - wanted) * count + 1e-9;
  let borne = 0;
  let asked = 0;
  for (let i = 0; i < count; i++) {
    const t = (i + 0.5) / count;
    const x = from.x + t * dx;
    const y = from.y + t * dy;
    if (x < 1 || y < 1 || x >= width - 1 || y >= height - 1) continue;
    asked++;
    for (let d = -reach; d <= reach; d++) {
      const px = (x + d * nx) | 0;
      const py = (y + d * ny) | 0;
      if (px < 0 || py < 0 || px >= width || py >= height) continue;
      const at = 2 * (py * width + px);
      if (ways[at]! * along2 + ways[at + 1]! * across2 > STRAIGHT) {
        borne++;
        break;
      }
    }
    if (asked - borne > most) return -1;
  }
  const part = asked === 0 ? 0 : borne / asked;
  return part < wanted ? -1 : part;
}

/** Cosine of twice the angle that an edge may be off the line: 17 degrees. */
const STRAIGHT = 0.83;
