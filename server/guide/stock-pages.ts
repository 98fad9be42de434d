import { cardstockSettings } from '../cutting/settings.ts';
import { cutScheme } from '../cutting/cut-scheme.ts';
import { cutSteps } from '../cutting/cut-steps.ts';
import { piecesOf } from '../cutting/pieces-of.ts';
import type { CuttingScheme, Piece, Slot } from '../cutting/piece.ts';
import { stacksOf } from '../cutting/stacks.ts';
import { hexFromLab } from '../colour/spaces.ts';
import { toMillimetres } from '../lengths/length.ts';
import { parseSize } from '../lengths/parse-size.ts';
import type { Size } from '../lengths/length.ts';
import { Refusal } from '../refusals/refusal.ts';
import type { GuideAsk } from './ask.ts';
import { cutPicture } from './cut-picture.ts';
import { rectangle } from './drawing.ts';
import type { Mark } from './drawing.ts';
import type { Facts, StockFacts } from './facts.ts';
import { chapter, flow } from './flow.ts';
import { HAIR, SIZES } from './look.ts';
import { BODY, PAGE, noteBox, paragraph } from './page.ts';
import type { Block, GuidePage } from './page.ts';
import { cardsSaid, counted, layerSaid, listed, sizeSaid } from './said.ts';
import { stepBlock } from './step-block.ts';
import { stepWords } from './step-words.ts';
import { table } from './table.ts';

/** Most sheets of heavy cardstock under the blade at once: common practice, no source. */
const STACK = 2;
/** The most that a sheet's picture takes, so that two sheets stand on a page; one with many cuts takes more. */
const PICTURE = { width: 76, height: 99 } as const;
const CROWDED = { cuts: 9, width: 108, height: 140 } as const;
const SHEETS = { top: BODY.top - 3, bottom: BODY.bottom + 5 } as const;
const CAUTION =
  'Keep fingers behind the guard and the blade covered when you put the trimmer down. A fresh blade cuts clean edges and needs less force; follow the maker’s instructions.';

/** A cardstock colour with all pieces cut from it, and its sheets. */
export interface StockNeed {
  readonly stock: StockFacts;
  readonly pieces: readonly Piece[];
  /** Null when a piece is larger than a sheet. */
  readonly scheme: CuttingScheme | null;
}

/** What cardstock the batch takes, colour by colour. */
export function stockNeeds(ask: GuideAsk, facts: Facts): StockNeed[] {
  const needs = new Map<string, { stock: StockFacts; pieces: Piece[] }>();
  for (const card of facts.cards) {
    const { cardstock, patterned } = piecesOf([{ number: card.number, layout: card.layout }]);
    for (const { layer, stock } of card.layers) {
      if (stock === null) continue;
      const piece = [...cardstock, ...patterned].find((one) => one.layer === layer.id)!;
      const need = needs.get(stock.key) ?? { stock, pieces: [] };
      need.pieces.push(piece);
      needs.set(stock.key, need);
    }
  }
  return [...needs.values()].map(({ stock, pieces }) => ({
    stock,
    pieces,
    scheme: schemeOf(ask, pieces),
  }));
}

function schemeOf(ask: GuideAsk, pieces: readonly Piece[]): CuttingScheme | null {
  for (const sheet of sheetsFor(ask)) {
    try {
      return cutScheme(pieces, sheet, { ...cardstockSettings(ask.ruler), steps: 40 });
    } catch (fault) {
      if (!(fault instanceof Refusal && fault.kind === 'does-not-fit')) throw fault;
    }
  }
  return null;
}

function sheetsFor({ ruler, stock }: GuideAsk): Size[] {
  const usual = ruler === 'in' ? '8 1/2 x 11 in' : '210 x 297 mm';
  return [stock ?? parseSize(usual), parseSize('12 x 12 in')];
}

/** The cardstock: a list of the colours, then the cuts of every sheet. */
export function stockPages(ask: GuideAsk, needs: readonly StockNeed[]): GuidePage[] {
  if (needs.length === 0) return [];
  return [...listPages(ask, needs), ...sheetPages(ask, needs)];
}

function listPages(ask: GuideAsk, needs: readonly StockNeed[]): GuidePage[] {
  const blocks = needs.flatMap((need) => needBlocks(ask, need));
  const pages = flow(blocks, { top: BODY.top - 2, bottom: BODY.bottom - 14 }, 6);
  pages.at(-1)!.push(...noteBox(CAUTION, 0, 231, PAGE.width).marks);
  return chapter('Cardstock', pages);
}

/** A colour with its pieces; a long list goes on in further blocks under the same colour. */
function needBlocks(ask: GuideAsk, need: StockNeed): Block[] {
  const sheets =
    need.scheme === null
      ? 'a piece is larger than the usual sheets; ask for a larger one'
      : `${counted(need.scheme.slots.length, 'sheet')} of ${sizeSaid(need.scheme.sheet, ask.ruler)}`;
  const rows = rowsOf(ask, need);
  const blocks: Block[] = [];
  for (let from = 0; from < rows.length; from += ROWS) {
    const title = from === 0 ? `${need.stock.name}: ${sheets}` : `${need.stock.name}, continued`;
    blocks.push(needBlock(need, title, rows.slice(from, from + ROWS)));
  }
  return blocks;
}

/** Rows of pieces under one head. */
const ROWS = 16;

function needBlock({ stock }: StockNeed, title: string, rows: readonly string[][]): Block {
  const head = paragraph(title, 13, 0, PAGE.width - 13, { bold: true });
  const columns = [
    { head: 'Pieces', width: 16, bold: true },
    { head: 'Width x height', width: 52, bold: true },
    { head: 'For', width: PAGE.width - 81 },
  ];
  const body = table(columns, rows, 13, head.height + 1, SIZES.small * 1.1);
  return {
    marks: [
      {
        kind: 'area',
        corners: rectangle(0, 0.5, 9, 9),
        fill: hexFromLab(stock.lab),
        edge: { width: 0.2, colour: HAIR },
      },
      ...head.marks,
      ...body.marks,
    ],
    height: head.height + 1 + body.height,
  };
}

/** Pieces of one size in one row, the largest first. */
function rowsOf(ask: GuideAsk, { pieces }: StockNeed): string[][] {
  const sizes = new Map<string, Piece[]>();
  for (const piece of pieces) {
    const key = sizeSaid(piece.size, ask.ruler);
    sizes.set(key, [...(sizes.get(key) ?? []), piece]);
  }
  return [...sizes]
    .sort(([, a], [, b]) => area(b[0]!) - area(a[0]!))
    .map(([size, alike]) => [String(alike.length), size, wherefore(alike)]);
}

function area({ size }: Piece): number {
  return size.width * size.height;
}

/** 'base of cards 1, 2 and 5; mat of card 3'. */
function wherefore(pieces: readonly Piece[]): string {
  const layers = new Map<string, number[]>();
  for (const { layer, card } of pieces) layers.set(layer, [...(layers.get(layer) ?? []), card]);
  return [...layers]
    .map(([layer, cards]) => `${layerSaid(layer)} of ${cardsSaid(cards)}`)
    .join('; ');
}

/** The cuts of each sheet of cardstock, one under the other; sheets that are cut alike are drawn once. */
function sheetPages(ask: GuideAsk, needs: readonly StockNeed[]): GuidePage[] {
  const blocks = needs.flatMap(({ stock, scheme }) => {
    if (scheme === null) return [];
    return stacksOf(scheme, STACK).flatMap(({ slots }) => {
      const together = scheme.slots.filter(({ id }) => slots.includes(id));
      return sheetBlocks(ask, stock, scheme, together);
    });
  });
  if (blocks.length === 0) return [];
  return chapter('Cardstock, sheet by sheet', flow(blocks, SHEETS, 6));
}

/** A sheet's picture with its cuts beside it; cuts beyond the page go on as a block of their own. */
function sheetBlocks(
  ask: GuideAsk,
  stock: StockFacts,
  scheme: CuttingScheme,
  together: readonly Slot[],
): Block[] {
  const slot = together[0]!;
  const steps = cutSteps(slot);
  const size = {
    width: toMillimetres(scheme.sheet.width),
    height: toMillimetres(scheme.sheet.height),
  };
  const most = steps.length > CROWDED.cuts ? CROWDED : PICTURE;
  const scale = Math.min(most.width / size.width, most.height / size.height);
  const whole = rectangle(0, 0, size.width, size.height);
  const picture = cutPicture({
    slot,
    sheet: scheme.sheet,
    steps,
    scale,
    face: [{ kind: 'area', corners: whole, fill: hexFromLab(stock.lab) }],
    turnOf: () => null,
    showsOther: () => false,
  });
  const laying = paragraph(titleOf(stock, scheme, together), 0, 0, PAGE.width, { bold: true });
  const top = laying.height + 2;
  const x = scale * size.width + 6;
  const words = stepWords(steps, slot, ask.ruler).map((one) => stepBlock(one, PAGE.width - x));
  const columns = flow(words, { x, top, again: 0, bottom: SHEETS.bottom - SHEETS.top });
  const heads: Mark[] = [...laying.marks, { kind: 'group', x: 0.5, y: top, marks: picture }];
  return columns.map((marks, index) => {
    const low = lowest(marks, words);
    return index === 0
      ? { marks: [...heads, ...marks], height: Math.max(low, top + scale * size.height) }
      : { marks, height: low };
  });
}

/** Where a column of steps ends. */
function lowest(marks: readonly Mark[], blocks: readonly Block[]): number {
  return Math.max(
    0,
    ...marks.map((mark) => {
      const block = blocks.find((one) => mark.kind === 'group' && one.marks === mark.marks);
      return block === undefined || mark.kind !== 'group' ? 0 : mark.y + block.height;
    }),
  );
}

function titleOf(stock: StockFacts, scheme: CuttingScheme, together: readonly Slot[]): string {
  const numbers = together.map(({ id }) => scheme.slots.findIndex((one) => one.id === id) + 1);
  const sheets = `${together.length === 1 ? 'sheet' : 'sheets'} ${listed(numbers.map(String))}`;
  return `${stock.name}, ${sheets} of ${scheme.slots.length}. ${layingSaid(together)}`;
}

/** Sheets in one stack are cut alike, but their pieces go to different cards. */
function layingSaid(together: readonly Slot[]): string {
  if (together.length === 1) return 'Lay its longer side upright.';
  const [first, ...others] = together.map(cardsOf);
  return `${counted(together.length, 'sheet')} on each other, cut alike. The picture names the pieces of the first (${cardsSaid(first!)}); the others give the same pieces to ${others.map(cardsSaid).join(' and ')}.`;
}

function cardsOf({ pieces }: Slot): number[] {
  return [...new Set(pieces.map(({ piece }) => piece.card))].sort((a, b) => a - b);
}
