import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkScheme } from '../../server/cutting/check-scheme.ts';
import { cutScheme } from '../../server/cutting/cut-scheme.ts';
import type { Piece } from '../../server/cutting/piece.ts';
import { piecesOf } from '../../server/cutting/pieces-of.ts';
import { usualSettings } from '../../server/cutting/settings.ts';
import { catalogue } from '../../server/layouts/catalogue.ts';
import { parseSize } from '../../server/lengths/parse-size.ts';
import { Refusal } from '../../server/refusals/refusal.ts';
import { randomBatch, sixSheets } from './drawn.ts';
import { INCHES, piece } from './worlds.ts';

const anyBatch = fc.integer({ min: 1, max: 1_000_000 }).map(randomBatch);

fc.configureGlobal({ seed: 20 });
const SIX = parseSize('6 x 6 in');

const cut = (pieces: readonly Piece[], more: Partial<typeof INCHES> = {}, sheet = SIX) =>
  cutScheme(pieces, sheet, { ...INCHES, ...more });

describe('the scheme of slots', () => {
  it('has no faults on any batch, as the checker sees it', () => {
    fc.assert(
      fc.property(anyBatch, ({ pieces, sheet, settings }) => {
        const { apart, keepUp } = settings;
        const scheme = cutScheme(pieces, sheet, settings);
        expect(checkScheme(pieces, scheme, { apart, keepUp })).toEqual([]);
      }),
      { numRuns: 150 },
    );
  });

  it('is the same for the same batch and seed', () => {
    fc.assert(
      fc.property(anyBatch, ({ pieces, sheet, settings }) => {
        expect(cutScheme(pieces, sheet, settings)).toEqual(cutScheme(pieces, sheet, settings));
      }),
      { numRuns: 15 },
    );
  });

  it('brings four 3 in squares out of one 6 in sheet, and a fifth out of a second', () => {
    const squares = [1, 2, 3, 4, 5].map((card) => piece(card, 'square', '3 x 3 in'));
    expect(cut(squares.slice(0, 4))).toMatchObject({ fewestSheets: 1, proven: true });
    expect(cut(squares.slice(0, 4)).slots).toHaveLength(1);
    expect(cut(squares)).toMatchObject({ fewestSheets: 2, proven: true });
  });

  it('knows that the pinwheel of four cannot be cut edge to edge, though its area fits', () => {
    const wheel = [1, 2, 3, 4].map((card) => piece(card, 'vane', '4 x 2 in'));
    const middle = piece(5, 'middle', '2 x 2 in');
    expect(cut([...wheel, middle]).slots).toHaveLength(1);
    const upright = [
      piece(1, 'vane', '4 x 2 in'),
      piece(2, 'vane', '2 x 4 in'),
      piece(3, 'vane', '4 x 2 in'),
      piece(4, 'vane', '2 x 4 in'),
      middle,
    ];
    expect(cut(upright, { keepUp: true }).slots).toHaveLength(2);
  });

  it('turns a piece only when it may', () => {
    const tall = [
      piece(1, 'a', '6 x 2 in'),
      piece(2, 'b', '2 x 4 in'),
      piece(3, 'c', '2 x 4 in'),
      piece(4, 'd', '4 x 2 in'),
    ];
    expect(cut(tall).slots).toHaveLength(1);
    expect(cut(tall, { keepUp: true }).slots).toHaveLength(2);
    const kept = cut(tall.map((one) => ({ ...one, keepUp: true })));
    expect(kept.slots).toHaveLength(2);
  });

  it('keeps the papers of a card apart, and one paper on one sheet', () => {
    const pieces = [
      piece(1, 'panel', '2 x 2 in', { paper: 'field' }),
      piece(1, 'band', '2 x 1 in', { paper: 'band' }),
      piece(1, 'corner', '1 x 1 in', { paper: 'field' }),
    ];
    const scheme = cut(pieces);
    expect(
      scheme.slots.map((slot) => slot.pieces.map(({ piece: { layer } }) => layer).sort()),
    ).toEqual([['corner', 'panel'], ['band']]);
    expect(scheme).toMatchObject({ fewestSheets: 2, proven: true });
    expect(cut(pieces, { apart: false }).slots).toHaveLength(1);
  });

  it('proves by the sizes that large pieces need a sheet each (4 x 5 1/4 in on 6 in)', () => {
    const panels = [1, 2, 3].map((card) => piece(card, 'panel', '4 x 5 1/4 in'));
    expect(cut(panels)).toMatchObject({ fewestSheets: 3, proven: true });
  });

  it('claims no proof from sizes that were rounded up to the ruler (inches and millimetres mixed)', () => {
    const close = [1, 2].map((card) => piece(card, 'half', '76.1 x 152.3 mm'));
    const rounded = cut([...close, piece(3, 'c', '1/16 x 1/16 in')]);
    expect(rounded.fewestSheets).toBe(1);
  });

  it('cuts sheets alike where cards are alike', () => {
    const card = catalogue.find((layout) => layout.id === 'waistband-us')!;
    const cards = Array.from({ length: 8 }, (_, index) => ({ number: index + 1, layout: card }));
    const scheme = cut(piecesOf(cards).patterned);
    expect(scheme.slots).toHaveLength(8);
    expect(new Set(scheme.slots.map((slot) => shapeOf(slot.cuts))).size).toBe(1);
  });

  it('refuses a piece larger than the sheet and names card, layer and sizes', () => {
    const refusal = refusalOf(() => cut([piece(7, 'panel', '6 1/4 x 2 in')]));
    expect(refusal.field).toBe('cards[7].layers.panel');
    expect(refusal.message).toContain('6 1/4 x 2 in');
    expect(() => cut([piece(1, 'strip', '2 x 7 in')], {}, parseSize('8 x 6 in'))).not.toThrow();
    expect(() =>
      cut([piece(1, 'strip', '2 x 7 in')], { keepUp: true }, parseSize('8 x 6 in')),
    ).toThrow(Refusal);
  });

  it('refuses layers of one paper that cannot come from one sheet', () => {
    const two = ['left', 'right'].map((layer) => piece(1, layer, '4 x 4 in', { paper: 'flaps' }));
    expect(refusalOf(() => cut(two)).message).toContain('left, right of card 1');
  });

  it('makes nothing of nothing', () => {
    expect(cut([])).toEqual({ sheet: SIX, slots: [], fewestSheets: 0, proven: true });
  });

  it('cuts sheets of eleven different pieces and more, as full as the search makes them', () => {
    for (const seed of [1, 2]) {
      const pieces = sixSheets(72, 0.97, seed);
      const scheme = cut(pieces, { apart: false, steps: 20, seed });
      expect(checkScheme(pieces, scheme, { apart: false, keepUp: false })).toEqual([]);
      expect(scheme.slots.length).toBeLessThanOrEqual(7);
      expect(scheme.fewestSheets).toBe(6);
    }
  });

  it('stops when told to, with a sound scheme', () => {
    const pieces = piecesOf(
      catalogue.slice(0, 12).map((layout, index) => ({ number: index + 1, layout })),
    ).patterned;
    const scheme = cutScheme(pieces, SIX, { ...usualSettings('in'), until: () => true });
    expect(checkScheme(pieces, scheme)).toEqual([]);
  });
});

function shapeOf(tree: unknown): string {
  return JSON.stringify(tree, (key, value: unknown) => (key === 'piece' ? '' : value));
}

function refusalOf(act: () => unknown): Refusal {
  try {
    act();
  } catch (error) {
    if (error instanceof Refusal) return error;
    throw error;
  }
  throw new Error('nothing was refused');
}
