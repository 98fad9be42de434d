import { envelopeFor } from '../layouts/envelopes.ts';
import type { Layout } from '../layouts/layout.ts';
import type { Ruler } from '../lengths/length.ts';
import { lengthSaid, listed, sizeSaid } from './said.ts';

/** What is done to the flat base, as a sentence. */
export function foldSaid({ fold }: Layout, ruler: Ruler): string {
  const flat = sizeSaid(fold.flat, ruler);
  if (fold.kind === 'none') return `Cut the base ${flat}; this card is not folded.`;
  const scores = listed(fold.scores.map((score) => lengthSaid(score, ruler)));
  const from = fold.scoreFrom === 'left' ? 'left edge' : 'top edge';
  const then = {
    side: 'fold it like a book',
    top: 'fold it like a notepad',
    tent: 'fold it so that it stands like a tent',
    flap: 'fold the narrow side over: it covers half of the card and swings free',
    gate: 'fold both flaps in so that they meet',
  }[fold.kind];
  return `Cut the base ${flat}, score it ${scores} from the ${from}, and ${then}, the bump of the score inside.`;
}

/** Which envelope takes the card. */
export function envelopeSaid({ card }: Layout): string {
  const envelope = envelopeFor(card);
  return envelope === null
    ? 'No usual envelope takes this size: make one, or hand the card over.'
    : `Envelope: ${envelope.name}. Many layers are thick: ask your post office before you buy stamps.`;
}
