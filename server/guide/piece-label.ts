import { centroid, contains } from '../geometry/polygon.ts';
import type { Mark, Spot } from './drawing.ts';
import { labelChoices, labelMarks } from './label-choices.ts';
import type { LabelChoice } from './label-choices.ts';
import { keptOnSheet, laid, sharedArea } from './laid.ts';
import type { LaidPiece, Taken } from './laid.ts';
import { scoresTaken } from './score-lines.ts';

/**
 * The labels of the pieces: the card's number, the layer, whether it shows the other side, and an arrow to
 * the card's up, set along the longer side. A label lies on what is kept of its own piece, so that none
 * hides another, nor where it is scored; in a crowded place it moves along its piece, stands without words, or with its arrow under
 * the number, or smaller, but never smaller than the smallest letters that are printed.
 */
export function pieceLabels(
  pieces: readonly LaidPiece[],
  scale: number,
  badges: readonly Taken[],
): Mark[] {
  return pieces.map((one) => {
    const { spot, choice, tall } = placedLabel(one, scale, badges);
    return labelMarks(spot, choice, one, tall);
  });
}

/** The room that each of these labels takes. */
export function labelPlaces(
  pieces: readonly LaidPiece[],
  scale: number,
  badges: readonly Taken[],
): Taken[] {
  return pieces.map((one) => {
    const { spot, choice, tall } = placedLabel(one, scale, badges);
    return reach(spot, choice, tall);
  });
}

interface PlacedLabel {
  readonly spot: Spot;
  readonly choice: LabelChoice;
  readonly tall: boolean;
}

function placedLabel(one: LaidPiece, scale: number, badges: readonly Taken[]): PlacedLabel {
  const whole = laid(one.placed, scale);
  const kept = keptOnSheet(one).map(({ x, y }) => ({ x: scale * x, y: scale * y }));
  const tall = whole.height > whole.width * 1.25;
  const others = [...badges, ...scoresTaken(one.placed, one.fold ?? null, scale)];
  const choices = labelChoices(one, Math.min(whole.width, whole.height));
  let best: (PlacedLabel & { readonly hidden: number }) | null = null;
  for (const choice of choices) {
    for (const spot of spotsIn(whole, kept, reach({ x: 0, y: 0 }, choice, tall))) {
      const mine = reach(spot, choice, tall);
      if (!liesOn(kept, mine)) continue;
      const hidden = others.reduce((sum, badge) => sum + sharedArea(mine, badge), 0);
      if (best === null || hidden < best.hidden - 1e-9) best = { spot, choice, tall, hidden };
      if (hidden === 0) return best;
    }
  }
  // On a piece that is smaller than the smallest label, that label stands in its middle.
  return best ?? { spot: centroid(kept), choice: choices.at(-1)!, tall };
}

/** Places along and across the piece, the nearest to its middle first. */
function spotsIn(whole: Taken, kept: readonly Spot[], label: Taken): Spot[] {
  // Of a triangle, nearer to its square corner.
  const middle = centroid(kept);
  const along = (from: number, room: number, size: number, at: number): number[] => [
    ...(at - size / 2 >= from && at + size / 2 <= from + room ? [at] : []),
    ...PARTS.map((part) => from + size / 2 + part * (room - size)),
  ];
  if (label.width > whole.width || label.height > whole.height) return [];
  const across = along(whole.x, whole.width, label.width, middle.x);
  const down = along(whole.y, whole.height, label.height, middle.y);
  const far = ({ x, y }: Spot): number => Math.hypot(x - middle.x, y - middle.y);
  return across.flatMap((x) => down.map((y) => ({ x, y }))).sort((a, b) => far(a) - far(b));
}

/** Parts of the loose length; the ends keep a hair off the cuts. */
const PARTS = [0.02, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.98] as const;

/** Whether the label lies inside the outline: its corners do, and no corner of the outline lies in it. */
function liesOn(kept: readonly Spot[], { x, y, width, height }: Taken): boolean {
  const inside = (spot: Spot): boolean =>
    spot.x > x && spot.x < x + width && spot.y > y && spot.y < y + height;
  const corners = [
    { x, y },
    { x: x + width, y },
    { x: x + width, y: y + height },
    { x, y: y + height },
  ];
  return corners.every((corner) => contains(kept, corner)) && !kept.some(inside);
}

function reach({ x, y }: Spot, { width, height }: LabelChoice, tall: boolean): Taken {
  const [w, h] = tall ? [height, width] : [width, height];
  return { x: x - w / 2, y: y - h / 2, width: w, height: h };
}
