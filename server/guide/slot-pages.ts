import { cutSteps } from '../cutting/cut-steps.ts';
import { toMillimetres } from '../lengths/length.ts';
import type { GuideAsk } from './ask.ts';
import { cutPicture } from './cut-picture.ts';
import type { Mark } from './drawing.ts';
import type { Facts, LayerFacts, SlotFacts } from './facts.ts';
import type { Lying } from './laid.ts';
import { fewestPages, setDown } from './fewest-pages.ts';
import { BODY, bladeReminder, drawingReminder } from './page.ts';
import type { GuidePage } from './page.ts';
import { partsSaid } from './parts-words.ts';
import { plainFace } from './plain-face.ts';
import { plainTurn } from './laid.ts';
import { printRuler } from './print-ruler.ts';
import { labelsSaid } from './said.ts';
import { sheetWays, smallestOf } from './sheet-block.ts';
import type { SheetAsk } from './sheet-block.ts';
import { slotStacks, stackNote } from './slot-stacks.ts';
import { stepWords } from './step-words.ts';

/** From under the reminder down to the ruler. */
const PLACE = { top: BODY.top - 0.5, bottom: BODY.bottom - 5 } as const;
const GAP = 5;
const ROOM = PLACE.bottom - PLACE.top;
const PICTURE = { width: 118, height: 150 } as const;

/** Every sheet of patterned paper with its cuts in the order of the hands, by their numbers; sheets that are cut alike follow each other. */
export function slotPages(ask: GuideAsk, facts: Facts): GuidePage[] {
  const all = slotStacks(ask, facts)
    .flat()
    .flatMap((one) =>
      sheetWays(sheetOf(ask, facts, one), { picture: PICTURE, room: ROOM }).map((ways) => ({
        name: one.name,
        ways,
      })),
    );
  const pages = fewestPages(
    all.map(({ ways }) => ways),
    ROOM,
    GAP,
  );
  return pages.map((page) => ({
    name: `Cut the papers: ${labelsSaid([...new Set(page.map(({ at }) => all[at]!.name))])}`,
    marks: [
      bladeReminder(),
      drawingReminder('The pictures are drawings: measure on the ruler.'),
      ...setDown(page, PLACE.top, ROOM, GAP),
      ...printRuler(2, BODY.bottom + 2.8, ask.ruler),
    ],
  }));
}

function sheetOf(ask: GuideAsk, facts: Facts, one: SlotFacts): SheetAsk {
  const { slot } = one;
  const { width, height } = ask.scheme.sheet;
  return {
    title: [`${one.name}.`, partsSaid(ask, slot), layingOf(ask, facts, one)]
      .filter(Boolean)
      .join(' '),
    draw: (scale) => slotMarks(ask, facts, one, scale),
    sheet: { width: toMillimetres(width), height: toMillimetres(height) },
    steps: stepWords(cutSteps(slot), slot, ask.ruler, lyingOf(facts, one)),
    smallest: smallestOf(slot),
  };
}

/** The sheet with its numbered cuts, from 0, 0; `scale` is printed mm for a mm of the sheet. */
export function slotMarks(ask: GuideAsk, facts: Facts, one: SlotFacts, scale: number): Mark[] {
  return cutPicture({
    slot: one.slot,
    sheet: ask.scheme.sheet,
    steps: cutSteps(one.slot),
    scale,
    face: faceMarks(ask, one),
    ...lyingOf(facts, one),
  });
}

/** How its pieces lie on the sheet: their turn, and the side that each shows. */
export function lyingOf(facts: Facts, one: SlotFacts): Lying {
  const layers = layersOf(facts, one);
  return {
    turnOf: (placed) => {
      const paint = layers.get(placed.piece.id)?.paint;
      return paint?.kind === 'paper' ? paint.turned : plainTurn(placed);
    },
    showsOther: ({ piece }) => layers.get(piece.id)?.paper?.face !== one.up,
  };
}

/** How the sheet is laid before the first cut, and which others may be cut with it. */
export function layingOf(ask: GuideAsk, facts: Facts, one: SlotFacts): string {
  return `Lay the ${one.up} up, its top at the top. ${stackNote(ask, facts, one)}`.trim();
}

/** The layers of a slot's pieces by the id of the piece. */
export function layersOf(facts: Facts, { slot }: SlotFacts): Map<string, LayerFacts> {
  const found = slot.pieces.flatMap(({ piece }) => {
    const card = facts.cards.find(({ number }) => number === piece.card);
    const layer = card?.layers.find((one) => one.layer.id === piece.layer);
    return layer === undefined ? [] : [[piece.id, layer] as const];
  });
  return new Map(found);
}

/** The sheet as it lies: its swatch, or its plain colours where there is none. */
function faceMarks(ask: GuideAsk, { sheet, up }: SlotFacts): Mark[] {
  const size = {
    width: toMillimetres(ask.scheme.sheet.width),
    height: toMillimetres(ask.scheme.sheet.height),
  };
  const side = up === 'front' ? sheet.front : sheet.back;
  const href = side === null ? null : ask.picture(side.id);
  return href === null
    ? plainFace(side, 0, 0, size)
    : [{ kind: 'picture', href, x: 0, y: 0, ...size }];
}
