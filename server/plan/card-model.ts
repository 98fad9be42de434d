import { isTied } from '../cutting/pairs-across.ts';
import type { PlacedPiece, Slot } from '../cutting/piece.ts';
import type { Layer } from '../layouts/layout.ts';
import type { BatchCard } from '../cutting/pieces-of.ts';
import type { PlanAsk } from './ask.ts';
import { groupOf, linksOf } from './links.ts';
import type { CardLinks } from './links.ts';
import type { Option } from './options.ts';
import { standing } from './upright.ts';
import { keeps } from './wishes.ts';

/** The layers of a card that are cut from one paper or one cardstock, with all that they may be. */
export interface Part {
  readonly group: string;
  readonly layers: readonly Layer[];
  /** Number of the slot that it is cut from; null for cardstock. */
  readonly slot: number | null;
  readonly pieces: readonly PlacedPiece[];
  readonly options: readonly Option[];
}

export interface CardModel {
  readonly card: BatchCard;
  readonly links: CardLinks;
  readonly parts: readonly Part[];
}

/** The card as variables (its parts) with the options that its pins leave. */
export function modelCard(
  ask: PlanAsk,
  card: BatchCard,
  papers: readonly Option[],
  cardstock: readonly Option[],
): CardModel {
  const groups = new Map<string, Layer[]>();
  for (const layer of card.layout.layers) {
    const list = groups.get(groupOf(layer));
    if (list === undefined) groups.set(groupOf(layer), [layer]);
    else list.push(layer);
  }
  const parts = [...groups].map(([group, layers]): Part => {
    const pins = ask.pins.filter(
      (pin) => pin.card === card.number && layers.some(({ id }) => id === pin.layer),
    );
    const from = layers[0]!.material === 'patterned' ? papers : cardstock;
    const options = from.filter((option) => pins.every((pin) => keeps(option, pin)));
    if (layers[0]!.material === 'cardstock')
      return { group, layers, slot: null, pieces: [], options };
    const { slot, pieces } = cutFrom(ask, card, layers);
    const shown = tiedOptions(ask, ask.scheme.slots[slot]!, pieces, options);
    return { group, layers, options: standing(shown, pieces), slot, pieces };
  });
  return { card, links: linksOf(card.layout), parts };
}

/** A triangle that shares its rectangle with another card's shows the side that lies up, once that is settled. */
function tiedOptions(
  { pad, up }: PlanAsk,
  slot: Slot,
  pieces: readonly PlacedPiece[],
  options: readonly Option[],
): readonly Option[] {
  if (up === undefined || !pieces.some(({ piece }) => isTied(slot, piece.card, piece.layer)))
    return options;
  const face = up[slot.id] ?? 'front';
  const shown = new Set(pad.sheets.map((sheet) => sheet[face]?.id));
  return options.filter((option) => option.kind !== 'paper' || shown.has(option.side.id));
}

function cutFrom(
  ask: PlanAsk,
  card: BatchCard,
  layers: readonly Layer[],
): { readonly slot: number; readonly pieces: readonly PlacedPiece[] } {
  const own = ({ piece }: PlacedPiece): boolean =>
    piece.card === card.number && layers.some(({ id }) => id === piece.layer);
  const slots = ask.scheme.slots.flatMap((slot, at) => (slot.pieces.some(own) ? [at] : []));
  if (slots.length !== 1)
    throw new RangeError(
      `Expected the pieces of one paper of card ${card.number} in one slot but received ${slots.length}`,
    );
  return { slot: slots[0]!, pieces: ask.scheme.slots[slots[0]!]!.pieces.filter(own) };
}
