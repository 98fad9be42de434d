import type { CutPlan, Kind } from './packings.ts';

/**
 * Pieces in rows across the sheet, or in columns down it: few settings of the ruler, where there is room
 * for them.
 *
 *      ┌─────┬─────┬────┬──┐
 *      │     │     │    │  │   pieces of one height stand in one row; in loose rows
 *      ├─────┴──┬──┴────┼──┤   lower ones too, trimmed
 *      │        │       │  │
 *      ├────────┴───────┴──┤
 *      │ left over         │
 *      └───────────────────┘
 *
 * Gives  every such plan that has room, which may be none.
 */
export function shelfPlans(kinds: readonly Kind[], width: number, height: number): CutPlan[] {
  return WAYS.flatMap(({ columns, standing, loose }) => {
    const pieces = kinds
      .flatMap((kind, at) => Array.from({ length: kind.count }, () => laid(kind, at, standing)))
      .map((piece) => (columns ? crossed(piece) : piece))
      .sort((a, b) => b.height - a.height || b.width - a.width || a.kind - b.kind);
    const plan = columns
      ? inShelves(pieces, height, width, loose)
      : inShelves(pieces, width, height, loose);
    return plan === null ? [] : [columns ? crossedPlan(plan) : plan];
  });
}

const WAYS = [false, true].flatMap((columns) =>
  [false, true].flatMap((standing) => [false, true].map((loose) => ({ columns, standing, loose }))),
);

interface Laid {
  readonly kind: number;
  readonly turned: boolean;
  readonly width: number;
  readonly height: number;
}

interface Shelf {
  readonly height: number;
  left: number;
  readonly pieces: Laid[];
}

/** A piece that may be turned lies with its longer side across, or stands. */
function laid({ width, height, turn }: Kind, kind: number, standing: boolean): Laid {
  const turned = turn && width > height === standing;
  return turned ? { kind, turned, width: height, height: width } : { kind, turned, width, height };
}

function inShelves(
  pieces: readonly Laid[],
  width: number,
  height: number,
  loose: boolean,
): CutPlan | null {
  const shelves: Shelf[] = [];
  let free = height;
  for (const piece of pieces) {
    const room = shelves.find(
      (shelf) =>
        shelf.left >= piece.width &&
        (loose ? shelf.height >= piece.height : shelf.height === piece.height),
    );
    if (room === undefined && (free < piece.height || width < piece.width)) return null;
    if (room === undefined) {
      shelves.push({ height: piece.height, left: width - piece.width, pieces: [piece] });
      free -= piece.height;
    } else {
      room.pieces.push(piece);
      room.left -= piece.width;
    }
  }
  return inARow(
    shelves.map((shelf) =>
      inARow(
        shelf.pieces.map(({ kind, turned }): CutPlan => ({ kind, turned })),
        'vertical',
      ),
    ),
    'horizontal',
  );
}

function inARow(plans: readonly CutPlan[], way: 'vertical' | 'horizontal'): CutPlan {
  return plans.reduceRight((rest, plan) => ({ way, first: plan, second: rest }));
}

function crossed({ kind, turned, width, height }: Laid): Laid {
  return { kind, turned, width: height, height: width };
}

/** Rows become columns; how a piece lies stays. */
function crossedPlan(plan: CutPlan): CutPlan {
  if ('kind' in plan) return plan;
  const way = plan.way === 'vertical' ? 'horizontal' : 'vertical';
  return { way, first: crossedPlan(plan.first), second: crossedPlan(plan.second) };
}
