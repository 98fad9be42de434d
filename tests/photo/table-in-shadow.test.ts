import { describe, expect, it } from 'vitest';
import { shrink } from '../../server/images/shrink.ts';
import type { OpenedPixels } from '../../server/photo/picture.ts';
import { overlook, overlookShadow } from '../../server/photo/find-sheets.ts';
import type { Overview } from '../../server/photo/find-sheets.ts';
import { findThings } from '../../server/photo/find-things.ts';
import { SHEET, laidOut } from './laid-out.ts';
import { photograph } from './scene.ts';
import type { Scene, Seen } from './scene.ts';
import { TABLES } from './scene-papers.ts';

const ASK = { look: 'sheets', sheetMillimetres: { width: SHEET, height: SHEET } } as const;

function opened({ width, height, rgb }: Seen): OpenedPixels {
  const full = { width, height, rgb, primaries: 'srgb' } as const;
  return { full, preview: { ...shrink(full, 1), primaries: 'srgb' }, scale: 1 };
}

const scene = (seed: number, table = TABLES.whiteBoard()): Scene =>
  laidOut({
    columns: 2,
    rows: 2,
    gap: 18,
    turn: 2,
    table,
    seed,
    width: 560,
    prints: ['stripes', 'dots', 'bouquet'],
    cast: 0,
  });

/** The same table, a part of it in the shadow of a window bar: the edge of the shadow is a slope across the picture. */
function inShadow(laid: Scene, depth: number, wide: number): Scene {
  return {
    ...laid,
    light: (u, v) => {
      const across = Math.min(1, Math.max(0, (u + 0.35 * v - 0.62) / wide));
      const [r, g, b] = laid.light(u, v);
      const by = 1 - depth * across;
      return [r * by, g * by, b * by];
    },
  };
}

const wholeIn = ({ candidates }: Overview): number =>
  candidates.filter(({ area }) => area > 20_000).length;

describe('a table on both sides of the edge of a shadow', () => {
  const lit = scene(1);

  it('is one table: sheets that the edge had caught, and seemed cut off, are whole', () => {
    const first = overlook(opened(photograph(inShadow(lit, 0.4, 0.04))));
    expect(wholeIn(first)).toBeLessThan(4);
    expect(first.cutOff.some(({ pixels }) => pixels.length > 20_000)).toBe(true);
    const second = overlookShadow(first)!;
    expect(wholeIn(second)).toBeGreaterThan(wholeIn(first));
    expect(second.cutOff).toEqual([]);
    expect(second.table.share).toBeGreaterThan(first.table.share);
  });

  it('lets all of its sheets be found, in their places or unsure', () => {
    const seen = photograph(inShadow(lit, 0.4, 0.04));
    const { things, notes } = findThings(opened(seen), ASK);
    expect(notes).toEqual([]);
    expect(things).toHaveLength(4);
    for (const [at, { corners, confidence }] of things.entries())
      corners.forEach(({ x, y }, corner) => {
        const [tx, ty] = seen.corners[at]![corner]!;
        expect(Math.hypot(x - tx, y - ty)).toBeLessThan(confidence >= 0.5 ? 2 : 16);
      });
  });

  it('is looked for neither on wood nor where all lies by itself', () => {
    const wood = scene(1, TABLES.wood());
    const seen = overlook(opened(photograph(inShadow(wood, 0.5, 0.04))));
    expect(overlookShadow({ ...seen, unclear: seen.blocks })).toBeNull();
    const onBoard = overlook(opened(photograph(inShadow(lit, 0.4, 0.04))));
    expect(overlookShadow({ ...onBoard, unclear: [], cutOff: [] })).toBeNull();
  });
});
