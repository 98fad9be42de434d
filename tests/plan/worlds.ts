import type { Lab } from '../../server/colour/lab.ts';
import type { PaletteColour } from '../../server/colour/palette.ts';
import type { PlacedPiece, Slot } from '../../server/cutting/piece.ts';
import type { Layer, Layout, Role } from '../../server/layouts/layout.ts';
import { INCH, units } from '../../server/lengths/length.ts';
import type { Length } from '../../server/lengths/length.ts';
import type { Pad, Sheet, Side } from '../../server/pad/pad.ts';
import type { PatternTraits } from '../../server/pattern/traits.ts';
import type { PlanAsk } from '../../server/plan/ask.ts';
import { chance } from '../../server/plan/network/local-search.ts';
import type { Supply } from '../../server/supplies/supply.ts';

/** Small worlds that can be drawn on paper: colours, sides, sheets, layouts and schemes by hand. */

export const COLOURS = {
  teal: { l: 35, a: -22, b: -10 },
  coral: { l: 65, a: 42, b: 30 },
  kelp: { l: 42, a: -14, b: 26 },
  sand: { l: 82, a: 4, b: 20 },
  shell: { l: 88, a: 12, b: 8 },
  slate: { l: 45, a: -3, b: -8 },
  white: { l: 96, a: 0, b: 0 },
  cream: { l: 93, a: 0, b: 9 },
  red: { l: 45, a: 62, b: 38 },
  nearlyRed: { l: 48, a: 56, b: 26 },
  plum: { l: 30, a: 30, b: -20 },
  lemon: { l: 90, a: -5, b: 70 },
  violet: { l: 40, a: 40, b: -50 },
} satisfies Record<string, Lab>;

export type Named = keyof typeof COLOURS;

/** A side: the first colour is its ground, the rest accents; shares add up to 1. */
export function side(
  id: string,
  colours: Partial<Record<Named, number>>,
  pattern: Partial<PatternTraits> = {},
  uncertainty = 0.5,
): Side {
  const palette = Object.entries(colours).map(([name, share], at): PaletteColour => ({
    lab: COLOURS[name as Named],
    share,
    role: at === 0 ? 'ground' : 'accent',
    uncertainty,
  }));
  return {
    id,
    photo: 'photo',
    corners: [
      { x: 0, y: 0 },
      { x: 1, y: 0 },
      { x: 1, y: 1 },
      { x: 0, y: 1 },
    ],
    palette: { colours: palette, tonal: false },
    pattern: {
      repeat: null,
      scale: 8,
      direction: 'none',
      up: 0,
      busyness: 0.5,
      descriptor: [],
      ...pattern,
    },
    confidence: 1,
    notes: [],
  };
}

export function sheet(id: string, front: Side | null, back: Side | null, copies = 1): Sheet {
  return { id, label: id, copies, front, back };
}

export const inches = (count: number): Length => units(Math.round(count * INCH));

export function layer(
  id: string,
  role: Role,
  box: readonly [number, number, number, number],
  paper: string,
): Layer {
  const [x, y, width, height] = box;
  return {
    id,
    role,
    material: paper.startsWith('stock') ? 'cardstock' : 'patterned',
    box: { x: inches(x), y: inches(y), width: inches(width), height: inches(height) },
    shape: { kind: 'rectangle' },
    paper,
  };
}

export function layout(id: string, layers: readonly Layer[]): Layout {
  return {
    id,
    name: id,
    card: { width: inches(4.25), height: inches(5.5) },
    fold: {
      kind: 'side',
      flat: { width: inches(8.5), height: inches(5.5) },
      scores: [inches(4.25)],
      scoreFrom: 'left',
    },
    layers,
  };
}

/** One paper on a mat on a base. */
export const FRAMED = layout('framed', [
  layer('base', 'base', [0, 0, 4.25, 5.5], 'stock-1'),
  layer('mat', 'mat', [0.125, 0.125, 4, 5.25], 'stock-2'),
  layer('panel', 'panel', [0.25, 0.25, 3.75, 5], 'a'),
]);

/** Two papers that touch. */
export const BANDED = layout('banded', [
  layer('base', 'base', [0, 0, 4.25, 5.5], 'stock-1'),
  layer('panel', 'panel', [0.125, 0.125, 4, 5.25], 'a'),
  layer('strip', 'strip', [0.125, 2, 4, 1.25], 'b'),
]);

/** Three papers, one of them on a mat, and a greeting. */
export const STACKED = layout('stacked', [
  layer('base', 'base', [0, 0, 4.25, 5.5], 'stock-1'),
  layer('panel', 'panel', [0.125, 0.125, 4, 5.25], 'a'),
  layer('strip', 'strip', [0.125, 3.5, 4, 1], 'b'),
  layer('mat', 'mat', [1, 0.75, 2.25, 2.25], 'stock-2'),
  layer('focal', 'focal', [1.125, 0.875, 2, 2], 'c'),
  layer('greeting', 'greeting', [0.5, 4.6, 3, 0.5], 'stock-3'),
]);

/** Four papers side by side on one mat. */
export const QUILT = layout('quilt', [
  layer('base', 'base', [0, 0, 4.25, 5.5], 'stock-1'),
  layer('mat', 'mat', [0.125, 0.125, 4, 5.25], 'stock-2'),
  layer('upper-left', 'panel', [0.25, 0.25, 1.75, 2.375], 'a'),
  layer('upper-right', 'panel', [2.25, 0.25, 1.75, 2.375], 'b'),
  layer('lower-left', 'panel', [0.25, 2.875, 1.75, 2.375], 'c'),
  layer('lower-right', 'panel', [2.25, 2.875, 1.75, 2.375], 'd'),
]);

/** A large panel and a small tab of one paper, with a band of another across the panel. */
export const EDGED = layout('edged', [
  layer('base', 'base', [0, 0, 4.25, 5.5], 'stock-1'),
  layer('panel', 'panel', [0.125, 0.125, 3.5, 5.25], 'a'),
  layer('tab', 'strip', [3.75, 0.5, 0.25, 0.75], 'a'),
  layer('band', 'strip', [0.125, 2, 3.5, 1.5], 'b'),
]);

/** A slot with the pieces of these papers of these cards. */
export function slot(
  id: string,
  takes: readonly { readonly card: number; readonly layout: Layout; readonly paper: string }[],
  turned: readonly string[] = [],
): Slot {
  const pieces = takes.flatMap(({ card, layout: design, paper }) =>
    design.layers
      .filter((one) => one.material === 'patterned' && one.paper === paper)
      .map((one): PlacedPiece => {
        const name = `${card}-${one.id}`;
        return {
          piece: {
            id: name,
            card,
            layer: one.id,
            size: { width: one.box.width, height: one.box.height },
            shape: one.shape,
            paper: one.paper,
            role: one.role,
          },
          x: units(0),
          y: units(0),
          turned: turned.includes(name),
        };
      }),
  );
  return {
    id,
    pieces,
    cuts: { kind: 'rest', size: { width: inches(6), height: inches(6) } },
  };
}

export function cardstock(id: string, colour: Named): Supply {
  return {
    id,
    kind: 'cardstock',
    name: id,
    lab: COLOURS[colour],
    uncertainty: 0.5,
    photo: null,
    sheets: null,
  };
}

export function ask(parts: {
  readonly sheets: readonly Sheet[];
  readonly cards: PlanAsk['cards'];
  readonly slots: readonly Slot[];
  readonly supplies?: readonly Supply[];
}): PlanAsk {
  const size = { width: inches(6), height: inches(6) };
  const pad: Pad = { id: 'pad', name: 'Tidewrack', sheetSize: size, sheets: parts.sheets };
  return {
    pad,
    cards: parts.cards,
    scheme: { sheet: size, slots: parts.slots, fewestSheets: parts.slots.length, proven: true },
    supplies: parts.supplies ?? [cardstock('white', 'white'), cardstock('teal', 'teal')],
    pins: [],
    without: [],
    taste: { contrast: 0, busy: 0, bold: 0 },
    seed: 1,
    limit: { steps: 1_000_000 },
  };
}

/** A world of chance: `designs` double-sided sheets, `cards` cards over `slots` slots. */
export function randomWorld(
  seed: number,
  size: { designs: number; copies: number; slots: number; cards: number },
): PlanAsk {
  const random = chance(seed);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
  const names = Object.keys(COLOURS) as Named[];
  const randomSide = (id: string): Side => {
    const chosen = new Map<Named, number>();
    while (chosen.size < 3) chosen.set(pick(names), 0.1 + random());
    const total = [...chosen.values()].reduce((sum, share) => sum + share, 0);
    return side(
      id,
      Object.fromEntries([...chosen].map(([name, share]) => [name, share / total])),
      {
        scale: 2 + 30 * random(),
        busyness: random(),
        direction: pick(['none', 'two-way', 'one-way'] as const),
        up: pick([0, 90, 180, 270] as const),
      },
      0.5 + random(),
    );
  };
  const sheets = Array.from({ length: size.designs }, (_, at) =>
    sheet(
      `s${at}`,
      randomSide(`s${at}f`),
      random() < 0.9 ? randomSide(`s${at}b`) : null,
      size.copies,
    ),
  );
  const layouts = [FRAMED, BANDED, STACKED];
  const takes = Array.from(
    { length: size.slots },
    () => [] as Parameters<typeof slot>[1][number][],
  );
  const cards = Array.from({ length: size.cards }, (_, at) => {
    const design = pick(layouts);
    const papers = [
      ...new Set(
        design.layers.filter((one) => one.material === 'patterned').map((one) => one.paper),
      ),
    ];
    const free = takes.map((_, number) => number);
    for (const paper of papers) {
      const [number] = free.splice(Math.floor(random() * free.length), 1);
      takes[number!]!.push({ card: at + 1, layout: design, paper });
    }
    return { number: at + 1, layout: design };
  });
  return ask({
    sheets,
    cards,
    slots: takes.map((list, at) => slot(`slot${at}`, list, random() < 0.5 ? ['1-strip'] : [])),
  });
}
