/** A square picture in linear light (sRGB primaries, 1 is a perfect white), three numbers a pixel. */
export interface Raster {
  readonly side: number;
  readonly light: Float32Array;
}
