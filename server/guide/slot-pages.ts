import { cutSteps } from '../cutting/cut-steps.ts';
import { stacksOf } from '../cutting/stacks.ts';
import { toMillimetres } from '../lengths/length.ts';
import type { GuideAsk } from './ask.ts';
import { cutPicture } from './cut-picture.ts';
import type { Mark } from './drawing.ts';
import { rectangle } from './drawing.ts';
import type { Facts, LayerFacts, SlotFacts } from './facts.ts';
import { chapter, flow } from './flow.ts';
import { SIZES, SOFT } from './look.ts';
import { BODY, PAGE, noteBox, paragraph } from './page.ts';
import type { GuidePage } from './page.ts';
import { pieceRows } from './piece-rows.ts';
import { printRuler } from './print-ruler.ts';
import { listed } from './said.ts';
import { stepBlock } from './step-block.ts';
import { stepWords } from './step-words.ts';

/** Most sheets of patterned paper under the blade at once: common practice, no source. */
const STACK = 3;
const PICTURE = 118;
const CAUTION =
  'The blade is sharp: fingers behind the guard, blade covered when you put it down. A fresh blade cuts clean edges; follow the maker’s instructions. Cut one sheet first, then trust the stack.';
const COLUMN = { x: 124, width: PAGE.width - 124 } as const;

/** A page a sheet of patterned paper: the sheet with its cuts in the order of the hands. */
export function slotPages(ask: GuideAsk, facts: Facts): GuidePage[] {
  return facts.slots.flatMap((slot) => slotPage(ask, facts, slot));
}

function slotPage(ask: GuideAsk, facts: Facts, one: SlotFacts): GuidePage[] {
  const { slot, sheet } = one;
  const steps = cutSteps(slot);
  const scale = PICTURE / toMillimetres(ask.scheme.sheet.width);
  const high = scale * toMillimetres(ask.scheme.sheet.height);
  const picture: Mark = {
    kind: 'group',
    x: 0.5,
    y: BODY.top + 9,
    marks: slotMarks(ask, facts, one, scale),
  };
  const laying = paragraph(layingOf(ask, facts, one), 0, BODY.top - 3.5, PAGE.width, {
    bold: true,
  });
  const under = BODY.top + 9 + high + 5;
  const rows = pieceRows(ask, facts, one, under, PICTURE);
  const room = BODY.bottom - 12 - under - rows.height;
  const caution = noteBox(CAUTION, 0, under + rows.height + 5, PICTURE);
  const columns = flow(
    stepWords(steps, slot, ask.ruler).map((words) => stepBlock(words, COLUMN.width)),
    { x: COLUMN.x, top: BODY.top + 9, bottom: BODY.bottom - 12 },
  );
  columns[0]!.push(
    ...laying.marks,
    picture,
    smaller(under - 1),
    ...rows.marks,
    ...printRuler(2, BODY.bottom, ask.ruler),
  );
  if (room > caution.height + 5) columns[0]!.push(...caution.marks);
  return chapter(`${slotSaid(ask, slot.id)}: ${sheet.label}`, columns);
}

/** A drawing that must not be measured. */
function smaller(y: number): Mark {
  return {
    kind: 'words',
    x: 0.5,
    y,
    text: 'A drawing, smaller than life: measure on the ruler.',
    size: SIZES.small,
    colour: SOFT,
  };
}

/** The sheet with its numbered cuts, from 0, 0; `scale` is printed mm for a mm of the sheet. */
export function slotMarks(ask: GuideAsk, facts: Facts, one: SlotFacts, scale: number): Mark[] {
  const layers = layersOf(facts, one);
  return cutPicture({
    slot: one.slot,
    sheet: ask.scheme.sheet,
    steps: cutSteps(one.slot),
    scale,
    face: faceMarks(ask, one),
    turnOf: ({ piece }) => {
      const paint = layers.get(piece.id)?.paint;
      return paint?.kind === 'paper' ? paint.turned : 0;
    },
    showsOther: ({ piece }) => layers.get(piece.id)?.paper?.face !== one.up,
  });
}

/** How the sheet is laid before the first cut, and which others may be cut with it. */
export function layingOf(ask: GuideAsk, facts: Facts, one: SlotFacts): string {
  return `Lay the ${one.up} up, its top at the top. ${stackNote(ask, facts, one)}`.trim();
}

/** 'Cut 2 of 6'. */
function slotSaid({ scheme }: GuideAsk, id: string): string {
  const at = scheme.slots.findIndex((slot) => slot.id === id);
  return `Cut ${at + 1} of ${scheme.slots.length}`;
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

/** The sheet as it lies: its swatch, or a flat colour where there is none. */
function faceMarks(ask: GuideAsk, { sheet, up }: SlotFacts): Mark[] {
  const size = {
    width: toMillimetres(ask.scheme.sheet.width),
    height: toMillimetres(ask.scheme.sheet.height),
  };
  const side = up === 'front' ? sheet.front : sheet.back;
  const href = side === null ? null : ask.picture(side.id);
  return href === null
    ? [{ kind: 'area', corners: rectangle(0, 0, size.width, size.height), fill: '#e4e1da' }]
    : [{ kind: 'picture', href, x: 0, y: 0, ...size }];
}

function stackNote(ask: GuideAsk, facts: Facts, { slot }: SlotFacts): string {
  const stack = stacksOf(ask.scheme, ask.stack ?? STACK).find(({ slots }) =>
    slots.includes(slot.id),
  );
  const others = facts.slots.filter(
    (one) => one.slot.id !== slot.id && stack?.slots.includes(one.slot.id) === true,
  );
  if (others.length === 0) return '';
  const names = listed(others.map(({ sheet }) => sheet.label));
  return `Cut alike: ${names}. You may lay them on each other and cut them together.`;
}
