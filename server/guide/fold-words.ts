import { envelopeFor } from '../layouts/envelopes.ts';
import type { Layout } from '../layouts/layout.ts';
import type { Ruler } from '../lengths/length.ts';
import { capital, lengthSaid, listed, sizeSaid } from './said.ts';

/** What is done to the flat base, as a sentence. */
export function foldSaid(layout: Layout, ruler: Ruler): string {
  const flat = sizeSaid(layout.fold.flat, ruler);
  if (layout.fold.kind === 'none') return `Cut the base ${flat}; this card is not folded.`;
  return `Cut the base ${flat}, ${scored(layout, ruler)}, the bump of the score inside.`;
}

/** The same beside the base's size: only where it is scored and how it is folded. */
export function scoreSaid(layout: Layout, ruler: Ruler): string {
  return layout.fold.kind === 'none' ? 'Not folded.' : `${capital(scored(layout, ruler))}.`;
}

function scored({ fold }: Layout, ruler: Ruler): string {
  const scores = listed(fold.scores.map((score) => lengthSaid(score, ruler)));
  const from = fold.scoreFrom === 'left' ? 'left edge' : 'top edge';
  const then = {
    none: 'leave it flat',
    side: 'fold it like a book',
    top: 'fold it like a notepad',
    tent: 'fold it so that it stands like a tent',
    flap: 'fold the narrow side over: it covers half of the card and swings free',
    gate: 'fold both flaps in so that they meet',
  }[fold.kind];
  return `score it ${scores} from the ${from}, and ${then}`;
}

/** Which envelope takes the card, and what to mind before it is posted. */
export function envelopeSaid(layout: Layout): string {
  const named = envelopeNamed(layout);
  return envelopeFor(layout.card) === null
    ? named
    : `${named} Many layers are thick: ask your post office before you buy stamps.`;
}

/** Which envelope takes the card. */
export function envelopeNamed({ card }: Layout): string {
  const envelope = envelopeFor(card);
  return envelope === null
    ? 'No usual envelope takes this size: make one, or hand the card over.'
    : `Envelope: ${envelope.name}.`;
}
