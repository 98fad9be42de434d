/** Raw pixels as a decoder gives them, three bytes each. */
export interface Raw {
  readonly width: number;
  readonly height: number;
  readonly rgb: Uint8Array;
}

/**
 * Turns a picture upright.
 *
 * Takes       the picture and its EXIF orientation, 1 to 8 (anything else is taken as 1).
 * Source      CIPA DC-008 (Exif 2.32), tag 0x0112: where row 0 and column 0 of the file belong.
 */
export function upright(raw: Raw, orientation: number): Raw {
  const { width, height, rgb } = raw;
  const steps = STEPS[orientation];
  if (steps === undefined) return raw;
  const { swap, flipX, flipY } = steps;
  const out = new Uint8Array(rgb.length);
  const outWidth = swap ? height : width;
  const outHeight = swap ? width : height;
  // In blocks, because a transposed walk over a large picture would miss the cache at each pixel.
  for (let top = 0; top < height; top += BLOCK)
    for (let left = 0; left < width; left += BLOCK) {
      const bottom = Math.min(height, top + BLOCK);
      const right = Math.min(width, left + BLOCK);
      for (let y = top; y < bottom; y++)
        for (let x = left; x < right; x++) {
          const across = swap ? y : x;
          const down = swap ? x : y;
          const toX = flipX ? outWidth - 1 - across : across;
          const toY = flipY ? outHeight - 1 - down : down;
          const from = 3 * (y * width + x);
          const to = 3 * (toY * outWidth + toX);
          out[to] = rgb[from]!;
          out[to + 1] = rgb[from + 1]!;
          out[to + 2] = rgb[from + 2]!;
        }
    }
  return { width: outWidth, height: outHeight, rgb: out };
}

const BLOCK = 32;

interface Steps {
  readonly swap: boolean;
  readonly flipX: boolean;
  readonly flipY: boolean;
}

const STEPS: Record<number, Steps | undefined> = {
  2: { swap: false, flipX: true, flipY: false },
  3: { swap: false, flipX: true, flipY: true },
  4: { swap: false, flipX: false, flipY: true },
  5: { swap: true, flipX: false, flipY: false },
  6: { swap: true, flipX: true, flipY: false },
  7: { swap: true, flipX: true, flipY: true },
  8: { swap: true, flipX: false, flipY: true },
};
