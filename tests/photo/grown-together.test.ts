import { describe, expect, it } from 'vitest';
import { edgesOf } from '../../server/photo/edges.ts';
import type { Candidate } from '../../server/photo/find-sheets.ts';
import { dividedBlock } from '../../server/photo/grown-together.ts';
import { regionsOf } from '../../server/photo/regions.ts';

const SIDE = 80;

/**
 * Dark sheets on light ground, the gaps between them taken for things too (motifs of the table cling to them), so that
 * all of them are one region.
 */
function block(
  columns: number,
  rows: number,
  gap: number,
  isThere = (): boolean => true,
): Candidate[] {
  const [left, top] = [20, 20];
  const across = columns * SIDE + (columns - 1) * gap;
  const down = rows * SIDE + (rows - 1) * gap;
  const [width, height] = [across + 40, down + 40];
  const lab = new Float32Array(3 * width * height);
  const of = new Uint8Array(width * height);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const [u, v] = [x - left, y - top];
      const inBlock = u >= 0 && v >= 0 && u < across && v < down;
      const column = Math.floor(u / (SIDE + gap));
      const row = Math.floor(v / (SIDE + gap));
      const onSheet =
        inBlock && u % (SIDE + gap) < SIDE && v % (SIDE + gap) < SIDE && isAt(column, row);
      lab[3 * (y * width + x)] = onSheet ? 40 : 80;
      if (inBlock && isAt(column, row)) of[y * width + x] = 1;
    }
  function isAt(column: number, row: number): boolean {
    return isThere() || column < columns - 1 || row < rows - 1;
  }
  const [region] = regionsOf({ width, height, of }, 100);
  return dividedBlock(region!, edgesOf({ width, height, lab }, 1), 1, 0);
}

const places = (cells: readonly Candidate[]): number[][] =>
  cells.map(({ corners }) =>
    [corners[0].x, corners[0].y, corners[2].x, corners[2].y].map(Math.round),
  );

describe('a block of sheets that look like one', () => {
  it('is divided evenly where hardly a gap lies between them', () => {
    expect(places(block(3, 1, 1))).toHaveLength(3);
    expect(places(block(2, 2, 1))).toHaveLength(4);
  });

  it.each([6, 10, 14])('has gaps of %i pixels where its shape says so', (gap) => {
    const cells = places(block(3, 1, gap));
    const wanted = [0, 1, 2].map((column) => {
      const x = 20 + column * (SIDE + gap);
      return [x, 20, x + SIDE, 20 + SIDE];
    });
    expect(cells).toHaveLength(3);
    cells.forEach((cell, i) =>
      cell.forEach((value, k) => expect(Math.abs(value - wanted[i]![k]!)).toBeLessThanOrEqual(1)),
    );
  });

  it('keeps the empty place in its corner empty', () => {
    expect(block(3, 2, 1, () => false)).toHaveLength(5);
  });

  it('is no block without lines through it', () => {
    const cells = block(1, 1, 0);
    expect(cells).toEqual([]);
  });
});
