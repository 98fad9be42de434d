import type { Sheet, Side } from '../pad/pad.ts';
import type { PlanAsk } from './ask.ts';
import type { Plan } from './plan.ts';
import { liesDown, piecesOfPaper, sideOf } from './recount.ts';

/**
 * Prints that lie on their side without need: the other side of the sheet would stand, or the slots could
 * be filled so that all prints stand.
 */
export function lyingFaults(ask: PlanAsk, plan: Plan): string[] {
  const lying = plan.cards.flatMap(({ number, layers }) =>
    layers.flatMap(({ layer, choice }) => {
      if (choice.kind !== 'paper') return [];
      const paper = paperOf(ask, number, layer);
      const side = sideOf(ask, choice)?.side;
      if (side === undefined || stands(ask, number, paper, side)) return [];
      return [{ number, paper, layer, choice }];
    }),
  );
  const faults = lying.flatMap(({ number, paper, layer, choice }) => {
    const sheet = ask.pad.sheets.find(({ id }) => id === choice.sheet)!;
    return sheetStands(ask, number, paper, sheet)
      ? [`card ${number}: ${layer} lies on its side, the other side of ${sheet.id} would stand`]
      : [];
  });
  if (lying.length > 0 && allCanStand(ask))
    faults.push('some prints lie on their side, though all could stand');
  return faults;
}

function paperOf(ask: PlanAsk, card: number, layer: string): string {
  const { layout } = ask.cards.find(({ number }) => number === card)!;
  return layout.layers.find(({ id }) => id === layer)!.paper;
}

function stands(ask: PlanAsk, card: number, paper: string, side: Side): boolean {
  return !piecesOfPaper(ask, card, paper).some((placed) => liesDown(side, placed));
}

/** Whether a side of the sheet stands on all pieces of one paper, and keeps the pins on them. */
function sheetStands(ask: PlanAsk, card: number, paper: string, sheet: Sheet): boolean {
  const pins = ask.pins.filter(
    (pin) => pin.card === card && paperOf(ask, card, pin.layer) === paper,
  );
  const tied = tiedFace(ask, card, paper);
  return (['front', 'back'] as const).some((face) => {
    const side = sheet[face];
    return (
      side !== null &&
      (tied === null || tied === face) &&
      stands(ask, card, paper, side) &&
      pins.every(
        (pin) =>
          (pin.sheet === undefined || pin.sheet === sheet.id) &&
          (pin.side === undefined || pin.side === side.id),
      )
    );
  });
}

/** The face that a triangle has to show which shares its rectangle with another card's; null when it is free. */
function tiedFace(ask: PlanAsk, card: number, paper: string): 'front' | 'back' | null {
  const own = piecesOfPaper(ask, card, paper);
  for (const { id, pieces } of ask.scheme.slots)
    for (const { pair } of own) {
      const mate = pieces.find(({ piece }) => piece.id === pair?.with);
      if (mate !== undefined && mate.piece.card !== card) return ask.up?.[id] ?? 'front';
    }
  return null;
}

/** Whether every slot can have a sheet that stands in it, by augmenting paths (Kuhn 1955). */
function allCanStand(ask: PlanAsk): boolean {
  const sheets = ask.pad.sheets.filter(({ id }) => !ask.without.includes(id));
  const single = sheets.flatMap((sheet) => Array.from({ length: sheet.copies }, () => sheet));
  const fits = ask.scheme.slots.map(({ pieces }) => {
    const papers = new Map(pieces.map(({ piece }) => [`${piece.card} ${piece.paper}`, piece]));
    return single.map((sheet) =>
      [...papers.values()].every(({ card, paper }) => sheetStands(ask, card, paper, sheet)),
    );
  });
  const slotOf = new Array<number>(single.length).fill(-1);
  const serve = (slot: number, tried: Set<number>): boolean =>
    single.some((_, at) => {
      if (!fits[slot]![at]! || tried.has(at)) return false;
      tried.add(at);
      if (slotOf[at]! >= 0 && !serve(slotOf[at]!, tried)) return false;
      slotOf[at] = slot;
      return true;
    });
  return fits.every((_, slot) => serve(slot, new Set()));
}
