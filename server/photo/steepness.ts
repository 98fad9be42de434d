import { encodedByte } from '../colour/curves.ts';
import type { Places } from './ground-cells.ts';
import { solve } from './surface.ts';

/** How much one printed colour changes where the light over its sheet changes. */
export interface Steepness {
  /** Its mean encoded value, in [0, 1]. */
  readonly level: number;
  /** Change of its log light over that of the sheet's colours together: near 1. */
  readonly steep: number;
  /** Standard error of that. */
  readonly error: number;
}

/** Terms of the light over a sheet: x, y, xx, xy, yy. */
const TERMS = 5;
const ROUNDS = 6;

/**
 * How steep each colour of one sheet is, in one channel.
 *
 * log light at a place = the colour's own height + its steepness x one smooth shape over the sheet. Heights and shape
 * follow from the steepnesses by least squares, each steepness from the shape by regression, by turns.
 *
 * The table around is asked as well: what light would fall on the sheet if it lay as flat is known from there, and tones
 * of the table's own level show it. It counts for no more than a sheet lies flat.
 *
 * Takes       places on the sheet with their light, the places of each colour (one colour or more), and the channel.
 * Gives       one for each colour whose steepness can be told at all.
 */
export function steepnessOf(
  places: Places,
  colours: readonly (readonly number[])[],
  channel: number,
): Steepness[] {
  const seen = [
    ...colours.map((own) => levelled(places, own, channel, places.seen, null)),
    tableUnder(places, colours, channel),
  ].filter(({ level }) => level > DARKEST && level < LIGHTEST);
  if (seen.length < 2) return [];
  for (let round = 0; round < ROUNDS; round++) {
    const shape = shapeOf(seen);
    for (const colour of seen) follow(colour, shape);
    const together =
      seen.reduce((sum, { steep, error }) => sum + steep / error ** 2, 0) /
      seen.reduce((sum, { error }) => sum + 1 / error ** 2, 0);
    for (const colour of seen) colour.steep /= together;
  }
  return seen
    .filter(({ error }) => error < UNTOLD)
    .map(({ level, steep, error }) => ({ level, steep, error }));
}

/** Near either end of the scale values are cut off or drown in noise. */
const [DARKEST, LIGHTEST] = [0.05, 0.98];
/** A colour whose steepness is less sure than this tells nothing. */
const UNTOLD = 0.5;
/** Print is not even to better than this part of a steepness. A judgement. */
const UNEVEN = 0.03;
/** Neighbouring places share their noise, so a quarter of them count. */
const ALIKE = 4;

/**
 * A colour with the sums of its places that a shape is fitted by: they do not change from round to round. Terms and
 * log light are taken less their means.
 */
interface Colour {
  readonly count: number;
  /** Sums of the products of terms, TERMS x TERMS, and of each term with log light. */
  readonly squares: Float64Array;
  readonly products: Float64Array;
  /** Sum of the squares of log light. */
  readonly all: number;
  readonly level: number;
  steep: number;
  error: number;
  /** Variance of a place around what the shape tells. */
  spread: number;
  /** How far it strays is known beforehand. */
  readonly known: boolean;
}

/** The table as it would show where the sheet lies: it strays as a sheet does that lies less flat than it. */
function tableUnder(
  places: Places,
  colours: readonly (readonly number[])[],
  channel: number,
): Colour {
  const all = colours.reduce((sum, own) => sum + own.length, 0);
  const step = Math.ceil(all / ENOUGH);
  const own = colours.flatMap((places) => places.filter((_, index) => index % step === 0));
  const table = levelled(places, own, channel, places.seen, places.evened);
  return { ...table, spread: (TABLE ** 2 * table.count) / (ALIKE * TILTS), known: true };
}

/** Known light is smooth, so about so many places tell all of it. */
const ENOUGH = 600;

/**
 * How far light on a sheet is off that the table around tells, as a logarithm.
 *
 * Source      0.019 on 45 rendered photos of papers (light.ts); all three channels stray alike, so each counts a third.
 */
const TABLE = 0.033;
/** It strays mostly by a tilt, across and down. */
const TILTS = 2;

/** The sums of a colour's places; of `seen`, three a place, with `less` taken away where there is such. */
function levelled(
  { at }: Places,
  own: readonly number[],
  channel: number,
  seen: Float64Array,
  less: Float64Array | null,
): Colour {
  const count = own.length;
  const values = new Float64Array(TERMS + 1);
  const sums = new Float64Array(TERMS + 1);
  const read = (place: number): void => {
    termsOf(at, place, values);
    const index = 3 * place + channel;
    values[TERMS] = less === null ? seen[index]! : seen[index]! - less[index]!;
  };
  let lightness = 0;
  for (const place of own) {
    read(place);
    lightness += Math.exp(values[TERMS]!);
    for (let t = 0; t <= TERMS; t++) sums[t]! += values[t]! / count;
  }
  const squares = new Float64Array(TERMS * TERMS);
  const products = new Float64Array(TERMS);
  let all = 0;
  for (const place of own) {
    read(place);
    for (let t = 0; t <= TERMS; t++) values[t]! -= sums[t]!;
    const log = values[TERMS]!;
    all += log * log;
    for (let t = 0; t < TERMS; t++) {
      products[t]! += values[t]! * log;
      for (let u = t; u < TERMS; u++) squares[TERMS * t + u]! += values[t]! * values[u]!;
    }
  }
  for (let t = 1; t < TERMS; t++)
    for (let u = 0; u < t; u++) squares[TERMS * t + u] = squares[TERMS * u + t]!;
  const level = encodedByte(lightness / count) / 255;
  return {
    count,
    squares,
    products,
    all,
    level,
    steep: 1,
    error: 1,
    spread: 0.03 ** 2,
    known: false,
  };
}

/** x, y, xx, xy and yy of a place. */
function termsOf(at: Float64Array, place: number, terms: Float64Array): void {
  const x = at[2 * place]!;
  const y = at[2 * place + 1]!;
  terms[0] = x;
  terms[1] = y;
  terms[2] = x * x;
  terms[3] = x * y;
  terms[4] = y * y;
}

/** The shape that explains all colours best, each as steep as it is known to be. */
function shapeOf(seen: readonly Colour[]): Float64Array {
  const matrix = Array.from({ length: TERMS }, (_, t) => {
    const row = new Float64Array(TERMS + 1);
    row[t] = 1e-6;
    return row;
  });
  for (const { squares, products, steep, spread } of seen)
    for (let t = 0; t < TERMS; t++) {
      for (let u = 0; u < TERMS; u++)
        matrix[t]![u]! += (steep * steep * squares[TERMS * t + u]!) / spread;
      matrix[t]![TERMS]! += (steep * products[t]!) / spread;
    }
  return solve(matrix);
}

/** How steep a colour is along the shape, half the way from where it was so that the turns settle. */
function follow(colour: Colour, shape: Float64Array): void {
  let [told, along] = [1e-12, 0];
  for (let t = 0; t < TERMS; t++) {
    along += shape[t]! * colour.products[t]!;
    for (let u = 0; u < TERMS; u++) told += shape[t]! * shape[u]! * colour.squares[TERMS * t + u]!;
  }
  const steep = along / told;
  if (!colour.known) colour.spread = Math.max(1e-6, (colour.all - steep * along) / colour.count);
  colour.error = Math.hypot(Math.sqrt((ALIKE * colour.spread) / told), UNEVEN);
  colour.steep = Math.min(3, Math.max(0.2, (steep + colour.steep) / 2));
}
