import type { Layer, Layout, NewLayout } from '../../server/contract/layouts.ts';
import { millimetres, written, type Ruler } from '../lengths/lengths.ts';
import { onEasyMark, boxOf, rulerOf } from './place-layer.ts';

export const kinds = ['panel', 'strip', 'circle', 'banner', 'greeting'] as const;
export type Kind = (typeof kinds)[number];

/** The same card with only its base: something to begin on. */
export function blank(like: Layout, name: string): NewLayout {
  return { name, card: like.card, fold: like.fold, layers: like.layers.slice(0, 1) };
}

const roleOf = {
  panel: 'panel',
  strip: 'strip',
  circle: 'focal',
  banner: 'focal',
  greeting: 'greeting',
} as const satisfies Record<Kind, Layer['role']>;

/** Another layer on top, in the middle of the card, in a paper that suits what it does. */
export function added(layout: NewLayout, kind: Kind): NewLayout {
  const ruler = rulerOf(layout.card);
  const whole = [millimetres(layout.card.width) ?? 0, millimetres(layout.card.height) ?? 0];
  const [across, down] = whole as [number, number];
  const steps = (mm: number): string => written(mm, ruler);
  const round = Math.min(across, down) * 0.4;
  const wished = {
    panel: [across * 0.5, down * 0.4],
    strip: [across, down * 0.15],
    circle: [round, round],
    banner: [across * 0.7, down * 0.15],
    greeting: [across * 0.6, down * 0.12],
  }[kind] as [number, number];
  const x = onEasyMark((across - wished[0]) / 2, ruler);
  const width = across - 2 * x;
  const y = onEasyMark((down - wished[1]) / 2, ruler);
  const height = kind === 'circle' ? width : down - 2 * y;
  const role = roleOf[kind];
  const layer: Layer = {
    id: freeName(layout, kind),
    role,
    ...paperForRole(layout, role),
    box: {
      x: steps(x),
      y: steps(y),
      width: steps(width),
      height: steps(height),
    },
    shape:
      kind === 'circle'
        ? { kind }
        : kind === 'banner'
          ? { kind, notch: steps(onEasyMark(height / 2, ruler)) }
          : { kind: 'rectangle' },
  };
  return { ...layout, layers: [...layout.layers, layer] };
}

/**
 * What a new layer is cut from until she says otherwise: mats and greetings of plain cardstock, one for all of
 * them; anything else of another pattern than the patterned layer below it, two patterns to a card.
 */
function paperForRole(layout: NewLayout, role: Layer['role']): Pick<Layer, 'material' | 'paper'> {
  if (isPlain(role)) {
    const like = layout.layers.find((one) => one.role === role && one.material === 'cardstock');
    return { material: 'cardstock', paper: like?.paper ?? freePaper(layout) };
  }
  const patterns = papersIn(layout, 'patterned');
  const below = layout.layers.findLast(({ material }) => material === 'patterned')?.paper;
  const other = patterns.find((paper) => paper !== below);
  return { material: 'patterned', paper: other ?? freePaper(layout) };
}

function isPlain(role: Layer['role']): boolean {
  return role === 'mat' || role === 'greeting';
}

/** The layer with another role. A panel that becomes a mat becomes plain, and the other way round. */
export function inRole(layout: NewLayout, layer: Layer, role: Layer['role']): Layer {
  if (isPlain(role) === isPlain(layer.role)) return { ...layer, role };
  return { ...layer, role, ...paperForRole(layout, role) };
}

/** The layout with one layer changed; what is stamped or glued on it goes where it goes. */
export function withLayer(layout: NewLayout, at: number, layer: Layer): NewLayout {
  const [before, after] = [boxOf(layout.layers[at]!), boxOf(layer)];
  const [byX, byY] = [after.x - before.x, after.y - before.y];
  const layers = layout.layers.map((one, n) => (n === at ? layer : one));
  if (layout.elements === undefined || (byX === 0 && byY === 0)) return { ...layout, layers };
  const elements = layout.elements.map((one) =>
    one.layer === layer.id ? carried(one, byX, byY, rulerOf(layout.card)) : one,
  );
  return { ...layout, layers, elements };
}

function carried<T extends Pick<Layer, 'box'>>(one: T, byX: number, byY: number, ruler: Ruler): T {
  const { x, y } = boxOf(one);
  const box = {
    ...one.box,
    x: written(Math.max(0, x + byX), ruler),
    y: written(Math.max(0, y + byY), ruler),
  };
  return { ...one, box };
}

/** The layer one step up (1) or down (-1) in the stack; the base stays the lowest. */
export function shifted(layout: NewLayout, at: number, by: 1 | -1): NewLayout {
  const to = at + by;
  if (at < 1 || to < 1 || to >= layout.layers.length) return layout;
  const layers = [...layout.layers];
  [layers[at], layers[to]] = [layers[to]!, layers[at]!];
  return { ...layout, layers };
}

/** The layout without a layer and what is stamped or glued on it; the base stays. */
export function without(layout: NewLayout, at: number): NewLayout {
  if (at < 1) return layout;
  const gone = layout.layers[at]?.id;
  const elements = layout.elements?.filter(({ layer }) => layer !== gone);
  return {
    ...layout,
    layers: layout.layers.filter((_, n) => n !== at),
    ...(elements && { elements }),
  };
}

/** The papers of one material in the order in which they first lie: the first is A, the next B. */
export function papersIn(layout: NewLayout, material: Layer['material']): string[] {
  return [
    ...new Set(layout.layers.filter((one) => one.material === material).map(({ paper }) => paper)),
  ];
}

/** A name that no paper of the layout has. */
export function freePaper({ layers }: NewLayout): string {
  return free(
    'paper',
    layers.map(({ paper }) => paper),
  );
}

function freeName({ layers }: NewLayout, kind: Kind): string {
  return free(
    kind,
    layers.map(({ id }) => id),
  );
}

function free(name: string, taken: readonly string[]): string {
  let number = 1;
  while (taken.includes(`${name}-${number}`)) number += 1;
  return `${name}-${number}`;
}
