import { workRoom } from '../colour/work-room.ts';

/** One connected area of a mask. */
export interface Region {
  readonly pixels: Int32Array;
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export interface Mask {
  readonly width: number;
  readonly height: number;
  readonly of: Uint8Array;
}

const queueRoom = workRoom((length) => new Int32Array(length));

/** The connected areas of a mask with at least so many pixels, largest first. */
export function regionsOf({ width, of }: Mask, least: number): Region[] {
  const left = of.slice();
  const queue = queueRoom(of.length);
  const regions: Region[] = [];
  for (let start = 0; start < left.length; start++) {
    if (left[start] === 0) continue;
    left[start] = 0;
    queue[0] = start;
    let end = 1;
    let low = Infinity;
    let top = Infinity;
    let high = -1;
    let bottom = -1;
    for (let at = 0; at < end; at++) {
      const pixel = queue[at]!;
      const x = pixel % width;
      const y = (pixel - x) / width;
      if (x < low) low = x;
      if (x > high) high = x;
      if (y < top) top = y;
      if (y > bottom) bottom = y;
      if (x > 0 && left[pixel - 1] === 1) {
        left[pixel - 1] = 0;
        queue[end++] = pixel - 1;
      }
      if (x < width - 1 && left[pixel + 1] === 1) {
        left[pixel + 1] = 0;
        queue[end++] = pixel + 1;
      }
      if (pixel >= width && left[pixel - width] === 1) {
        left[pixel - width] = 0;
        queue[end++] = pixel - width;
      }
      if (pixel + width < left.length && left[pixel + width] === 1) {
        left[pixel + width] = 0;
        queue[end++] = pixel + width;
      }
    }
    if (end >= least)
      regions.push({ pixels: queue.slice(0, end), left: low, top, right: high, bottom });
  }
  return regions.sort((p, q) => q.pixels.length - p.pixels.length);
}
