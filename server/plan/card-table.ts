import type { Layout } from '../layouts/layout.ts';
import { factorsOf } from './card-factors.ts';
import type { CardModel, Part } from './card-model.ts';
import { cellReader, designTable, scaledBy, WHOLE } from './design-table.ts';
import type { Among, Scaled } from './design-table.ts';
import type { LookBook } from './look-book.ts';
import type { Factor } from './network/factor.ts';
import type { Wide } from './network/network.ts';
import type { Option } from './options.ts';
import { bestOptions, optionsByDesign, statesOf, withoutDominated } from './slim-card.ts';
import type { Slim } from './slim-card.ts';

/** What a card scores for every choice of designs in its slots, with sides and cardstock at their best. */
export interface CardTable {
  /** Exact, over slot numbers and designs; null for a card of many papers. */
  readonly factor: Factor | null;
  /** For a card of many papers: bounds over two slots at a time, and its true worth on request. */
  readonly wide: Wide | null;
  /** Number of the option of each part when the slots are cut from these designs. */
  best(designs: readonly number[]): number[];
}

export interface TableSettings {
  readonly designs: number;
  /** Cards of three papers are written out as one table up to so many cells. */
  readonly cells: number;
  /** Whether what a piece shows depends on its very place, so that only cards cut from the same places are alike. */
  readonly byPlace: boolean;
  /** The face that lies up while a slot, by its number, is cut. */
  readonly faceOf: (slot: number) => 'front' | 'back';
}

/**
 * Makes the tables of cards, with sides and cardstock maximised out exactly. Cards of one layout that are
 * cut and pinned alike share their tables, whatever slots they are cut from.
 */
export function createTables(
  book: LookBook,
  settings: TableSettings,
): (card: CardModel) => CardTable {
  const numbers = new Map<Layout, number>();
  const known = new Map<string, Tables>();
  return (card) => {
    const { layout } = card.card;
    if (!numbers.has(layout)) numbers.set(layout, numbers.size);
    const key = [
      `layout ${numbers.get(layout)!}`,
      ...inOrderOfSlots(card.parts).map((at) => `${at}`),
      ...card.parts.map((part) => likeness(part, settings)),
    ].join(' | ');
    const tables = known.get(key) ?? tablesOf(card, book, settings);
    known.set(key, tables);
    return placed(card, tables);
  };
}

/** What two parts have in common that may share tables: options, how their pieces are turned, where they lie. */
function likeness({ options, pieces, slot }: Part, { byPlace, faceOf }: TableSettings): string {
  const turned = pieces.map(({ piece, turned: turn, x, y, pair }) => {
    const place = byPlace ? ` at ${x} ${y} ${slot === null ? '' : faceOf(slot)}` : '';
    return `${piece.layer}${turn ? '*' : ''}${pair === undefined ? '' : ` spun ${pair.spin}`}${place}`;
  });
  return `${turned.join(' ')}: ${options.map(keyOf).join(' ')}`;
}

function keyOf(option: Option): string {
  if (option.kind === 'paper') return `${option.design}.${option.side.id}`;
  if (option.kind === 'supply') return option.supply.id;
  return `${option.lab.l},${option.lab.a},${option.lab.b}`;
}

function inOrderOfSlots(parts: readonly Part[]): number[] {
  return [...parts.keys()]
    .filter((at) => parts[at]!.slot !== null)
    .sort((a, b) => parts[a]!.slot! - parts[b]!.slot!);
}

/** The tables of a card over its papers, in the order of their slots. */
interface Tables {
  readonly slim: Slim;
  readonly whole: Float64Array | null;
  readonly upper: readonly { readonly papers: readonly number[]; readonly data: Float64Array }[];
  readonly at: (designs: readonly number[]) => number;
  readonly exact: Wide['exact'];
  readonly closer: () => readonly {
    readonly papers: readonly number[];
    readonly data: Float64Array;
  }[];
}

function tablesOf(card: CardModel, book: LookBook, settings: TableSettings): Tables {
  const { designs, cells } = settings;
  const slim = withoutDominated(card.parts, factorsOf(card, book));
  const { papers } = slim;
  const slots = papers.map((part) => card.parts[part]!.slot!);
  if (new Set(slots).size < slots.length)
    throw new RangeError('Expected different papers of one card in different slots');
  if (papers.some((part) => slim.kept[part]!.length === 0)) return nothing(slim, designs);
  const states = statesOf(slim);
  const shows = papers.map((part) => optionsByDesign(card.parts[part]!, slim.kept[part]!, designs));
  const every = Array.from({ length: designs }, (_, design) => design);
  const all = papers.map((_, at) => at);
  const over = (chosen: readonly number[], scaled: Scaled): Float64Array =>
    designTable(
      scaled,
      chosen,
      amongOf(
        chosen,
        shows,
        chosen.map(() => every),
      ),
    );
  const whole = scaledBy(states, WHOLE);
  const k = papers.length;
  const written = k <= 2 || (k === 3 && designs ** k <= cells);
  const shared = scaledBy(states, { worth: 2 / (k * (k - 1)), alone: 1 / (k - 1), pair: 1 });
  return {
    slim,
    whole: written ? over(all, whole) : null,
    upper: written ? [] : pairsOf(all).map((two) => ({ papers: two, data: over(two, shared) })),
    at: remembered(designs, cellReader(whole, shows)),
    exact: (lists) => designTable(whole, all, amongOf(all, shows, lists)),
    closer: once(() => {
      // Each paper stands in (k - 1)(k - 2) / 2 of the triples, each pair in k - 2.
      const parts = {
        worth: 6 / (k * (k - 1) * (k - 2)),
        alone: 2 / ((k - 1) * (k - 2)),
        pair: 1 / (k - 2),
      };
      const scaled = scaledBy(states, parts);
      return triplesOf(all).map((three) => ({ papers: three, data: over(three, scaled) }));
    }),
  };
}

function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | null = null;
  return () => (made ??= { value: make() }).value;
}

/** The tables as those of one card, over the slots that it is cut from. */
function placed(card: CardModel, tables: Tables): CardTable {
  const { slim, whole, upper } = tables;
  const scope = slim.papers.map((part) => card.parts[part]!.slot!);
  const best = (choice: readonly number[]): number[] => bestOptions(card.parts, slim, choice);
  const factor = (papers: readonly number[], data: Float64Array): Factor => {
    const width = Math.round(data.length ** (1 / Math.max(1, papers.length)));
    return { scope: papers.map((at) => scope[at]!), sizes: papers.map(() => width), data };
  };
  if (whole !== null) return { factor: factor([...scope.keys()], whole), wide: null, best };
  const wide: Wide = {
    scope,
    card: tables,
    upper: upper.map(({ papers, data }) => factor(papers, data)),
    at: (choice) => tables.at(scope.map((slot) => choice[slot]!)),
    exact: tables.exact,
    closer: () => tables.closer().map(({ papers, data }) => factor(papers, data)),
  };
  return { factor: null, wide, best };
}

function nothing(slim: Slim, designs: number): Tables {
  const never = (): number => -Infinity;
  return {
    slim,
    whole: new Float64Array(designs ** slim.papers.length).fill(-Infinity),
    upper: [],
    at: never,
    exact: (lists) =>
      new Float64Array(lists.reduce((cells, list) => cells * list.length, 1)).fill(-Infinity),
    closer: () => [],
  };
}

/** The options that show the listed designs, with the places of these in their lists. */
function amongOf(
  chosen: readonly number[],
  shows: readonly (readonly (readonly number[])[])[],
  lists: readonly (readonly number[])[],
): Among {
  const options: Int32Array[] = [];
  const place: Int32Array[] = [];
  chosen.forEach((paper, at) => {
    const own: number[] = [];
    const where: number[] = [];
    lists[at]!.forEach((design, number) => {
      for (const option of shows[paper]![design]!) {
        own.push(option);
        where.push(number);
      }
    });
    options.push(Int32Array.from(own));
    place.push(Int32Array.from(where));
  });
  const step = new Array<number>(chosen.length);
  let cells = 1;
  for (let at = chosen.length - 1; at >= 0; at--) {
    step[at] = cells;
    cells *= lists[at]!.length;
  }
  return { options, place, step, cells };
}

function triplesOf(list: readonly number[]): [number, number, number][] {
  return list.flatMap((a, i) =>
    pairsOf(list.slice(i + 1)).map(([b, c]): [number, number, number] => [a, b, c]),
  );
}

function pairsOf(list: readonly number[]): [number, number][] {
  return list.flatMap((a, i) => list.slice(i + 1).map((b): [number, number] => [a, b]));
}

/** Each cell is worked out once. */
function remembered(
  designs: number,
  read: (designs: readonly number[]) => number,
): (designs: readonly number[]) => number {
  const known = new Map<number, number>();
  return (choice) => {
    let key = 0;
    for (const design of choice) key = key * designs + design;
    let worth = known.get(key);
    if (worth === undefined) {
      worth = read(choice);
      known.set(key, worth);
    }
    return worth;
  };
}
