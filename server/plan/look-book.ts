import { sharesWithin } from '../colour/colour-map.ts';
import type { PlacedPiece } from '../cutting/piece.ts';
import { toMillimetres } from '../lengths/length.ts';
import type { Layer } from '../layouts/layout.ts';
import type { Side } from '../pad/pad.ts';
import type { PlanAsk } from './ask.ts';
import type { Shown } from './card-score.ts';
import { createColourTable } from './coordination/look.ts';
import type { ColourTable, Look } from './coordination/look.ts';
import { pairScore } from './coordination/pair-score.ts';
import { lookAtPlace, lookOfSide, lookOfSolid, reachOf } from './coordination/shown.ts';
import { lies } from './lying.ts';
import type { Option } from './options.ts';
import { placeOn } from './place.ts';

/** What every option shows on every layer, and the scores of the pairs, each worked out once. */
export interface LookBook {
  readonly table: ColourTable;
  shown(option: Option, layer: Layer, pieces: readonly PlacedPiece[]): Shown;
  score(a: Look, b: Look, touching: boolean): number;
  /** Speaks of the pieces of these cuts as well, under the same faces up. */
  learn(scheme: PlanAsk['scheme']): void;
}

export function createLookBook(ask: Pick<PlanAsk, 'taste' | 'pad' | 'scheme' | 'up'>): LookBook {
  const slots = new WeakMap<PlacedPiece, string>();
  const learn = ({ slots: all }: PlanAsk['scheme']): void => {
    for (const { id, pieces } of all) for (const placed of pieces) slots.set(placed, id);
  };
  learn(ask.scheme);
  const shares = sharesShown(ask, slots);
  const table = createColourTable();
  const looks = new Map<string, Look>();
  const indices = new Map<object, number[]>();
  const numbers = new Map<Look, number>();
  const scores: (number | undefined)[][][] = [[], []];

  const kept = (key: string, make: () => Look): Look => {
    const known = looks.get(key);
    if (known !== undefined) return known;
    const look = make();
    looks.set(key, look);
    numbers.set(look, numbers.size);
    return look;
  };
  const lookOfPaper = (side: Side, layer: Layer, pieces: readonly PlacedPiece[]): Look => {
    const own = pieces.find(({ piece }) => piece.layer === layer.id);
    const here = own === undefined ? null : shares(side, own);
    const { palette, pattern } = side;
    const short = Math.min(toMillimetres(layer.box.width), toMillimetres(layer.box.height));
    const reach = reachOf(short, pattern.scale);
    return kept(`${side.id} ${here === null ? reach : here.join()}`, () => {
      let known = indices.get(palette);
      if (known === undefined) {
        known = palette.colours.map((colour) => table.add(colour));
        indices.set(palette, known);
      }
      return here === null
        ? lookOfSide(palette, pattern, known, reach)
        : lookAtPlace(palette, pattern, known, here);
    });
  };
  return {
    table,
    learn,
    shown(option, layer, pieces) {
      if (option.kind === 'paper') {
        const mine = pieces.filter(({ piece }) => piece.layer === layer.id);
        return {
          look: lookOfPaper(option.side, layer, pieces),
          side: option.side.id,
          up: option.side.pattern.direction === 'one-way',
          lying: mine.some((placed) => lies(option.side.pattern, placed)),
          wanted: false,
        };
      }
      const solid = option.kind === 'supply' ? option.supply : { lab: option.lab, uncertainty: 0 };
      const key =
        option.kind === 'supply'
          ? `supply ${option.supply.id}`
          : `wanted ${option.lab.l} ${option.lab.a} ${option.lab.b}`;
      return {
        look: kept(key, () => lookOfSolid(solid, table)),
        side: null,
        up: false,
        lying: false,
        wanted: option.kind === 'wanted',
      };
    },
    score(a, b, touching) {
      const first = numbers.get(a)!;
      const second = numbers.get(b)!;
      const rows = scores[touching ? 1 : 0]!;
      const row = (rows[Math.max(first, second)] ??= []);
      return (row[Math.min(first, second)] ??= pairScore(a, b, table, ask.taste, touching));
    },
  };
}

/** The share of each colour of a side on a piece at its place; null where it is not known. */
function sharesShown(
  { pad, scheme, up = {} }: Pick<PlanAsk, 'pad' | 'scheme' | 'up'>,
  slotOf: Pick<WeakMap<PlacedPiece, string>, 'get'>,
): (side: Side, placed: PlacedPiece) => readonly number[] | null {
  const backs = new Set(pad.sheets.flatMap(({ back }) => (back === null ? [] : [back.id])));
  const known = new Map<string, readonly number[] | null>();
  return (side, placed) => {
    if (side.palette.where === undefined) return null;
    const face = backs.has(side.id) ? 'back' : 'front';
    const otherFace = face !== (up[slotOf.get(placed) ?? ''] ?? 'front');
    const part = placeOn(placed, scheme.sheet, otherFace);
    const key = `${side.id} ${part.x} ${part.y} ${part.width} ${part.height}`;
    const found = known.get(key) ?? sharesWithin(side.palette, part);
    known.set(key, found);
    return found;
  };
}
