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
 * Takes       places on the sheet with their light, the places of each colour (two colours or more), and the channel.
 * Gives       one for each colour whose steepness can be told at all.
 */
export function steepnessOf(
  places: Places,
  colours: readonly (readonly number[])[],
  channel: number,
): Steepness[] {
  const seen = colours
    .map((own) => levelled(places, own, channel))
    .filter(({ level }) => level > DARKEST && level < LIGHTEST);
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

interface Colour {
  readonly count: number;
  /** Terms of each place less their mean, and log light less its mean. */
  readonly terms: Float64Array;
  readonly logs: Float64Array;
  readonly level: number;
  steep: number;
  error: number;
  /** Variance of a place around what the shape tells. */
  spread: number;
}

function levelled({ at, seen }: Places, own: readonly number[], channel: number): Colour {
  const count = own.length;
  const terms = new Float64Array(TERMS * count);
  const logs = Float64Array.from(own, (place) => seen[3 * place + channel]!);
  own.forEach((place, i) => {
    const [x, y] = [at[2 * place]!, at[2 * place + 1]!];
    terms.set([x, y, x * x, x * y, y * y], TERMS * i);
  });
  const level = encodedByte(logs.reduce((sum, log) => sum + Math.exp(log), 0) / count) / 255;
  lessMean(logs, 1);
  lessMean(terms, TERMS);
  return { count, terms, logs, level, steep: 1, error: 1, spread: 0.03 ** 2 };
}

function lessMean(values: Float64Array, stride: number): void {
  for (let k = 0; k < stride; k++) {
    let sum = 0;
    for (let i = k; i < values.length; i += stride) sum += values[i]!;
    const mean = (sum * stride) / values.length;
    for (let i = k; i < values.length; i += stride) values[i]! -= mean;
  }
}

/** The shape that explains all colours best, each as steep as it is known to be. */
function shapeOf(seen: readonly Colour[]): Float64Array {
  const matrix = Array.from({ length: TERMS }, (_, t) => {
    const row = new Float64Array(TERMS + 1);
    row[t] = 1e-6;
    return row;
  });
  for (const { count, terms, logs, steep, spread } of seen)
    for (let i = 0; i < count; i++)
      for (let t = 0; t < TERMS; t++) {
        const weighed = (steep * terms[TERMS * i + t]!) / spread;
        for (let u = 0; u < TERMS; u++) matrix[t]![u]! += weighed * steep * terms[TERMS * i + u]!;
        matrix[t]![TERMS]! += weighed * logs[i]!;
      }
  return solve(matrix);
}

/** How steep a colour is along the shape, half the way from where it was so that the turns settle. */
function follow(colour: Colour, shape: Float64Array): void {
  const { count, terms, logs } = colour;
  let [squares, products, all] = [1e-12, 0, 0];
  for (let i = 0; i < count; i++) {
    let told = 0;
    for (let t = 0; t < TERMS; t++) told += shape[t]! * terms[TERMS * i + t]!;
    squares += told * told;
    products += told * logs[i]!;
    all += logs[i]! * logs[i]!;
  }
  const steep = products / squares;
  colour.spread = Math.max(1e-6, (all - steep * products) / count);
  colour.error = Math.hypot(Math.sqrt((ALIKE * colour.spread) / squares), UNEVEN);
  colour.steep = Math.min(3, Math.max(0.2, (steep + colour.steep) / 2));
}
