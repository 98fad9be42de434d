import type { Layer, Layout, NewLayout } from '../../server/contract/layouts.ts';
import { millimetres, written } from '../lengths/lengths.ts';
import { rulerOf, stepOf } from './place-layer.ts';

export const kinds = ['rectangle', 'strip', 'circle', 'banner'] as const;
export type Kind = (typeof kinds)[number];

/** The same card with only its base: something to begin on. */
export function blank(like: Layout, name: string): NewLayout {
  return { name, card: like.card, fold: like.fold, layers: like.layers.slice(0, 1) };
}

/** Another layer on top, in the middle of the card, in the first patterned paper. */
export function added(layout: NewLayout, kind: Kind): NewLayout {
  const ruler = rulerOf(layout.card);
  const whole = [millimetres(layout.card.width) ?? 0, millimetres(layout.card.height) ?? 0];
  const [across, down] = whole as [number, number];
  const steps = (mm: number): string =>
    written(Math.round(mm / stepOf(ruler)) * stepOf(ruler), ruler);
  const round = Math.min(across, down) * 0.4;
  const [width, height] = {
    rectangle: [across * 0.5, down * 0.4],
    strip: [across, down * 0.15],
    circle: [round, round],
    banner: [across * 0.7, down * 0.15],
  }[kind] as [number, number];
  const paper =
    layout.layers.find(({ material }) => material === 'patterned')?.paper ?? freePaper(layout);
  const layer: Layer = {
    id: freeName(layout, kind),
    role: kind === 'strip' ? 'strip' : kind === 'rectangle' ? 'panel' : 'focal',
    material: 'patterned',
    paper,
    box: {
      x: steps((across - width) / 2),
      y: steps((down - height) / 2),
      width: steps(width),
      height: steps(height),
    },
    shape:
      kind === 'circle'
        ? { kind }
        : kind === 'banner'
          ? { kind, notch: steps(height / 2) }
          : { kind: 'rectangle' },
  };
  return { ...layout, layers: [...layout.layers, layer] };
}

/** The layout with one layer changed. */
export function withLayer(layout: NewLayout, at: number, layer: Layer): NewLayout {
  return { ...layout, layers: layout.layers.map((one, n) => (n === at ? layer : one)) };
}

/** The layer one step up (1) or down (-1) in the stack; the base stays the lowest. */
export function shifted(layout: NewLayout, at: number, by: 1 | -1): NewLayout {
  const to = at + by;
  if (at < 1 || to < 1 || to >= layout.layers.length) return layout;
  const layers = [...layout.layers];
  [layers[at], layers[to]] = [layers[to]!, layers[at]!];
  return { ...layout, layers };
}

/** The layout without a layer; the base stays. */
export function without(layout: NewLayout, at: number): NewLayout {
  if (at < 1) return layout;
  return { ...layout, layers: layout.layers.filter((_, n) => n !== at) };
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
