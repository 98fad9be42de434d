import { sharesWithin } from '../colour/colour-map.ts';
import type { PlacedPiece } from '../cutting/piece.ts';
import type { BatchCard } from '../cutting/pieces-of.ts';
import { borders } from '../layouts/borders.ts';
import type { Layer } from '../layouts/layout.ts';
import { toMillimetres } from '../lengths/length.ts';
import type { Side } from '../pad/pad.ts';
import type { PlanAsk } from './ask.ts';
import { createColourTable } from './coordination/look.ts';
import type { ColourTable, Look } from './coordination/look.ts';
import { readable } from './coordination/greeting.ts';
import { pairScore } from './coordination/pair-score.ts';
import { lookAtPlace, lookOfSide, lookOfSolid, reachOf } from './coordination/shown.ts';
import type { Choice } from './plan.ts';
import { LYING, SAME_PAPER, TOGETHER, WANTED_DISCOUNT } from './weights.ts';

/**
 * The score of a chosen card for the checker, written apart from what the solver works with: only how
 * two looks go together (coordination/) and the numbers of weights.ts are shared. Border by border,
 * then the papers that never touch, then the greetings.
 */
export function recounted(
  ask: PlanAsk,
  card: BatchCard,
  choices: ReadonlyMap<string, Choice>,
): number {
  const { layers } = card.layout;
  const table = createColourTable();
  const faces = new Map(
    layers.map((layer) => [layer.id, faceOf(ask, card, layer, choices.get(layer.id)!, table)]),
  );
  const byId = new Map(layers.map((layer) => [layer.id, layer]));
  const visible = borders(card.layout);
  const edge = (layer: Layer): number =>
    visible.reduce(
      (sum, { a, b, length }) => sum + (a === layer.id || b === layer.id ? length : 0),
      0,
    );
  let got = 0;
  let most = 0;
  const judge = (one: Layer, other: Layer, weight: number, touching: boolean): void => {
    const [a, b] = [faces.get(one.id)!, faces.get(other.id)!];
    const twice = a.paper !== null && a.paper === b.paper;
    const worth = twice
      ? SAME_PAPER
      : pairScore(a.look, b.look, table, ask.taste, touching) * a.part * b.part;
    got += weight * worth;
    most += weight;
  };
  for (const { a, b, length } of visible)
    if (stuffOf(byId.get(a)!) !== stuffOf(byId.get(b)!))
      judge(byId.get(a)!, byId.get(b)!, length, true);
  const papers = [
    ...new Set(layers.filter((one) => one.material === 'patterned').map((one) => one.paper)),
  ].map((paper) => layers.filter((one) => one.material === 'patterned' && one.paper === paper));
  papers.forEach((mine, at) => {
    for (const theirs of papers.slice(at + 1)) {
      const meet = visible.some(
        ({ a, b }) =>
          (mine.some(({ id }) => id === a) && theirs.some(({ id }) => id === b)) ||
          (mine.some(({ id }) => id === b) && theirs.some(({ id }) => id === a)),
      );
      const [one, other] = [longest(mine, edge), longest(theirs, edge)];
      const weight = TOGETHER * Math.min(edge(one), edge(other));
      if (!meet && weight > 0) judge(one, other, weight, false);
    }
  });
  for (const layer of layers.filter(({ role }) => role === 'greeting')) {
    got += (edge(layer) / 2) * readable(faces.get(layer.id)!.look);
    most += edge(layer) / 2;
  }
  return most === 0 ? 1 : got / most;
}

interface Face {
  readonly look: Look;
  /** Id of the side; null for cardstock. */
  readonly paper: string | null;
  /** The part of its worth that it keeps: less when it lies, or would have to be bought. */
  readonly part: number;
}

function faceOf(
  ask: PlanAsk,
  card: BatchCard,
  layer: Layer,
  choice: Choice,
  table: ColourTable,
): Face {
  if (choice.kind === 'wanted')
    return {
      look: lookOfSolid({ lab: choice.lab, uncertainty: 0 }, table),
      paper: null,
      part: 1 - WANTED_DISCOUNT,
    };
  if (choice.kind === 'supply') {
    const supply = ask.supplies.find(({ id }) => id === choice.supply)!;
    return { look: lookOfSolid(supply, table), paper: null, part: 1 };
  }
  const { side } = sideOf(ask, choice)!;
  const own = piecesOfPaper(ask, card.number, layer.paper).filter(
    ({ piece }) => piece.layer === layer.id,
  );
  const { palette, pattern } = side;
  const here = own[0] === undefined ? null : sharesOn(ask, side, choice.slot, own[0]);
  const indices = palette.colours.map((colour) => table.add(colour));
  const short = Math.min(toMillimetres(layer.box.width), toMillimetres(layer.box.height));
  return {
    look:
      here === null
        ? lookOfSide(palette, pattern, indices, reachOf(short, pattern.scale))
        : lookAtPlace(palette, pattern, indices, here),
    paper: side.id,
    part: own.some((placed) => liesDown(side, placed)) ? LYING : 1,
  };
}

/** The colours of a side under a piece: its corners on the face that lies up, seen from the other face mirrored. */
function sharesOn(
  { pad, scheme, up }: PlanAsk,
  side: Side,
  slot: string,
  { piece, x, y, turned }: PlacedPiece,
): number[] | null {
  const { width, height } = scheme.sheet;
  const right = x + (turned ? piece.size.height : piece.size.width);
  const bottom = y + (turned ? piece.size.width : piece.size.height);
  const isBack = pad.sheets.some(({ back }) => back?.id === side.id);
  const mirrored = isBack !== (up?.[slot] === 'back');
  const left = mirrored ? width - right : x;
  return sharesWithin(side.palette, {
    x: left / width,
    y: y / height,
    width: (right - x) / width,
    height: (bottom - y) / height,
  });
}

/**
 * Whether the up of a print points to the left or right of an oblong piece, however it is spun, or away
 * from the up of the triangle that shares its rectangle.
 */
export function liesDown({ pattern }: Side, { piece, turned, pair }: PlacedPiece): boolean {
  const square = piece.size.width === piece.size.height;
  const upOnPiece = (pattern.up + (turned ? 90 : 0)) % 180;
  const against = pair !== undefined && pair.spin !== 0;
  return pattern.direction === 'one-way' && (against || (!square && upOnPiece === 90));
}

/** The pieces of one paper of a card. */
export function piecesOfPaper(ask: PlanAsk, card: number, paper: string): PlacedPiece[] {
  return ask.scheme.slots
    .flatMap(({ pieces }) => pieces)
    .filter(({ piece }) => piece.card === card && piece.paper === paper);
}

export function sideOf(
  ask: PlanAsk,
  choice: Extract<Choice, { kind: 'paper' }>,
): { sheet: string; side: Side } | undefined {
  for (const sheet of ask.pad.sheets) {
    for (const side of [sheet.front, sheet.back])
      if (side?.id === choice.side) return { sheet: sheet.id, side };
  }
  return undefined;
}

function stuffOf({ material, paper }: Layer): string {
  return `${material}/${paper}`;
}

/** The layer with the longest visible edge; the lowest of equals. */
function longest(layers: readonly Layer[], edge: (layer: Layer) => number): Layer {
  return layers.reduce((best, one) => (edge(one) > edge(best) ? one : best));
}
