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

/** Fills whatever is narrower than `2 by + 1` pixels between parts of a mask: the ground between motifs. */
export function withoutGaps(mask: Mask, by: number): Mask {
  return grown(grown(mask, by, 1), by, 0);
}

/** Lets every pixel of a mask spread over a square of `2 by + 1` pixels. */
export function spreadOut(mask: Mask, by: number): Mask {
  return grown(mask, by, 1);
}

/** Grows the pixels of one value by a square of `2 by + 1` pixels: along the rows, then along the columns. */
function grown({ width, height, of }: Mask, by: number, value: 0 | 1): Mask {
  const across = new Uint8Array(of.length);
  // Pixels that may still be grown over, counted down from the last one of the value.
  for (let y = 0; y < height; y++) {
    const row = y * width;
    let left = 0;
    for (let x = 0; x < width; x++) {
      left = of[row + x] === value ? by + 1 : left - 1;
      if (left > 0) across[row + x] = 1;
    }
    left = 0;
    for (let x = width - 1; x >= 0; x--) {
      left = of[row + x] === value ? by + 1 : left - 1;
      if (left > 0) across[row + x] = 1;
    }
  }
  const out = new Uint8Array(of.length).fill(1 - value);
  const lefts = new Int32Array(width);
  for (const [first, last, step] of [
    [0, height, 1],
    [height - 1, -1, -1],
  ] as const) {
    lefts.fill(0);
    for (let y = first; y !== last; y += step) {
      const row = y * width;
      for (let x = 0; x < width; x++) {
        const left = across[row + x] === 1 ? by + 1 : lefts[x]! - 1;
        lefts[x] = left;
        if (left > 0) out[row + x] = value;
      }
    }
  }
  return { width, height, of: out };
}

/** The connected areas of a mask with at least so many pixels, largest first. */
export function regionsOf({ width, of }: Mask, least: number): Region[] {
  const left = Uint8Array.from(of);
  const queue = new Int32Array(of.length);
  const regions: Region[] = [];
  for (let start = 0; start < left.length; start++) {
    if (left[start] === 0) continue;
    left[start] = 0;
    queue[0] = start;
    let end = 1;
    let [low, top, high, bottom] = [Infinity, Infinity, -1, -1];
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
