/** A cutting table of her own. */
export const schemeWords = {
  title: 'By a cutting table of your own',
  lead: 'Say which sheet gives which piece to which card. The cuts are worked out for it, and the papers that you leave open are chosen anew. Pieces of one card from the same paper move together.',
  card: 'Card',
  piece: 'Piece',
  from: 'Cut from',
  fresh: (number: number): string => `New sheet ${number}`,
  another: 'another sheet',
  sheetOf: (card: number, piece: string): string => `Card ${card} ${piece}: cut from`,
  sheets: 'The sheets, and how full each is',
  whichSheet: (name: string): string => `Which sheet: ${name}`,
  leftOpen: (now: string | undefined): string =>
    now === undefined ? 'Left open' : `${now} (left open)`,
  ticksStay: (count: number): string =>
    `You have ticked ${count === 1 ? 'one step' : `${count} steps`}. The new cuts begin without ticks; those that you made stay with the cuts of now, to which undo on the plan goes back.`,
  full: (part: number): string =>
    part === 0
      ? 'empty, left out'
      : `${Math.round(100 * part)} % full${part > 1 ? ': too much' : ''}`,
  have: 'Work out these cuts',
  working: 'Working out the cuts …',
  ours: 'Back to the fewest sheets',
};
