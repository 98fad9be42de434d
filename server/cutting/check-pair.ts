import { shapeCorners } from '../layouts/outline.ts';
import type { PlacedPiece, Slot } from './piece.ts';

interface Rules {
  readonly apart: boolean;
  readonly keepUp: boolean;
}

/** What is wrong with the triangles of a slot that share a rectangle, besides where they lie. */
export function pairFaults({ pieces }: Slot, rules: Rules): string[] {
  return pieces.flatMap(({ piece, pair }) => {
    if (pair === undefined) return [];
    const other = pieces.find((one) => one.piece.id === pair.with);
    if (other?.pair?.with !== piece.id) return [`${piece.id} shares a rectangle with nothing`];
    const faults: string[] = [];
    if (pair.spin !== 0 && (rules.keepUp || piece.keepUp === true))
      faults.push(`${piece.id} is turned against ${pair.with} though it keeps its up`);
    // Of two cards they may: that both show one side is for the plan to keep.
    const unlike = other.piece.card === piece.card && other.piece.paper !== piece.paper;
    if (rules.apart && unlike)
      faults.push(`${piece.id} shares a rectangle with another paper's ${pair.with}`);
    return faults;
  });
}

/** Whether two pieces are the two halves of one rectangle, cut from corner to corner. */
export function halves(one: PlacedPiece, other: PlacedPiece): boolean {
  const together =
    one.pair?.with === other.piece.id &&
    other.pair?.with === one.piece.id &&
    one.x === other.x &&
    one.y === other.y &&
    one.turned === other.turned &&
    one.piece.size.width === other.piece.size.width &&
    one.piece.size.height === other.piece.size.height;
  if (!together) return false;
  const [a, b] = [cornersOn(one), cornersOn(other)];
  const all = new Set([...a, ...b]);
  const shared = [...a].filter((corner) => b.has(corner));
  return a.size === 3 && b.size === 3 && all.size === 4 && opposite(shared);
}

/** The rectangle's corners that a piece reaches, as it lies in it: 'left upper' and so on. */
function cornersOn({ piece, pair }: PlacedPiece): Set<string> {
  const { width, height } = piece.size;
  const spin = pair?.spin ?? 0;
  if (spin % 180 !== 0 && width !== height) return new Set();
  const places = shapeCorners(piece.shape, piece.size).map(({ x, y }): [number, number] => {
    if (spin === 0) return [x, y];
    if (spin === 180) return [width - x, height - y];
    return spin === 90 ? [height - y, x] : [y, width - x];
  });
  return new Set(
    places.map(([x, y]) => {
      const across = x === 0 ? 'left' : x === width ? 'right' : 'between';
      const down = y === 0 ? 'upper' : y === height ? 'lower' : 'between';
      return `${across} ${down}`;
    }),
  );
}

function opposite(corners: readonly string[]): boolean {
  const [one, other] = corners.map((corner) => corner.split(' '));
  return one !== undefined && other !== undefined && one[0] !== other[0] && one[1] !== other[1];
}
