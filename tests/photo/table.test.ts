import { describe, expect, it } from 'vitest';
import { contains } from '../../server/geometry/polygon.ts';
import type { PhotoPoint } from '../../server/geometry/points.ts';
import { rectangleQuad } from '../../server/geometry/quad.ts';
import type { LabImage } from '../../server/colour/lab.ts';
import { ontoTable } from '../../server/photo/onto-table.ts';
import { findTable } from '../../server/photo/table.ts';
import { shadeOfTable } from '../../server/photo/table-colours.ts';
import { drawnLab } from './drawn-lab.ts';

const [WIDTH, HEIGHT] = [240, 180];
const GREY = [60, 0, 0] as const;
const SHEET = rectangleQuad<'photo'>(70, 50, 80, 80);
const INNER = rectangleQuad<'photo'>(95, 75, 30, 30);

const image = drawnLab(WIDTH, HEIGHT, GREY, [
  { corners: SHEET, colour: [40, 30, 10] },
  { corners: INNER, colour: GREY },
]);

/** Part of the places asked for that were taken for table. */
function bare(
  reached: Uint8Array,
  asked: (place: PhotoPoint) => boolean,
  { width, height }: LabImage = image,
): number {
  let [all, table] = [0, 0];
  for (let y = 4; y < height - 4; y++)
    for (let x = 4; x < width - 4; x++)
      if (asked({ x: x + 0.5, y: y + 0.5 })) {
        all++;
        table += reached[y * width + x]!;
      }
  return table / all;
}

describe('the table', () => {
  const table = findTable(image);
  const beside = rectangleQuad<'photo'>(66, 46, 88, 88);

  it('is what looks like the rim of the picture', () => {
    expect(bare(table.reached, (place) => !contains(beside, place))).toBeGreaterThan(0.99);
    expect(bare(table.reached, (place) => contains(SHEET, place))).toBe(0);
  });

  it('is not what has its colour inside a sheet, which no way leads to', () => {
    expect(bare(table.reached, (place) => contains(INNER, place))).toBe(0);
  });

  it('is told under light that falls off across the picture', () => {
    const lab = image.lab.slice();
    for (let pixel = 0; pixel < WIDTH * HEIGHT; pixel++) {
      const by = 1 - (0.3 * (pixel % WIDTH)) / WIDTH;
      lab[3 * pixel] = (lab[3 * pixel]! + 16) * by - 16;
      lab[3 * pixel + 1]! *= by;
      lab[3 * pixel + 2]! *= by;
    }
    const { reached } = findTable({ ...image, lab });
    expect(bare(reached, (place) => !contains(beside, place))).toBeGreaterThan(0.98);
    expect(bare(reached, (place) => contains(SHEET, place))).toBe(0);
  });

  it('is not a sheet that reaches out of the picture on one side', () => {
    const out = rectangleQuad<'photo'>(-20, 50, 80, 60);
    const { reached } = findTable(
      drawnLab(WIDTH, HEIGHT, GREY, [{ corners: out, colour: [70, -20, 20] }]),
    );
    expect(bare(reached, (place) => contains(out, place))).toBe(0);
  });

  it('is told in the shade, with how deep the shade is', () => {
    expect(shadeOfTable(table.colours, [60, 0, 0], 20, 20)).toBeGreaterThan(0.95);
    // Light scales L + 16: 0.8 of it is left.
    expect(shadeOfTable(table.colours, [0.8 * 76 - 16, 0, 0], 20, 20)).toBeCloseTo(0.82, 1);
    expect(shadeOfTable(table.colours, [40, 30, 10], 20, 20)).toBe(0);
    expect(shadeOfTable(table.colours, [85, 0, 0], 20, 20)).toBe(0);
  });

  it('draws the sides of a rough outline onto where it begins', () => {
    const rough = rectangleQuad<'photo'>(72, 48, 76, 83);
    ontoTable(rough, table.reached, image).forEach(({ x, y }, at) => {
      expect(Math.abs(x - SHEET[at]!.x)).toBeLessThan(2.5);
      expect(Math.abs(y - SHEET[at]!.y)).toBeLessThan(2.5);
    });
  });
});
