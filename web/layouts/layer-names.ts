import type { Layer, NewLayout } from '../../server/contract/layouts.ts';
import { millimetres } from '../lengths/lengths.ts';
import { listed } from '../words/grammar.ts';
import { words } from '../words/words.ts';
import { boxOf } from './place-layer.ts';

/** Ids that nobody chose: what a layer is, with or without its place and a number. */
const BY_ITSELF =
  /^(?:(?:top|bottom|left|right|middle)-){0,2}(?:panel|strip|circle|banner|greeting|mat|centre-piece)(?:-\d+)?$/;

/** From this part of the card on a layer spans it; nearer to its middle than this a layer lies in the middle. */
const [SPANS, OFF] = [0.8, 0.1] as const;

/**
 * What the layers are called, by their ids: as she called them, else by what each is, and where several are
 * alike by where it lies: 'left panel', 'top strip'.
 */
export function layerNames(layout: NewLayout): Map<string, string> {
  const own = layout.layers.filter(({ id }) => !BY_ITSELF.test(id)).map(({ id }) => id);
  const others = layout.layers.filter(({ id }) => BY_ITSELF.test(id));
  const kinds = others.map(kindOf);
  const wished = others.map((layer, at) => {
    const alone = kinds.filter((kind) => kind === kinds[at]).length === 1;
    return alone ? kinds[at]! : `${placeOf(layer, layout)}${kinds[at]!}`;
  });
  const names = new Map(own.map((id) => [id, id]));
  others.forEach(({ id }, at) => {
    const alike = wished.filter((name) => name === wished[at]).length > 1;
    const taken = new Set(names.values());
    let number = 1;
    const numbered = (): string => `${wished[at]!}-${number}`;
    while (taken.has(numbered())) number += 1;
    names.set(id, alike || taken.has(wished[at]!) ? numbered() : wished[at]!);
  });
  return names;
}

/** How a layer is called in a sentence or on a button. */
export function layerCalled(layout: NewLayout, id: string): string {
  return words.layerName(layerNames(layout).get(id) ?? id);
}

/** The layout with its layers under the names that they are called by, as plan and guide will say them. */
export function withNames(layout: NewLayout): NewLayout {
  const names = layerNames(layout);
  return renamed(layout, (id) => names.get(id) ?? id);
}

/** The layout with one layer called as she typed it; by what it is where she typed nothing. */
export function called(layout: NewLayout, at: number, text: string): NewLayout {
  const before = layout.layers[at]!;
  const taken = layout.layers.filter((_, n) => n !== at).map(({ id }) => id);
  const wished = idOf(text) || `${kindOf(before)}-1`;
  let id = wished;
  for (let number = 2; taken.includes(id); number += 1)
    id = `${wished.replace(/-\d+$/, '')}-${number}`;
  return renamed(layout, (one) => (one === before.id ? id : one));
}

/** Layers that lie in the same paper as one, by their names: 'left panel and top strip'; '' where none does. */
export function sharersOf(layout: NewLayout, layer: Layer, paper: string): string {
  const names = layerNames(layout);
  const others = layout.layers.filter((one) => one.paper === paper && one.id !== layer.id);
  return listed(others.map(({ id }) => (names.get(id) ?? id).replaceAll('-', ' ')));
}

function renamed(layout: NewLayout, nameOf: (id: string) => string): NewLayout {
  const layers = layout.layers.map((layer) => ({ ...layer, id: nameOf(layer.id) }));
  const elements = layout.elements?.map((one) => ({ ...one, layer: nameOf(one.layer) }));
  return { ...layout, layers, ...(elements && { elements }) };
}

/** Letters without their marks, figures and dashes: what an id may have. */
function idOf(text: string): string {
  return text
    .normalize('NFD')
    .replaceAll(/\p{M}/gu, '')
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-+|-+$/g, '')
    .slice(0, LONGEST)
    .replace(/-+$/, '');
}

/** Longer names find no room on a piece. */
const LONGEST = 24;

function kindOf({ role, shape }: Layer): string {
  if (role !== 'focal') return role;
  return shape.kind === 'circle' || shape.kind === 'banner' ? shape.kind : 'centre-piece';
}

/** 'top-left-', 'middle-'; '' for a layer that spans the card both ways. */
function placeOf(layer: Layer, { card }: NewLayout): string {
  const { x, y, width, height } = boxOf(layer);
  const across = millimetres(card.width) ?? 1;
  const down = millimetres(card.height) ?? 1;
  const spans = [width / across >= SPANS, height / down >= SPANS] as const;
  const place = [
    spans[1] ? '' : sideOf((y + height / 2) / down, 'top', 'bottom'),
    spans[0] ? '' : sideOf((x + width / 2) / across, 'left', 'right'),
  ].filter((side) => side !== '');
  if (place.length > 0) return `${place.join('-')}-`;
  return spans[0] && spans[1] ? '' : 'middle-';
}

function sideOf(middle: number, near: string, far: string): string {
  if (middle < 0.5 - OFF) return near;
  return middle > 0.5 + OFF ? far : '';
}
