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

/**
 * Takes away whatever is thinner than `2 by + 1` pixels: grid lines, threads, the mixed pixels between
 * motifs of a cloth. What stays keeps its outline.
 */
export function withoutThin(mask: Mask, by: number): Mask {
  return grown(grown(mask, by, 0), by, 1);
}

/** Grows the pixels of one value by a square of `2 by + 1` pixels. */
function grown({ width, height, of }: Mask, by: number, value: 0 | 1): Mask {
  const across = new Uint8Array(of.length).fill(1 - value);
  const out = new Uint8Array(of.length).fill(1 - value);
  for (let y = 0; y < height; y++) {
    let last = -Infinity;
    for (let x = 0; x < width + by; x++) {
      if (x < width && of[y * width + x] === value) last = x;
      if (x - by >= 0 && x - last <= 2 * by) across[y * width + x - by] = value;
    }
  }
  for (let x = 0; x < width; x++) {
    let last = -Infinity;
    for (let y = 0; y < height + by; y++) {
      if (y < height && across[y * width + x] === value) last = y;
      if (y - by >= 0 && y - last <= 2 * by) out[(y - by) * width + x] = value;
    }
  }
  return { width, height, of: out };
}

/** The connected areas of a mask with at least so many pixels, largest first. */
export function regionsOf({ width, of }: Mask, least: number): Region[] {
  const seen = Uint8Array.from(of);
  const queue = new Int32Array(of.length);
  const regions: Region[] = [];
  for (let start = 0; start < seen.length; start++) {
    if (seen[start] === 0) continue;
    let end = 0;
    const visit = (pixel: number): void => {
      if (seen[pixel] === 0) return;
      seen[pixel] = 0;
      queue[end++] = pixel;
    };
    let [left, top, right, bottom] = [Infinity, Infinity, -1, -1];
    visit(start);
    for (let at = 0; at < end; at++) {
      const pixel = queue[at]!;
      const x = pixel % width;
      const y = (pixel - x) / width;
      if (x < left) left = x;
      if (x > right) right = x;
      if (y < top) top = y;
      if (y > bottom) bottom = y;
      if (x > 0) visit(pixel - 1);
      if (x < width - 1) visit(pixel + 1);
      if (pixel >= width) visit(pixel - width);
      if (pixel + width < seen.length) visit(pixel + width);
    }
    if (end >= least) regions.push({ pixels: queue.slice(0, end), left, top, right, bottom });
  }
  return regions.sort((p, q) => q.pixels.length - p.pixels.length);
}
