import type { PlacedPiece } from '../cutting/piece.ts';
import type { CardModel, Part } from './card-model.ts';
import { lies } from './lying.ts';
import { assign } from './network/assignment.ts';
import type { Option } from './options.ts';

/**
 * A print with an up keeps its up. Of one sheet, a side that would lie is left out where the other stands;
 * a sheet that stands on neither side is kept out of the slot, unless some slots could not be filled
 * otherwise: then as few slots as can be take any sheet, and a lying print counts little there.
 */
export function standing(options: readonly Option[], pieces: readonly PlacedPiece[]): Option[] {
  const stands = options.map((option) => !liesOn(option, pieces));
  const upright = new Set(
    options.flatMap((option, at) =>
      option.kind === 'paper' && stands[at]! ? [option.design] : [],
    ),
  );
  return options.filter(
    (option, at) => option.kind !== 'paper' || stands[at]! || !upright.has(option.design),
  );
}

/** The designs that each slot may take, given those that the wishes leave. */
export function uprightWherePossible(
  allowed: readonly (readonly number[])[],
  cards: readonly CardModel[],
  copies: readonly number[],
): number[][] {
  const upright = allowed.map((designs, slot) => {
    const parts = cards.flatMap((card) => card.parts.filter((part) => part.slot === slot));
    return designs.filter((design) => parts.every((part) => standsOn(part, design)));
  });
  const solved = assign(
    allowed.map((designs, slot) => {
      const row = new Float64Array(copies.length).fill(-Infinity);
      for (const design of designs) row[design] = upright[slot]!.includes(design) ? 0 : -1;
      return row;
    }),
    copies,
  );
  return allowed.map((designs, slot) =>
    solved === null || upright[slot]!.includes(solved.column[slot]!)
      ? upright[slot]!
      : [...designs],
  );
}

function standsOn(part: Part, design: number): boolean {
  return part.options.some(
    (option) => option.kind === 'paper' && option.design === design && !liesOn(option, part.pieces),
  );
}

function liesOn(option: Option, pieces: readonly PlacedPiece[]): boolean {
  return option.kind === 'paper' && pieces.some((placed) => lies(option.side.pattern, placed));
}
