import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkScheme } from '../../server/cutting/check-scheme.ts';
import { cutScheme } from '../../server/cutting/cut-scheme.ts';
import { cutSteps } from '../../server/cutting/cut-steps.ts';
import { fromStock } from '../../server/cutting/from-stock.ts';
import { ownScheme } from '../../server/cutting/own-scheme.ts';
import { isTied } from '../../server/cutting/pairs-across.ts';
import { paired } from '../../server/cutting/pairs.ts';
import type { CuttingScheme, Piece, PlacedPiece } from '../../server/cutting/piece.ts';
import { piecesOf } from '../../server/cutting/pieces-of.ts';
import { seeded } from '../../server/cutting/seeded.ts';
import { catalogue } from '../../server/layouts/catalogue.ts';
import type { Shape } from '../../server/layouts/layout.ts';
import { units } from '../../server/lengths/length.ts';
import { parseSize } from '../../server/lengths/parse-size.ts';
import { INCHES, piece } from './worlds.ts';

fc.configureGlobal({ seed: 20 });
const SIX = parseSize('6 x 6 in');

type Corner = 'ul' | 'ur' | 'lr' | 'll';

/** The half of a rectangle that has its square corner there. */
function half(
  card: number,
  layer: string,
  size: string,
  corner: Corner,
  more: Partial<Piece> = {},
): Piece {
  const { width: w, height: h } = parseSize(size);
  const all = { ul: [0, 0], ur: [w, 0], lr: [w, h], ll: [0, h] } as const;
  const missing = { ul: 'lr', ur: 'll', lr: 'ul', ll: 'ur' } as const;
  const points = (['ul', 'ur', 'lr', 'll'] as const)
    .filter((one) => one !== missing[corner])
    .map((one) => ({ x: units(all[one][0]), y: units(all[one][1]) }));
  const shape: Shape = { kind: 'corners', points };
  return piece(card, layer, size, { shape, paper: 'corner', ...more });
}

describe('two equal triangles', () => {
  const both = [half(1, 'first', '4 x 6 in', 'ul'), half(1, 'second', '4 x 6 in', 'lr')];

  it('of one card and paper come from one rectangle: half the sheets, proven', () => {
    const cards = [1, 2, 3].flatMap((card) => [
      half(card, 'first', '4 x 6 in', 'ul'),
      half(card, 'second', '4 x 6 in', 'lr'),
    ]);
    const scheme = cutScheme(cards, SIX, INCHES);
    expect(checkScheme(cards, scheme)).toEqual([]);
    // Worked by hand: a 4 x 6 in rectangle a card, of which a 6 x 6 in sheet holds one.
    expect(scheme).toMatchObject({ fewestSheets: 3, proven: true });
    expect(scheme.slots).toHaveLength(3);
  });

  it('are parted last, by one cut between two named corners', () => {
    const [slot] = cutScheme(both, SIX, INCHES).slots;
    const steps = cutSteps(slot!);
    expect(steps.map(({ kind }) => kind)).toEqual(['cut', 'slant']);
    expect(steps[1]).toEqual({
      kind: 'slant',
      number: 2,
      piece: 'card-1-first',
      twin: 'card-1-second',
      from: { corner: 'upper right', edge: 'right', distance: 0 },
      to: { corner: 'lower left', edge: 'left', distance: 0 },
    });
  });

  it.each([
    ['opposite corners lie as on the card', '3 x 2 in', 'ul', 'lr', 0],
    ['equal corners are turned by half', '3 x 2 in', 'ur', 'ur', 180],
    ['corners of a square beside each other are turned by a quarter', '2 x 2 in', 'ul', 'ur', 90],
    ['and the other way round', '2 x 2 in', 'ul', 'll', 270],
  ] as const)('%s', (_, size, one, other, spin) => {
    const pieces = [half(1, 'a', size, one), half(1, 'b', size, other)];
    const scheme = cutScheme(pieces, SIX, INCHES);
    expect(checkScheme(pieces, scheme)).toEqual([]);
    expect(scheme.slots[0]!.pieces.map(({ pair }) => pair)).toEqual([
      { with: 'card-1-b', spin: 0 },
      { with: 'card-1-a', spin },
    ]);
  });

  it('keep their up: only triangles that lie as on the card share a rectangle then', () => {
    const alike = [half(1, 'a', '3 x 2 in', 'ul'), half(1, 'b', '3 x 2 in', 'ul')];
    expect(paired(alike, true)).toHaveLength(2);
    expect(
      paired(
        alike.map((one) => ({ ...one, keepUp: true })),
        false,
      ),
    ).toHaveLength(2);
    expect(paired(both, true)).toHaveLength(1);
  });

  it('that are mirror images, of other sizes, or no halves of their box are left alone', () => {
    const point = half(1, 'c', '3 x 2 in', 'ul');
    const mirrored = half(1, 'd', '3 x 2 in', 'ur');
    const larger = half(1, 'e', '3 x 3 in', 'lr');
    const roof = piece(1, 'f', '3 x 2 in', {
      shape: {
        kind: 'corners',
        points: [
          { x: units(12192), y: units(0) },
          { x: units(24384), y: units(16256) },
          { x: units(0), y: units(16256) },
        ],
      },
    });
    expect(paired([point, mirrored, larger, roof, { ...roof, id: 'g' }], false)).toHaveLength(5);
  });

  it('of two cards are paired in patterned paper only where the plan is to keep them on one side', () => {
    const cards = [half(1, 'a', '4 x 6 in', 'ul'), half(2, 'a', '4 x 6 in', 'lr')];
    expect(cutScheme(cards, SIX, INCHES).slots).toHaveLength(2);
    const tied = cutScheme(cards, SIX, { ...INCHES, pairAcross: true });
    expect(tied.slots).toHaveLength(1);
    expect(tied.proven).toBe(true);
    expect(checkScheme(cards, tied)).toEqual([]);
    expect(
      tied.slots[0]!.pieces.every(({ piece }) => isTied(tied.slots[0]!, piece.card, 'a')),
    ).toBe(true);
    const stock = cutScheme(cards, SIX, { ...INCHES, apart: false });
    expect(stock.slots).toHaveLength(1);
    expect(checkScheme(cards, stock, { apart: false, keepUp: false })).toEqual([]);
  });

  it.each([2, 3, 4, 5])('of %i cards in two papers each take a sheet a pair', (count) => {
    const cards = Array.from({ length: count }, (_, at) => [
      half(at + 1, 'a', '4 x 5 1/4 in', 'ul'),
      { ...half(at + 1, 'b', '4 x 5 1/4 in', 'lr'), paper: 'other' },
    ]).flat();
    const scheme = cutScheme(cards, SIX, { ...INCHES, pairAcross: true });
    expect(checkScheme(cards, scheme)).toEqual([]);
    // Two such triangles fill a sheet, and no card has both its papers from one.
    expect(scheme.slots).toHaveLength(count);
    expect(scheme.proven).toBe(true);
  });

  it('of one card in two papers stay apart, as do those that would have to be turned and may not', () => {
    const one = [
      half(1, 'a', '4 x 5 1/4 in', 'ul'),
      { ...half(1, 'b', '4 x 5 1/4 in', 'lr'), paper: 'other' },
    ];
    expect(cutScheme(one, SIX, { ...INCHES, pairAcross: true }).slots).toHaveLength(2);
    const alike = [half(1, 'a', '4 x 5 1/4 in', 'ul'), half(2, 'a', '4 x 5 1/4 in', 'ul')];
    const turned = { ...INCHES, pairAcross: true };
    expect(cutScheme(alike, SIX, turned).slots).toHaveLength(1);
    expect(cutScheme(alike, SIX, { ...turned, keepUp: true }).slots).toHaveLength(2);
  });

  it('of two cards share their rectangle in a table of her own only within a slot', () => {
    const cards = [
      half(1, 'a', '4 x 5 1/4 in', 'ul'),
      half(2, 'a', '4 x 5 1/4 in', 'lr'),
      half(3, 'a', '4 x 5 1/4 in', 'ul'),
      half(4, 'a', '4 x 5 1/4 in', 'lr'),
    ];
    const slots = (...of: number[][]) =>
      of.map((numbers, at) => ({
        slot: `mine-${at}`,
        pieces: numbers.map((card) => ({ card, layer: 'a' })),
      }));
    const mine = { ...INCHES, pairAcross: true };
    const crossed = ownScheme(cards, slots([1, 4], [2, 3]), SIX, mine);
    expect(checkScheme(cards, crossed)).toEqual([]);
    expect(crossed.slots.map(({ pieces }) => pieces.map(({ piece }) => piece.card))).toEqual([
      [1, 4],
      [2, 3],
    ]);
    expect(ownScheme(cards, slots([1], [2], [3], [4]), SIX, mine).slots).toHaveLength(4);
  });

  it('share their rectangle in a table of her own', () => {
    const table = [
      {
        slot: 'kelp',
        pieces: [
          { card: 1, layer: 'first' },
          { card: 1, layer: 'second' },
        ],
      },
    ];
    const scheme = ownScheme(both, table, SIX, INCHES);
    expect(checkScheme(both, scheme)).toEqual([]);
    expect(scheme.slots).toHaveLength(1);
  });

  it('come out of one kept part', () => {
    const [slot] = cutScheme(both, SIX, INCHES).slots;
    const part = { id: 'kept', sheet: 'kelp', size: parseSize('4 x 6 in') };
    const taken = fromStock([{ ...slot!, sheet: 'kelp' }], [part]);
    expect(taken.map(({ part: id, placed }) => `${id}: ${placed.piece.id}`)).toEqual([
      'kept: card-1-first',
      'kept: card-1-second',
    ]);
  });

  it('are cut without a fault in any batch', () => {
    const sizes = ['2 x 2 in', '3 x 2 in', '1 x 4 in'];
    const kinds = ['ul', 'ur', 'lr', 'll'] as const;
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1_000_000 }), (seed) => {
        const random = seeded(seed);
        const any = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
        const pieces = Array.from({ length: 1 + Math.floor(random() * 9) }, (_, at): Piece => {
          const card = any([1, 2, 3]);
          const size = any(sizes);
          return random() < 0.2
            ? piece(card, `layer-${at}`, size, { paper: 'corner' })
            : half(card, `layer-${at}`, size, any(kinds), { keepUp: random() < 0.2 });
        });
        const rules = { apart: random() < 0.5, keepUp: random() < 0.2 };
        const scheme = cutScheme(pieces, parseSize('8 x 8 in'), { ...INCHES, ...rules, steps: 2 });
        expect(checkScheme(pieces, scheme, rules)).toEqual([]);
      }),
      { numRuns: 80 },
    );
  });
});

describe('our layouts with triangles', () => {
  it.each([
    ['turned-corners', 'corner', 1],
    ['four-corners', 'corners', 2],
    ['six-tiles', 'light', 3],
    ['six-tiles', 'dark', 3],
  ])('%s: all of paper "%s" come from %i rectangles, none turned', (name, paper, count) => {
    const own = catalogue.filter(({ id }) => id.startsWith(name));
    expect(own.length).toBeGreaterThanOrEqual(2);
    for (const layout of own) {
      const { patterned } = piecesOf([{ number: 1, layout }]);
      const blanks = paired(
        patterned.filter((one) => one.paper === paper),
        true,
      );
      expect(blanks).toHaveLength(count);
      expect(blanks.map(({ twin }) => twin?.spin)).toEqual(blanks.map(() => 0));
    }
  });
});

describe('the checker of pairs', () => {
  const pieces = [half(1, 'a', '3 x 2 in', 'ul'), half(1, 'b', '3 x 2 in', 'lr')];
  const sound = cutScheme(pieces, SIX, INCHES);
  const changed = (change: (placed: PlacedPiece) => PlacedPiece): CuttingScheme => ({
    ...sound,
    slots: sound.slots.map((slot) => ({ ...slot, pieces: slot.pieces.map(change) })),
  });

  it('finds triangles that lie in the same half', () => {
    const turned = changed((placed) =>
      placed.piece.layer === 'b' ? { ...placed, pair: { with: 'card-1-a', spin: 180 } } : placed,
    );
    expect(checkScheme(pieces, turned)).toContain('slot-1: card-1-a lies over card-1-b');
    expect(checkScheme(pieces, turned, { apart: true, keepUp: true })).toContain(
      'slot-1: card-1-b is turned against card-1-a though it keeps its up',
    );
  });

  it('finds two pieces in one rectangle that are no pair, or of two papers', () => {
    const alone = changed(({ piece: one, x, y, turned }) => ({ piece: one, x, y, turned }));
    expect(checkScheme(pieces, alone)).toContain('slot-1: card-1-a lies over card-1-b');
    const rectangles = changed((placed) => ({
      ...placed,
      piece: { ...placed.piece, shape: { kind: 'rectangle' } },
    }));
    expect(checkScheme(pieces, rectangles)).toContain('slot-1: card-1-a lies over card-1-b');
    const torn = changed((placed) =>
      placed.piece.layer === 'b'
        ? { ...placed, piece: { ...placed.piece, paper: 'other' } }
        : placed,
    );
    expect(checkScheme(pieces, torn)).toContain(
      "slot-1: card-1-a shares a rectangle with another paper's card-1-b",
    );
  });
});
