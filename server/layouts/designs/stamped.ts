import { units } from '../../lengths/length.ts';
import type { Box, Element, Layout } from '../layout.ts';
import {
  box,
  design,
  front,
  greeting,
  greetingOn,
  inside,
  lying,
  mat,
  mattedPanel,
  panel,
  strip,
} from './board.ts';
import type { Board } from './board.ts';

/** A label large enough for a stamped greeting with a stamped picture beside it, and a die cut above. */
export function stampedLabel(board: Board): Layout {
  const label = box(board, 3, 22, 29, 36);
  const plain = inside(board, label);
  const sprig: Element = {
    id: 'picture',
    kind: 'stamp',
    layer: 'greeting',
    box: leftEnd(board, plain),
  };
  const leaf: Element = {
    id: 'leaf',
    kind: 'die-cut',
    layer: 'panel',
    box: box(board, 11, 4, 21, 16),
  };
  return design(
    board,
    { id: 'stamped-label', name: 'Label With a Stamp, a Die Cut Above' },
    'top',
    [
      ...mattedPanel(board),
      strip('band', 'band', { ...box(board, 1, 19, 31, 39), ...across(board) }),
      mat('greeting-mat', label),
      greeting(plain, { kind: 'rounded', radius: board.reveal }),
    ],
    [sprig, leaf],
  );
}

/** Half a front that opens at the fold, the other paper seen beside it; a label on the flap, free of its edge. */
export function halfFront(upright: Board): Layout {
  const board = lying(upright);
  const label = box(board, 2, 19, 18, 27);
  return design(board, { id: 'half-front', name: 'Half a Front on a Flap' }, 'flap', [
    panel('flap', 'flap', box(board, 0, 0, 20, 32)),
    panel('inside', 'inside', box(board, 22, 0, 42, 32)),
    strip('flap-band', 'band', box(board, 0, 4, 20, 13)),
    ...greetingOn(board, label),
  ]);
}

/** From edge to edge of the panel inside its mat. */
function across(board: Board): Pick<Box, 'x' | 'width'> {
  const { x, width } = inside(board, front(board));
  return { x, width };
}

/** A square at the left end of a label, two reveals from its edges. */
function leftEnd({ reveal }: Board, { x, y, height }: Box): Box {
  const side = units(height - 4 * reveal);
  return { x: units(x + 2 * reveal), y: units(y + 2 * reveal), width: side, height: side };
}
