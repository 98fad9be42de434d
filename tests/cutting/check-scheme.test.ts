import { describe, expect, it } from 'vitest';
import { checkScheme } from '../../server/cutting/check-scheme.ts';
import { cutScheme } from '../../server/cutting/cut-scheme.ts';
import type { CutTree, CuttingScheme, PlacedPiece, Slot } from '../../server/cutting/piece.ts';
import { INCH, units } from '../../server/lengths/length.ts';
import { parseSize } from '../../server/lengths/parse-size.ts';
import { INCHES, piece } from './worlds.ts';

/** Two cards on two sheets; the panel lies left, the band beside it. */
const pieces = [
  piece(1, 'panel', '4 x 5 in', { keepUp: true }),
  piece(1, 'corner', '1 x 5 in', { paper: 'panel' }),
  piece(1, 'band', '4 x 1 in'),
];
const sound = cutScheme(pieces, parseSize('6 x 6 in'), INCHES);

describe('the checker', () => {
  it('finds nothing on a sound scheme', () => {
    expect(checkScheme(pieces, sound)).toEqual([]);
  });

  it('finds a piece that is missing, doubled or was never asked for', () => {
    expect(checkScheme([...pieces, piece(2, 'panel', '1 x 1 in')], sound)).toEqual([
      'card-2-panel is cut 0 times',
    ]);
    expect(checkScheme(pieces.slice(1), sound)).toContain('card-1-panel was never asked for');
    const doubled = { ...sound, slots: [...sound.slots, sound.slots[1]!] };
    expect(checkScheme(pieces, doubled)).toContain('card-1-band is cut 2 times');
  });

  it('finds a piece that lies over another, off the sheet, or not where it is cut', () => {
    const moved = changed((placed) =>
      placed.piece.layer === 'corner' ? { ...placed, x: units(0) } : placed,
    );
    expect(checkScheme(pieces, moved)).toEqual(
      expect.arrayContaining([
        'slot-1: card-1-corner does not lie where it is cut',
        'slot-1: card-1-panel lies over card-1-corner',
      ]),
    );
    const off = changed((placed) => ({ ...placed, x: units(placed.x + 3 * INCH) }));
    expect(checkScheme(pieces, off)).toContain('slot-1: card-1-panel leaves the sheet');
  });

  it('finds a turned piece that keeps its up', () => {
    const turned = changed((placed) => ({ ...placed, turned: true }));
    expect(checkScheme(pieces, turned)).toContain(
      'slot-1: card-1-panel is turned though it keeps its up',
    );
    expect(checkScheme(pieces, turned, { apart: true, keepUp: true })).toContain(
      'slot-1: card-1-corner is turned though it keeps its up',
    );
  });

  it('finds a cut that misses its part, and parts that do not add up', () => {
    expect(
      checkScheme(
        pieces,
        withCuts((tree) => (tree.kind === 'cut' ? { ...tree, at: units(6 * INCH) } : tree)),
      ),
    ).toContain('slot-1: a cut at 48768 misses its part');
    const shrunk = withCuts((tree) =>
      tree.kind === 'rest' ? { ...tree, size: parseSize('1/8 x 1/8 in') } : tree,
    );
    expect(checkScheme(pieces, shrunk)).toEqual(
      expect.arrayContaining([
        'slot-1: a left-over has another size',
        'slot-1: parts do not add up to the sheet',
      ]),
    );
  });

  it('finds papers of a card that share a sheet or are torn apart', () => {
    const relabelled = (paper: string, layer: string): CuttingScheme =>
      changed((placed) =>
        placed.piece.layer === layer ? { ...placed, piece: { ...placed.piece, paper } } : placed,
      );
    expect(checkScheme(pieces, relabelled('other', 'corner'))).toContain(
      'card-1-panel must not share a sheet with card-1-corner',
    );
    expect(checkScheme(pieces, relabelled('panel', 'band'))).toContain(
      'card-1-panel must share a sheet with card-1-band',
    );
    expect(
      checkScheme(pieces, relabelled('panel', 'band'), { apart: false, keepUp: false }),
    ).toEqual([]);
  });

  it('finds a bound that claims too much', () => {
    expect(checkScheme(pieces, { ...sound, fewestSheets: 3 })).toContain(
      'fewer sheets than its own bound',
    );
    expect(checkScheme(pieces, { ...sound, fewestSheets: 1 })).toContain(
      'proven does not follow from the bound',
    );
  });
});

function changed(change: (placed: PlacedPiece) => PlacedPiece): CuttingScheme {
  return {
    ...sound,
    slots: sound.slots.map((slot): Slot => ({ ...slot, pieces: slot.pieces.map(change) })),
  };
}

function withCuts(change: (tree: CutTree) => CutTree): CuttingScheme {
  const all = (tree: CutTree): CutTree =>
    change(
      tree.kind === 'cut' ? { ...tree, first: all(tree.first), second: all(tree.second) } : tree,
    );
  return { ...sound, slots: sound.slots.map((slot) => ({ ...slot, cuts: all(slot.cuts) })) };
}
