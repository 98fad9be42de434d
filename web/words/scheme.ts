/** A cutting table of her own. */
export const schemeWords = {
  title: 'By a cutting table of your own',
  lead: 'Say which sheet gives which piece to which card. The cuts are worked out for it, and the papers are chosen anew for these sheets. Pieces of one card from the same paper move together.',
  card: 'Card',
  piece: 'Piece',
  from: 'Cut from',
  slot: (number: number, sheet: string | null): string => `Cut ${number}: ${sheet ?? 'new'}`,
  another: 'another sheet',
  sheetOf: (card: number, piece: string): string => `Card ${card} ${piece}: cut from`,
  howFull: 'How full each sheet is',
  full: (part: number): string =>
    part === 0
      ? 'empty, left out'
      : `${Math.round(100 * part)} % full${part > 1 ? ': too much' : ''}`,
  have: 'Work out these cuts',
  working: 'Working out the cuts …',
  ours: 'Back to the fewest sheets',
};
