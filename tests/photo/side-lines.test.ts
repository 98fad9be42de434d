import { describe, expect, it } from 'vitest';
import { rectangleQuad } from '../../server/geometry/quad.ts';
import { smoothLab } from '../../server/photo/smooth-lab.ts';
import type { Picture } from '../../server/photo/picture.ts';
import { edgesBeside, guessesOf } from '../../server/photo/side-lines.ts';
import { tableOutside } from '../../server/photo/table-outside.ts';
import { findTable } from '../../server/photo/table.ts';
import { random } from './scene.ts';

const [WIDTH, HEIGHT] = [260, 270];

type Grey = (x: number, y: number) => number;

/** Where in a pixel and its neighbours light comes from, as a lens spreads it: most from the middle. */
const SPREAD = Array.from({ length: 6 }, (_, k) => {
  const u = (k + 0.5) / 6;
  return 0.5 + 1.25 * (u < 0.5 ? Math.sqrt(2 * u) - 1 : 1 - Math.sqrt(2 - 2 * u));
});

/** A grey picture through a lens, with the noise of a camera. */
function picture(grey: Grey, noise = 1): Picture {
  const chance = random(3);
  const rgb = new Uint8Array(3 * WIDTH * HEIGHT);
  for (let y = 0; y < HEIGHT; y++)
    for (let x = 0; x < WIDTH; x++) {
      let sum = 0;
      for (const dx of SPREAD) for (const dy of SPREAD) sum += grey(x + dx, y + dy);
      const value = Math.round(sum / SPREAD.length ** 2 + noise * (2 * chance() - 1));
      rgb.fill(value, 3 * (y * WIDTH + x), 3 * (y * WIDTH + x) + 3);
    }
  return { width: WIDTH, height: HEIGHT, rgb, primaries: 'srgb' };
}

/** A dark sheet on a light table; its right side runs from (200, 50) to (200 + slant, 250). */
const sheet =
  (at: number, slant: number): Grey =>
  (x, y) =>
    x > 60 && x < at + (slant * (y - 50)) / 200 && y > 50 && y < 250 ? 50 : 170;

describe('the line on which a side lies', () => {
  it.each([
    [198, 0],
    [199.6, 2.5],
    [203.25, -3],
  ])('is found to a quarter of a pixel on a plain edge at %d that slants by %d', (at, slant) => {
    const [, line] = edgesBeside(
      picture(sheet(at, slant)),
      { x: 201, y: 50 },
      { x: 201, y: 250 },
      6,
    );
    expect(Math.abs(line!.from.x - at)).toBeLessThan(0.25);
    expect(Math.abs(line!.to.x - at - slant)).toBeLessThan(0.25);
    expect(line!.borne).toBeGreaterThan(0.95);
  });

  it('is not drawn off by a motif beside it', () => {
    const beside: Grey = (x, y) => (Math.hypot(x - 196, y - 120) < 5 ? 20 : sheet(203, 0)(x, y));
    const [, line] = edgesBeside(picture(beside), { x: 201, y: 50 }, { x: 201, y: 250 }, 6);
    expect(Math.abs(line!.from.x - 203)).toBeLessThan(0.25);
    expect(Math.abs(line!.to.x - 203)).toBeLessThan(0.25);
  });

  it('is borne out by nothing where the table is bare', () => {
    const [, line] = edgesBeside(
      picture(() => 170),
      { x: 201, y: 50 },
      { x: 201, y: 250 },
      6,
    );
    expect(line!.borne).toBeLessThan(0.6);
  });

  it('may be one of several: the sheet’s own, and that of a stripe in it', () => {
    const striped: Grey = (x, y) =>
      x > 190 && x < 193 && y > 50 && y < 250 ? 30 : sheet(200, 0)(x, y);
    const outs = guessesOf(picture(striped), { x: 197, y: 50 }, { x: 197, y: 250 }, 10)
      .filter(({ borne }) => borne > 0.9)
      .map(({ out }) => out);
    for (const wanted of [3, -4, -7])
      expect(Math.min(...outs.map((out) => Math.abs(out - wanted)))).toBeLessThan(0.6);
  });
});

describe('table outside a line and none inside', () => {
  const seen = picture(sheet(200, 0));
  const { colours } = findTable(smoothLab(seen));
  const outside = (x: number): number =>
    tableOutside(seen, { from: { x, y: 50 }, to: { x, y: 250 }, borne: 1 }, colours, 1);

  it('is seen all along the side of a sheet, and along no line on table or sheet alone', () => {
    expect(outside(200)).toBeGreaterThan(0.95);
    expect(outside(150)).toBe(0);
    expect(outside(240)).toBe(0);
  });

  it('is seen along each side of it', () => {
    const corners = rectangleQuad<'photo'>(60, 50, 140, 200);
    corners.forEach((from, side) => {
      const to = corners[(side + 1) % 4]!;
      expect(tableOutside(seen, { from, to, borne: 1 }, colours, 1)).toBeGreaterThan(0.95);
    });
  });
});
