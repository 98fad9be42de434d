import { expect, test } from 'vitest';
import { pieceLabels } from '../../server/guide/piece-label.ts';
import { INK } from '../../server/guide/look.ts';
import type { Turn } from '../../server/guide/paint.ts';
import type { Piece } from '../../server/cutting/piece.ts';
import { units } from '../../server/lengths/length.ts';
import { parseSize } from '../../server/lengths/parse-size.ts';
import { flat } from './flat.ts';

const PIECE: Piece = {
  id: '1-panel',
  card: 1,
  layer: 'panel',
  role: 'panel',
  paper: 'a',
  shape: { kind: 'rectangle' },
  size: parseSize('4 x 5 1/4 in'),
};

/** Where the arrow of a label points on the drawn sheet. */
function arrow(turn: Turn, showsOther: boolean): string {
  const placed = { piece: PIECE, x: units(0), y: units(0), turned: turn % 180 !== 0 };
  const found = flat(pieceLabels([{ placed, turn, showsOther }], 1, [])).find(
    ({ mark }) => mark.kind === 'area' && mark.fill === INK,
  )!;
  const corners = found.mark.kind === 'area' ? found.mark.corners.map(found.place) : [];
  const [tip] = corners;
  const middle = {
    x: corners.reduce((sum, { x }) => sum + x, 0) / corners.length,
    y: corners.reduce((sum, { y }) => sum + y, 0) / corners.length,
  };
  const [dx, dy] = [tip!.x - middle.x, tip!.y - middle.y];
  if (Math.abs(dx) > Math.abs(dy)) return dx > 0 ? 'right' : 'left';
  return dy > 0 ? 'down' : 'up';
}

// A piece turned clockwise by a quarter onto its card had the card's top at its left. A sheet seen from its
// other side, turned over like a page, changes left and right, and leaves up and down.
test.each([
  [0, 'up', 'up'],
  [90, 'left', 'right'],
  [180, 'down', 'down'],
  [270, 'right', 'left'],
] as const)(
  'the arrow of a piece that is turned by %s points to the top of the card',
  (turn, up, other) => {
    expect(arrow(turn, false)).toBe(up);
    expect(arrow(turn, true)).toBe(other);
  },
);
