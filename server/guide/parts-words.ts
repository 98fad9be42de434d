import type { Slot } from '../cutting/piece.ts';
import type { GuideAsk } from './ask.ts';
import { listed, pieceSaid, sizeSaid } from './said.ts';

/** That a sheet need not be opened, and which parts give its pieces instead; '' for a sheet that is cut. */
export function partsSaid({ fromParts = [], ruler }: GuideAsk, { id, pieces }: Slot): string {
  const uses = fromParts.filter(({ slot }) => slot === id);
  if (uses.length === 0) return '';
  const each = uses.flatMap(({ piece: name, size }) => {
    const piece = pieces.find(({ piece: one }) => one.id === name)?.piece;
    const part = sizeSaid(size, ruler);
    return piece === undefined ? [] : [`card ${piece.card} ${pieceSaid(piece)} out of ${part}`];
  });
  return `Open no new sheet: you kept parts of it, to be laid as they lay on their sheet, for ${listed(each)}. Where one is used up, cut a new sheet as drawn.`;
}

/** Whether all pieces of a slot come out of kept parts. */
export function isSpared({ fromParts = [] }: GuideAsk, { id }: Slot): boolean {
  return fromParts.some(({ slot }) => slot === id);
}
