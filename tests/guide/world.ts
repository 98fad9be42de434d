import type { Lab } from '../../server/colour/lab.ts';
import { cutScheme } from '../../server/cutting/cut-scheme.ts';
import { piecesOf } from '../../server/cutting/pieces-of.ts';
import { usualSettings } from '../../server/cutting/settings.ts';
import type { GuideAsk } from '../../server/guide/ask.ts';
import { catalogue } from '../../server/layouts/catalogue.ts';
import type { Layout } from '../../server/layouts/layout.ts';
import type { Ruler } from '../../server/lengths/length.ts';
import { parseSize } from '../../server/lengths/parse-size.ts';
import type { Sheet, Side } from '../../server/pad/pad.ts';
import type { ChosenCard } from '../../server/plan/plan.ts';
import type { Supply } from '../../server/supplies/supply.ts';

const TEAL: Lab = { l: 35, a: -18, b: -12 };
const SHELL: Lab = { l: 93, a: 1, b: 4 };

function side(id: string, more: Partial<Side['pattern']> = {}): Side {
  return {
    id,
    photo: 'photo',
    corners: [
      { x: 0, y: 0 },
      { x: 1, y: 0 },
      { x: 1, y: 1 },
      { x: 0, y: 1 },
    ],
    palette: {
      colours: [
        { lab: SHELL, share: 0.6, role: 'ground', uncertainty: 0.5 },
        { lab: TEAL, share: 0.4, role: 'accent', uncertainty: 0.5 },
      ],
      tonal: false,
    },
    pattern: {
      repeat: null,
      scale: 8,
      direction: 'none',
      up: 0,
      busyness: 0.4,
      descriptor: [],
      ...more,
    },
    confidence: 1,
    notes: [],
  };
}

const STOCK: Supply = {
  id: 'shell',
  kind: 'cardstock',
  name: 'Shell cardstock',
  lab: SHELL,
  uncertainty: 0.5,
  photo: null,
  sheets: 6,
};
const INK: Supply = {
  ...STOCK,
  id: 'soot',
  kind: 'ink',
  name: 'Soot ink',
  lab: { l: 15, a: 0, b: 0 },
};

/**
 * A batch of one card a layout, cut by the real solver; slot i is cut from sheet i, every other slot shows
 * its back; bases are Shell cardstock, all other cardstock is to be bought in teal.
 */
export function guideWorld(layouts: readonly Layout[], ruler: Ruler = 'in'): GuideAsk {
  const cards = layouts.map((layout, index) => ({ number: index + 1, layout }));
  const sheet = parseSize('6 x 6 in');
  const scheme = cutScheme(piecesOf(cards).patterned, sheet, usualSettings(ruler));
  const sheets = scheme.slots.map((_, index): Sheet => ({
    id: `sheet-${index + 1}`,
    label: `Sheet ${index + 1}`,
    copies: 1,
    front: side(`front-${index + 1}`),
    back: side(`back-${index + 1}`),
  }));
  const chosen = cards.map(({ number, layout }): ChosenCard => ({
    number,
    layout: layout.id,
    score: 0.8,
    why: 'Sheet 1 and Sheet 2 share teal; large beside small.',
    reasons: [],
    layers: layout.layers.map(({ id, role, material }) => {
      const at = scheme.slots.findIndex(({ pieces }) =>
        pieces.some(({ piece }) => piece.card === number && piece.layer === id),
      );
      if (material === 'patterned')
        return {
          layer: id,
          role,
          choice: {
            kind: 'paper',
            slot: scheme.slots[at]!.id,
            sheet: `sheet-${at + 1}`,
            side: `${at % 2 === 0 ? 'front' : 'back'}-${at + 1}`,
          },
        };
      return role === 'base'
        ? { layer: id, role, choice: { kind: 'supply', supply: 'shell' } }
        : { layer: id, role, choice: { kind: 'wanted', lab: TEAL } };
    }),
  }));
  return {
    title: 'Thank-you cards',
    pad: { id: 'pad', name: 'Tidewrack', sheetSize: sheet, sheets },
    cards,
    scheme,
    plan: {
      cards: chosen,
      slots: Object.fromEntries(scheme.slots.map(({ id }, index) => [id, `sheet-${index + 1}`])),
      value: chosen.length * 0.8,
      bound: chosen.length * 0.8,
      proven: true,
      notes: [],
    },
    supplies: [STOCK, INK],
    ruler,
    picture: (id) => id,
  };
}

export function layoutsOf(suffix: string): Layout[] {
  return catalogue.filter(({ id }) => id.endsWith(`-${suffix}`));
}
