import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyHomography, homographyOf } from '../../server/geometry/homography.ts';
import type { Quad } from '../../server/geometry/points.ts';
import { rectangleQuad } from '../../server/geometry/quad.ts';
import { offSize, tableMetric } from '../../server/photo/table-metric.ts';

/** Six sheets of 150 x 150 mm, seen by a camera that looks a little aslant (a trapezium), in pixels. */
function seen(lean: number, size = { width: 150, height: 150 }): Quad<'photo'>[] {
  const table = rectangleQuad<'sheet'>(0, 0, 600, 450);
  const view: Quad<'photo'> = [
    { x: lean * 600, y: 0 },
    { x: 600 - lean * 600, y: 0 },
    { x: 600, y: 440 },
    { x: 0, y: 440 },
  ];
  const toPhoto = homographyOf(table, view);
  return [0, 1, 2, 3, 4, 5].map(
    (index) =>
      rectangleQuad<'sheet'>(
        20 + 180 * (index % 3),
        20 + 200 * Math.floor(index / 3),
        size.width,
        size.height,
      ).map((corner) => applyHomography(toPhoto, corner)) as unknown as Quad<'photo'>,
  );
}

const wider = (quad: Quad<'photo'>, by: number): Quad<'photo'> =>
  quad.map((corner, at) => ({
    x: corner.x + (at === 1 || at === 2 ? by : 0),
    y: corner.y,
  })) as unknown as Quad<'photo'>;

describe('how large a sheet is at each place of the picture', () => {
  it('is told by sheets seen aslant to half a percent of a side', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 0.05, noNaN: true }), (lean) => {
        const sheets = seen(lean);
        const metric = tableMetric(sheets, 1)!;
        for (const sheet of sheets)
          for (const off of offSize(metric, sheet, 1)) expect(Math.abs(off)).toBeLessThan(0.005);
      }),
      { numRuns: 20 },
    );
  });

  it('tells by how much one is too wide', () => {
    const sheets = seen(0.02);
    const [upper, right, lower, left] = offSize(tableMetric(sheets, 1)!, wider(sheets[4]!, 6), 1);
    const width = sheets[4]![1].x - sheets[4]![0].x;
    for (const off of [upper!, lower!]) expect(Math.abs(off - 6 / width)).toBeLessThan(0.006);
    for (const off of [right!, left!]) expect(Math.abs(off)).toBeLessThan(0.006);
  });

  it('is not led astray by one outline that is wrong', () => {
    const sheets = seen(0.02);
    const metric = tableMetric([...sheets.slice(0, 5), wider(sheets[5]!, 12)], 1)!;
    for (const off of offSize(metric, sheets[5]!, 1)) expect(Math.abs(off)).toBeLessThan(0.01);
  });

  it('knows which way round an oblong sheet lies', () => {
    const sheets = seen(0.01, { width: 105, height: 148 });
    const metric = tableMetric(sheets, 148 / 105)!;
    for (const off of offSize(metric, sheets[2]!, 148 / 105))
      expect(Math.abs(off)).toBeLessThan(0.006);
  });

  it('needs three sheets', () => {
    expect(tableMetric(seen(0).slice(0, 2), 1)).toBeNull();
  });
});
