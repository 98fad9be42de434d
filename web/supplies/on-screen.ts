import type { LabTriple } from '../../server/contract/values.ts';

/**
 * A colour in CIELAB (D65) for the screen, as CSS. CSS's own `lab()` stands under D50 and would show another.
 *
 * Source  sRGB: IEC 61966-2-1 (its matrix from XYZ); Lab: CIE 15.
 */
export function onScreen([l, a, b]: LabTriple): string {
  const height = (l + 16) / 116;
  const x = 0.9505 * light(height + a / 500);
  const y = light(height);
  const z = 1.089 * light(height - b / 200);
  const red = 3.2406 * x - 1.5372 * y - 0.4986 * z;
  const green = -0.9689 * x + 1.8758 * y + 0.0415 * z;
  const blue = 0.0557 * x - 0.204 * y + 1.057 * z;
  return `color(srgb-linear ${[red, green, blue].map((part) => part.toFixed(4)).join(' ')})`;
}

function light(t: number): number {
  return t > 6 / 29 ? t ** 3 : 3 * (6 / 29) ** 2 * (t - 4 / 29);
}
