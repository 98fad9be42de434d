import type { Layout } from '../layouts/layout.ts';
import type { Length } from '../lengths/length.ts';
import { isOnRuler } from '../lengths/ruler.ts';
import type { GuideAsk } from './ask.ts';

/** Says that lengths between two marks of her ruler are rounded; null when every one stands on a mark. */
export function roundingNote({ cards, scheme, ruler }: GuideAsk): string | null {
  const { width, height } = scheme.sheet;
  const layouts = new Set(cards.map(({ layout }) => layout));
  const lengths = [width, height, ...[...layouts].flatMap(lengthsOf)];
  if (lengths.every((length) => isOnRuler(length, ruler))) return null;
  const [mark, most] =
    ruler === 'mm' ? ['millimetre', 'half a millimetre'] : ['1/16 in', '1/32 in'];
  return `Some of these sizes lie between two marks of your ruler. Each is given to the nearest ${mark}, at most ${most} off.`;
}

function lengthsOf({ fold, layers }: Layout): Length[] {
  return [
    fold.flat.width,
    fold.flat.height,
    ...fold.scores,
    ...layers.flatMap(({ box }) => [box.x, box.y, box.width, box.height]),
  ];
}
