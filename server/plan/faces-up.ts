import { isTied } from '../cutting/pairs-across.ts';
import { withoutPlacesOn } from '../pad/less-of-side.ts';
import type { Pad } from '../pad/pad.ts';
import type { PlanAsk } from './ask.ts';
import type { ChosenCard, FacesUp, Plan } from './plan.ts';

/** Whether it is known of some side where its colours lie, so that what a piece shows depends on its place. */
export function byPlace({ sheets }: Pad): boolean {
  return sheets.some(({ front, back }) =>
    [front, back].some((side) => side?.palette.where !== undefined),
  );
}

/** The pad as if it were not known where on its sides the colours lie. */
export function withoutPlaces(pad: Pad): Pad {
  const sheets = pad.sheets.map((sheet) => ({
    ...sheet,
    front: sheet.front && withoutPlacesOn(sheet.front),
    back: sheet.back && withoutPlacesOn(sheet.back),
  }));
  return { ...pad, sheets };
}

/** The face that most pieces of each slot show; the front where as many show the one as the other. */
export function facesShown(
  { pad, scheme }: Pick<PlanAsk, 'pad' | 'scheme'>,
  cards: readonly ChosenCard[],
): FacesUp {
  const backs = new Set(pad.sheets.flatMap(({ back }) => (back === null ? [] : [back.id])));
  const more = new Map<string, number>();
  for (const { layers } of cards)
    for (const { choice } of layers)
      if (choice.kind === 'paper')
        more.set(choice.slot, (more.get(choice.slot) ?? 0) + (backs.has(choice.side) ? 1 : -1));
  return Object.fromEntries(
    scheme.slots.map(({ id }) => [id, (more.get(id) ?? 0) > 0 ? 'back' : 'front'] as const),
  );
}

/**
 * Triangles of two cards that share a rectangle show one side of it, for which that is taken that lies up: a
 * slot with such a pair lies with the side up that a pin asks of it, else as it is given.
 */
export function tiedUp(
  { pad, scheme, pins }: Pick<PlanAsk, 'pad' | 'scheme' | 'pins'>,
  up: FacesUp,
): FacesUp {
  const backs = new Set(pad.sheets.flatMap(({ back }) => (back === null ? [] : [back.id])));
  const asked = scheme.slots.flatMap((slot): [string, 'front' | 'back'][] =>
    pins.flatMap(({ card, layer, side }): [string, 'front' | 'back'][] =>
      side !== undefined && isTied(slot, card, layer)
        ? [[slot.id, backs.has(side) ? 'back' : 'front']]
        : [],
    ),
  );
  return { ...up, ...Object.fromEntries(asked) };
}

/** Whether triangles of two cards share a rectangle anywhere. */
export function hasTies({ slots }: PlanAsk['scheme']): boolean {
  return slots.some((slot) =>
    slot.pieces.some(({ piece }) => isTied(slot, piece.card, piece.layer)),
  );
}

/** The faces that lie up, as part of an ask or a plan. */
export function upOf({ up }: Pick<Plan, 'up'>): Pick<Plan, 'up'> {
  return up === undefined ? {} : { up };
}
