import { describe, expect, it } from 'vitest';
import { fromStock } from '../../server/cutting/from-stock.ts';
import type { SlotOnSheet, StockPart } from '../../server/cutting/from-stock.ts';
import { units } from '../../server/lengths/length.ts';
import { parseSize } from '../../server/lengths/parse-size.ts';
import { piece } from './worlds.ts';

function slot(id: string, sheet: string, sizes: readonly string[], turned = false): SlotOnSheet {
  const pieces = sizes.map((size, index) => ({
    piece: piece(index + 1, `${id}-${index}`, size),
    x: units(0),
    y: units(0),
    turned,
  }));
  return { id, sheet, pieces };
}

const part = (id: string, sheet: string, size: string): StockPart => ({
  id,
  sheet,
  size: parseSize(size),
});

describe('stock', () => {
  it('gives a piece out of the smallest part of its own sheet that holds it', () => {
    const parts = [
      part('wide', 'kelp', '6 x 3 in'),
      part('small', 'kelp', '2 x 3 in'),
      part('other', 'coral', '2 x 3 in'),
    ];
    const taken = fromStock([slot('slot-1', 'kelp', ['2 x 2 in', '5 x 5 in'])], parts);
    expect(taken.map(({ part: id, placed }) => [id, placed.piece.layer])).toEqual([
      ['small', 'slot-1-0'],
    ]);
  });

  it('serves a slot that it can serve as a whole before one that it cannot', () => {
    const parts = [part('a', 'kelp', '3 x 3 in')];
    const slots = [
      slot('slot-1', 'kelp', ['3 x 3 in', '3 x 2 in']),
      slot('slot-2', 'kelp', ['2 x 2 in']),
    ];
    expect(fromStock(slots, parts).map(({ slot: id }) => id)).toEqual(['slot-2']);
  });

  it('does not turn a piece, so that a print keeps its up', () => {
    const parts = [part('a', 'kelp', '4 x 1 in')];
    expect(fromStock([slot('slot-1', 'kelp', ['1 x 4 in'])], parts)).toEqual([]);
    expect(fromStock([slot('slot-1', 'kelp', ['1 x 4 in'], true)], parts)).toHaveLength(1);
  });
});
