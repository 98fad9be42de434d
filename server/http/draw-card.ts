import { hexFromLab } from '../colour/spaces.ts';
import type { PlacedPiece, Slot } from '../cutting/piece.ts';
import { cardPicture } from '../guide/card-picture.ts';
import type { Paint } from '../guide/paint.ts';
import { faceUp, swatchPlace } from '../guide/swatch-place.ts';
import type { Face } from '../guide/swatch-place.ts';
import { toMillimetres } from '../lengths/length.ts';
import type { Side } from '../pad/pad.ts';
import type { Choice, ChosenCard } from '../plan/plan.ts';
import type { Edges } from './edges.ts';
import { found } from './found.ts';
import type { KeptPlan } from './make-plan.ts';

type PaperChoice = Extract<Choice, { kind: 'paper' }>;

/** The card of a plan as an SVG that stands by itself: each layer shows the very place its piece is cut from. */
export async function drawCard(edges: Edges, kept: KeptPlan, id: string): Promise<string> {
  const card = found(cardOf(kept, id), 'card', id);
  const layout = kept.batch.cards.find(({ number }) => number === card.number)!.layout;
  const paints = new Map<string, Paint>();
  for (const { layer, choice } of card.layers)
    paints.set(layer, await paintOf(edges, kept, card, layer, choice));
  return cardPicture(layout, (layer) => paints.get(layer) ?? BARE);
}

const BARE: Paint = { kind: 'colour', hex: '#ffffff' };

/** `card-3`, or just its number. */
function cardOf({ batch }: KeptPlan, id: string): ChosenCard | null {
  const number = Number(/^(?:card-)?(\d{1,4})$/.exec(id)?.[1] ?? Number.NaN);
  return batch.plan.cards.find((card) => card.number === number) ?? null;
}

async function paintOf(
  edges: Edges,
  kept: KeptPlan,
  card: ChosenCard,
  layer: string,
  choice: Choice,
): Promise<Paint> {
  if (choice.kind === 'wanted') return { kind: 'colour', hex: hexFromLab(choice.lab) };
  if (choice.kind === 'paper') return paperPaint(edges, kept, card, layer, choice);
  const supply = kept.supplies.find(({ id }) => id === choice.supply);
  return supply === undefined ? BARE : { kind: 'colour', hex: hexFromLab(supply.lab) };
}

async function paperPaint(
  { store }: Edges,
  kept: KeptPlan,
  card: ChosenCard,
  layer: string,
  choice: PaperChoice,
): Promise<Paint> {
  const { scheme } = kept.batch;
  const slot = scheme.slots.find(({ id }) => id === choice.slot);
  const placed = slot?.pieces.find(
    ({ piece }) => piece.card === card.number && piece.layer === layer,
  );
  const hash = kept.swatches[choice.side];
  if (slot === undefined || placed === undefined || hash === undefined) return BARE;
  const { side, face } = sideOf(kept, choice.side);
  const otherFace = face !== faceUp(slot, (piece) => faceOf(kept, slot, piece));
  const bytes = await store.files.read('swatches', hash);
  return {
    kind: 'paper',
    href: `data:image/jpeg;base64,${bytes.toString('base64')}`,
    swatch: {
      width: toMillimetres(scheme.sheet.width),
      height: toMillimetres(scheme.sheet.height),
    },
    ...swatchPlace(placed, scheme.sheet, otherFace, side?.pattern ?? null),
  };
}

function sideOf({ pad }: KeptPlan, id: string): { side: Side | null; face: Face } {
  for (const { front, back } of pad.sheets) {
    if (front?.id === id) return { side: front, face: 'front' };
    if (back?.id === id) return { side: back, face: 'back' };
  }
  return { side: null, face: 'front' };
}

/** Which face of its sheet a piece shows. */
function faceOf(kept: KeptPlan, slot: Slot, { piece }: PlacedPiece): Face {
  const card = kept.batch.plan.cards.find(({ number }) => number === piece.card);
  const choice = card?.layers.find(({ layer }) => layer === piece.layer)?.choice;
  return choice?.kind === 'paper' && choice.slot === slot.id
    ? sideOf(kept, choice.side).face
    : 'front';
}
