import { describe, expect, it } from 'vitest';
import { checkScheme } from '../../server/cutting/check-scheme.ts';
import { ownScheme } from '../../server/cutting/own-scheme.ts';
import type { OwnSlot } from '../../server/cutting/settings.ts';
import type { Piece } from '../../server/cutting/piece.ts';
import { parseSize } from '../../server/lengths/parse-size.ts';
import { Refusal } from '../../server/refusals/refusal.ts';
import { INCHES, piece } from './worlds.ts';

const SHEET = parseSize('6 x 6 in');

/** Two cards, each with a panel of one paper and a band of another. */
const pieces = [1, 2].flatMap((card) => [
  piece(card, 'panel', '4 x 5 in'),
  piece(card, 'band', '2 x 5 in'),
]);

function slot(name: string, ...given: readonly (readonly [number, string])[]): OwnSlot {
  return { slot: name, pieces: given.map(([card, layer]) => ({ card, layer })) };
}

const crossed = [slot('kelp', [1, 'panel'], [2, 'band']), slot('coral', [2, 'panel'], [1, 'band'])];

function refusalOf(table: readonly OwnSlot[], of: readonly Piece[] = pieces): Refusal {
  try {
    ownScheme(of, table, SHEET, INCHES);
  } catch (fault) {
    if (fault instanceof Refusal) return fault;
    throw fault;
  }
  throw new Error('Nothing was refused');
}

describe('a scheme of her own', () => {
  it('is cut as she wrote it, and the checker finds nothing wrong', () => {
    const scheme = ownScheme(pieces, crossed, SHEET, INCHES);
    expect(checkScheme(pieces, scheme)).toEqual([]);
    expect(scheme.slots.map(({ id }) => id)).toEqual(['kelp', 'coral']);
    expect(scheme.slots.map((one) => one.pieces.map(({ piece: { id } }) => id).sort())).toEqual([
      ['card-1-panel', 'card-2-band'],
      ['card-1-band', 'card-2-panel'],
    ]);
    expect(scheme.proven).toBe(true);
  });

  it('may take more sheets than it must; then it is not called the fewest', () => {
    const table = [...crossed.slice(0, 1), slot('a', [2, 'panel']), slot('b', [1, 'band'])];
    const scheme = ownScheme(pieces, table, SHEET, INCHES);
    expect(checkScheme(pieces, scheme)).toEqual([]);
    expect([scheme.slots.length, scheme.fewestSheets, scheme.proven]).toEqual([3, 2, false]);
  });

  it('of which a slot is too full is refused with the slot and the piece', () => {
    const wide = [...pieces, piece(3, 'panel', '3 x 3 in')];
    const table = [slot('kelp', [1, 'panel'], [2, 'band'], [3, 'panel']), crossed[1]!];
    const refusal = refusalOf(table, wide);
    expect(refusal).toMatchObject({ kind: 'does-not-fit', field: 'scheme[0].pieces[2]' });
    expect(refusal.message).toMatch(/slot "kelp".*"panel" of card 3/);
  });

  it.each([
    ['a piece of no card', [slot('a', [9, 'panel'])], 'not-found', 'scheme[0].pieces[0]'],
    [
      'a piece given twice',
      [...crossed, slot('more', [1, 'panel'])],
      'clash',
      'scheme[2].pieces[0]',
    ],
    ['a piece that no slot gives', crossed.slice(0, 1), 'does-not-fit', 'scheme'],
    [
      'two papers of a card from one sheet',
      [slot('a', [1, 'panel'], [1, 'band']), slot('b', [2, 'panel']), slot('c', [2, 'band'])],
      'does-not-fit',
      'scheme[0].pieces[1]',
    ],
    ['two slots of one name', [...crossed, crossed[0]!], 'clash', 'scheme[2].slot'],
  ])('with %s is refused at its place', (_, table, kind, field) => {
    expect(refusalOf(table)).toMatchObject({ kind, field });
  });

  it('that tears pieces of one paper apart is refused', () => {
    const torn = [
      piece(1, 'left', '1 x 5 in', { paper: 'flaps' }),
      piece(1, 'right', '1 x 5 in', { paper: 'flaps' }),
    ];
    const refusal = refusalOf([slot('a', [1, 'left']), slot('b', [1, 'right'])], torn);
    expect(refusal.message).toMatch(/come from one sheet but slots "a" and "b"/);
  });
});
