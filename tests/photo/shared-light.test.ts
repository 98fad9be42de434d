import { describe, expect, it } from 'vitest';
import { bytesOfLinear } from '../../server/colour/spaces.ts';
import type { Quad } from '../../server/geometry/points.ts';
import { rectangleQuad } from '../../server/geometry/quad.ts';
import { evenLight, lightAt, lightOnTable } from '../../server/photo/light.ts';
import type { LightField } from '../../server/photo/light.ts';
import type { Picture } from '../../server/photo/picture.ts';

const [WIDTH, HEIGHT] = [480, 360];

/** Light that falls off downwards by a third. */
const falling = (y: number): number => 1 - y / HEIGHT / 3;

function lit(paint: (x: number, y: number) => readonly [number, number, number]): Picture {
  const light = new Float32Array(3 * WIDTH * HEIGHT);
  for (let y = 0; y < HEIGHT; y++)
    for (let x = 0; x < WIDTH; x++)
      paint(x, y).forEach((value, k) => (light[3 * (y * WIDTH + x) + k] = value * falling(y)));
  return { width: WIDTH, height: HEIGHT, rgb: bytesOfLinear(light), primaries: 'srgb' };
}

/** How far off, in parts, the light at places is against the light in the middle. */
function worst(field: LightField, places: readonly (readonly [number, number])[]): number {
  const middle = lightAt(field, WIDTH / 2, HEIGHT / 2)[1];
  return Math.max(
    ...places.map(([x, y]) =>
      Math.abs(lightAt(field, x, y)[1] / middle / (falling(y) / falling(HEIGHT / 2)) - 1),
    ),
  );
}

const CORNERS = [
  [40, 40],
  [440, 40],
  [40, 320],
  [440, 320],
] as const;

describe('the light', () => {
  it('is not read off the boards of wood, dark and pale by turns, where papers lie on it', () => {
    const [pale, dark] = [
      [0.61, 0.38, 0.19],
      [0.34, 0.17, 0.07],
    ] as const;
    const boards = [0.9, 0.2, 0.6, 0.1, 0.3, 0.2, 0.5, 0.1];
    const corners: Quad<'photo'>[] = [
      rectangleQuad(30, 60, 190, 240),
      rectangleQuad(260, 60, 190, 240),
    ];
    const onPaper = (x: number, y: number): boolean =>
      y >= 60 && y < 300 && ((x >= 30 && x < 220) || (x >= 260 && x < 450));
    const wood = lit((x, y) => {
      if (onPaper(x, y)) return (x + y) % 48 < 20 ? [0.1, 0.3, 0.32] : [0.8, 0.75, 0.6];
      const part = 0.7 * boards[Math.floor(x / 60)]! + 0.12 * Math.sin(y / 5);
      const [r, g, b] = [0, 1, 2].map((k) => pale[k]! ** (1 - part) * dark[k]! ** part);
      return [r!, g!, b!];
    });
    const table = new Uint8Array(WIDTH * HEIGHT).map((_value, at) =>
      onPaper(at % WIDTH, Math.floor(at / WIDTH)) ? 0 : 1,
    );
    const known = lightOnTable(wood, table);
    expect(worst(known, CORNERS)).toBeGreaterThan(0.1);
    expect(worst(lightOnTable(wood, table, null, { corners, known }), CORNERS)).toBeLessThan(0.03);
  });

  it('is read off the plain parts of two papers where no table shows', () => {
    const papers = lit((x, y) => {
      const striped = (x + y) % 48 < 20;
      if (x < WIDTH / 2) return striped ? [0.1, 0.3, 0.32] : [0.8, 0.75, 0.6];
      return striped ? [0.7, 0.25, 0.2] : [0.3, 0.35, 0.4];
    });
    const none = new Uint8Array(WIDTH * HEIGHT);
    const corners: Quad<'photo'>[] = [
      rectangleQuad(4, 4, WIDTH / 2 - 8, HEIGHT - 8),
      rectangleQuad(WIDTH / 2 + 4, 4, WIDTH / 2 - 8, HEIGHT - 8),
    ];
    const known = evenLight(papers);
    expect(worst(known, CORNERS)).toBeGreaterThan(0.1);
    const field = lightOnTable(papers, none, null, { corners, known });
    expect(worst(field, CORNERS)).toBeLessThan(0.02);
    expect(field.error).toBeLessThan(known.error);
    const one = lightOnTable(papers, none, null, { corners: corners.slice(0, 1), known });
    expect(one.error).toBe(known.error);
  });
});
