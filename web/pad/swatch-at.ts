/** Widths come in steps, so that places of nearly the same size share a picture. */
const STEP = 120;
/** A swatch is about this wide; no more can be had of it. */
const WHOLE = 840;

/** A swatch as fine as this screen shows it at so many pixels of the page. */
export function swatchAt(address: string, pixels: number): string {
  const width = Math.ceil((pixels * Math.min(2, devicePixelRatio)) / STEP) * STEP;
  return width > WHOLE ? address : `${address}&width=${width}`;
}
