import { expect, test } from 'vitest';
import { pencilMarks } from '../../server/guide/pencil-marks.ts';
import { pieceLabels } from '../../server/guide/piece-label.ts';
import { INK } from '../../server/guide/look.ts';
import type { Turn } from '../../server/guide/paint.ts';
import type { Piece } from '../../server/cutting/piece.ts';
import { INCH, units } from '../../server/lengths/length.ts';
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

test('a slant has a pencil mark at both of its ends; what is not slanted has none', () => {
  const radius = units(INCH / 8);
  expect(pencilMarks(PIECE, 1)).toEqual([]);
  expect(pencilMarks({ ...PIECE, shape: { kind: 'rounded', radius } }, 1)).toEqual([]);
  expect(pencilMarks({ ...PIECE, shape: { kind: 'circle' } }, 1)).toEqual([]);
  const size = parseSize('4 x 2 in');
  const corner = (x: number, y: number): { x: typeof INCH; y: typeof INCH } => ({
    x: units(x * INCH),
    y: units(y * INCH),
  });
  const points = [corner(0, 1), corner(4, 0), corner(4, 2), corner(0, 2)];
  const marks = pencilMarks({ ...PIECE, size, shape: { kind: 'corners', points } }, 1);
  const middles = flat(marks).map(({ mark }) => {
    const corners = mark.kind === 'area' ? mark.corners : [];
    const mean = (of: 'x' | 'y'): number =>
      corners.reduce((sum, spot) => sum + spot[of], 0) / corners.length;
    return [mean('x') / 25.4, mean('y') / 25.4];
  });
  const at = (x: number, y: number): unknown[] => [expect.closeTo(x, 6), expect.closeTo(y, 6)];
  expect(middles).toEqual([at(-2, 0), at(2, -1)]);
});
