import { borders } from '../layouts/borders.ts';
import type { Border } from '../layouts/borders.ts';
import type { Layer, Layout } from '../layouts/layout.ts';
import { Lately } from '../recall/lately.ts';
import { TOGETHER } from './weights.ts';

/** Two layers of a card that are judged beside each other, and how much that counts. */
export interface Link {
  readonly a: Layer;
  readonly b: Layer;
  /** In millimetres of visible border. */
  readonly weight: number;
  /** False for two papers that are only seen together on the card. */
  readonly touching: boolean;
}

/** What is judged on a card: pairs of layers, and the greetings that must be read. */
export interface CardLinks {
  readonly links: readonly Link[];
  readonly greetings: readonly { readonly layer: Layer; readonly weight: number }[];
  /** Sum of all weights. */
  readonly total: number;
}

/**
 * What is judged on a card. Layers cut from one paper are not judged against each other. Two papers
 * that touch nowhere count by half the shorter of their visible borders; a greeting by half its own.
 */
export function linksOf(layout: Layout): CardLinks {
  const known = remembered.get(layout);
  if (known !== undefined) return known;
  const links = judgedOn(layout);
  remembered.set(layout, links);
  return links;
}

/** A layout never changes, and clipping its polygons is slow beside all that is done with them. */
const remembered = new WeakMap<Layout, CardLinks>();

/** Borders by what the layout is made of, as the same layout may come as another object each time. */
const bordersKnown = new Lately<string, readonly Border[]>(200);

function bordersOf(layout: Layout): readonly Border[] {
  const key = JSON.stringify([layout.card, layout.layers]);
  const found = bordersKnown.at(key) ?? borders(layout);
  bordersKnown.put(key, found);
  return found;
}

function judgedOn(layout: Layout): CardLinks {
  const layers = new Map(layout.layers.map((layer) => [layer.id, layer]));
  const links: Link[] = [];
  const around = new Map<string, number>();
  const met = new Set<string>();
  const note = (layer: Layer, length: number): void => {
    around.set(layer.id, (around.get(layer.id) ?? 0) + length);
  };
  for (const border of bordersOf(layout)) {
    const a = layers.get(border.a)!;
    const b = layers.get(border.b)!;
    note(a, border.length);
    note(b, border.length);
    if (groupOf(a) === groupOf(b) || border.length <= 0) continue;
    links.push({ a, b, weight: border.length, touching: true });
    met.add(pairKey(a, b));
  }
  const reach = (layer: Layer): number => around.get(layer.id) ?? 0;
  for (const [a, b] of pairsOf(leaders(layout, reach))) {
    const weight = TOGETHER * Math.min(reach(a), reach(b));
    if (met.has(pairKey(a, b)) || weight <= 0) continue;
    links.push({ a, b, weight, touching: false });
  }
  const greetings = layout.layers
    .filter((layer) => layer.role === 'greeting')
    .map((layer) => ({ layer, weight: reach(layer) / 2 }));
  const total = [...links, ...greetings].reduce((sum, part) => sum + part.weight, 0);
  return { links, greetings, total };
}

/** Layers of one group are cut from one paper (or one cardstock). */
export function groupOf(layer: Layer): string {
  return `${layer.material} ${layer.paper}`;
}

/** The layer of each paper with the longest visible border: it stands for its paper. */
function leaders(layout: Layout, reach: (layer: Layer) => number): Layer[] {
  const lead = new Map<string, Layer>();
  for (const layer of layout.layers) {
    if (layer.material !== 'patterned') continue;
    const kept = lead.get(groupOf(layer));
    if (kept === undefined || reach(layer) > reach(kept)) lead.set(groupOf(layer), layer);
  }
  return [...lead.values()];
}

function pairsOf<T>(list: readonly T[]): [T, T][] {
  return list.flatMap((a, at) => list.slice(at + 1).map((b): [T, T] => [a, b]));
}

function pairKey(a: Layer, b: Layer): string {
  return [groupOf(a), groupOf(b)].sort().join(' | ');
}
