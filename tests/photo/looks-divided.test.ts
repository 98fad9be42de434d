import { describe, expect, it } from 'vitest';
import type { Quad } from '../../server/geometry/points.ts';
import { polygonArea } from '../../server/geometry/polygon.ts';
import { rectangleQuad } from '../../server/geometry/quad.ts';
import type { Candidate, Overview } from '../../server/photo/find-sheets.ts';
import { isGrownTogether, withoutBlocks } from '../../server/photo/looks-divided.ts';

const WIDTH = 240;
const HEIGHT = 240;

/** A table on which a dark square of 200 pixels is cut into n by n by light lines, table or not. */
function cutInto(n: number, isTable: boolean): { overview: Overview; block: Quad<'photo'> } {
  const lab = new Float32Array(3 * WIDTH * HEIGHT);
  const reached = new Uint8Array(WIDTH * HEIGHT);
  for (let y = 0; y < HEIGHT; y++)
    for (let x = 0; x < WIDTH; x++) {
      const [u, v] = [x - 20, y - 20];
      const inBlock = u >= 0 && v >= 0 && u < 200 && v < 200;
      const onLine = [u, v].some((along) =>
        Array.from({ length: n - 1 }, (_, k) => ((k + 1) * 200) / n).some(
          (cut) => Math.abs(along - cut) < 2,
        ),
      );
      const pixel = y * WIDTH + x;
      lab[3 * pixel] = inBlock && !onLine ? 35 : 80;
      if (!inBlock || (onLine && isTable)) reached[pixel] = 1;
    }
  const overview = {
    image: { width: WIDTH, height: HEIGHT, lab },
    table: { reached, roughness: 0.2 },
  } as unknown as Overview;
  return { overview, block: rectangleQuad<'photo'>(20, 20, 200, 200) };
}

const candidate = (corners: Quad<'photo'>): Candidate => ({
  corners,
  area: polygonArea(corners),
  fill: 1,
});

describe('sheets grown together that look like one', () => {
  it.each([2, 3])('are told by the table along the middle lines of %i by as many', (n) => {
    const { overview, block } = cutInto(n, true);
    expect(isGrownTogether(block, overview)).toBe(true);
  });

  it('are not seen in one sheet, nor in a print of squares', () => {
    for (const { overview, block } of [cutInto(1, true), cutInto(2, false)])
      expect(isGrownTogether(block, overview)).toBe(false);
  });

  it('do not tell the size of a sheet beside single ones', () => {
    const { overview, block } = cutInto(2, false);
    const [big, one] = [candidate(block), candidate(rectangleQuad<'photo'>(0, 0, 98, 98))];
    expect(withoutBlocks([big, one], overview)).toEqual([one]);
  });

  it('stay a sheet where no lines run through them, or no single one tells of another size', () => {
    const one = candidate(rectangleQuad<'photo'>(0, 0, 98, 98));
    const whole = cutInto(1, false);
    expect(withoutBlocks([candidate(whole.block), one], whole.overview)).toHaveLength(2);
    const cut = cutInto(2, false);
    expect(withoutBlocks([candidate(cut.block)], cut.overview)).toHaveLength(1);
  });
});
