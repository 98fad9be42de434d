import { units } from '../lengths/length.ts';
import type { Length, Size } from '../lengths/length.ts';
import type { Fold } from './layout.ts';

/**
 * The flat sheet of a folded card and where it is scored.
 *
 * Takes  for a gate also the edge its flaps swing from: left (the card opens to both sides) or top.
 *
 * none: the card itself · side: twice as wide, scored at the card's width · top, tent: twice as high,
 * scored at the card's height · gate: twice as long, scored at half the card from each end, so
 * that the two flaps meet in the middle (common practice: a 4 1/4 x 11 in strip scored 2 3/4 in from
 * each end) · flap: of a side fold only the half of the front beside the fold is left, so the sheet is one
 * and a half times as wide, scored at half the card's width. Thickness of the paper is left out: heavy cardstock wants the flaps a hair shorter.
 */
export function foldOf(kind: Fold['kind'], card: Size, gateFrom: Fold['scoreFrom'] = 'left'): Fold {
  const { width, height } = card;
  const wide = { width: units(2 * width), height };
  const high = { width, height: units(2 * height) };
  switch (kind) {
    case 'none':
      return { kind, flat: card, scores: [], scoreFrom: 'left' };
    case 'side':
      return { kind, flat: wide, scores: [width], scoreFrom: 'left' };
    case 'top':
    case 'tent':
      return { kind, flat: high, scores: [height], scoreFrom: 'top' };
    case 'flap': {
      const flap = units(Math.floor(width / 2));
      const flat = { width: units(width + flap), height };
      return { kind, flat, scores: [flap], scoreFrom: 'left' };
    }
    case 'gate':
      return gateFrom === 'left'
        ? { kind, flat: wide, scores: gateScores(width), scoreFrom: 'left' }
        : { kind, flat: high, scores: gateScores(height), scoreFrom: 'top' };
  }
}

function gateScores(across: Length): readonly Length[] {
  const flap = units(Math.floor(across / 2));
  return [flap, units(2 * across - flap)];
}
