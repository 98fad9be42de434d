/**
 * Matching supplies to papers: verdicts on photographed tables whose true colours are known, one picture
 * against two, and speed. Also runnable alone: npx tsx tests/benchmark/supplies.ts
 */
import { fileURLToPath } from 'node:url';
import { difference } from '../../server/colour/difference.ts';
import type { Lab } from '../../server/colour/lab.ts';
import { uncertaintyOfDifference } from '../../server/supplies/compared.ts';
import { matchOf } from '../../server/supplies/match-of.ts';
import { chanceOf } from '../colour/drawn.ts';
import { sideOf, supplyOf } from '../supplies/sides.ts';
import type { Figure } from './figure.ts';
import { intervalOf } from './interval.ts';
import { checksOf } from './supplies-checks.ts';
import type { Check } from './supplies-checks.ts';
import type { KnownSupply, Tables } from './supplies-tables.ts';
import { SQUARES, tablesOf } from './supplies-tables.ts';

/** Seeds that nothing was tuned on; so many that a false match of 1 % would be ten of them. */
const SEEDS = Array.from({ length: 24 }, (_, index) => 9201 + index);

export async function supplies(): Promise<readonly Figure[]> {
  return figuresOf(SEEDS);
}

/** The figures on other seeds: for tuning, never for reporting. */
export async function figuresOf(seeds: readonly number[]): Promise<readonly Figure[]> {
  const quick = speed();
  const tables: Tables[] = [];
  for (const seed of seeds) tables.push(await tablesOf(seed));
  return [...verdictFigures(tables), ...pictureFigures(tables), quick];
}

function verdictFigures(tables: readonly Tables[]): Figure[] {
  const checks = checksOf(tables, 'supplies');
  const count = checks.flat().length;
  const note = `${count} checks on ${tables.length} unseen tables, two photos, normal light, one white card`;
  const near = checks.flat().filter(({ apart }) => apart < 10);
  return [
    share('verdict right, of those decided', checks, isDecided, isRight, LEAST_RIGHT, note),
    share(
      'the same, where the palette holds the colour that is truly nearest',
      checks,
      (one) => isDecided(one) && one.sameColour,
      isRight,
      null,
      'the rest are palettes that lack the colour, or show one that is not printed',
    ),
    share(
      'verdict right by colours of 5 % and more alone',
      checks,
      isDecided,
      ({ given, ofLarge }) => given.verdict === ofLarge,
      null,
      'a supply that matches a smaller printed colour counts as wrong here',
    ),
    share(
      'undecided',
      checks,
      () => true,
      (one) => !isDecided(one),
      MOST_UNDECIDED,
      `of the ${near.length} that are truly within 10: ${Math.round((100 * near.filter((one) => !isDecided(one)).length) / near.length)} %`,
    ),
    share('false match', checks, () => true, isFalseMatch, MOST_FALSE, 'of all checks'),
    ...errorFigures(near),
    ...otherCardFigures(tables),
    squaresFound(tables),
  ];
}

const LEAST_RIGHT = { at: 'least', value: 95 } as const;
const MOST_UNDECIDED = { at: 'most', value: 15 } as const;
const MOST_FALSE = { at: 'most', value: 1 } as const;

function isDecided({ given }: Check): boolean {
  return given.verdict !== 'cannot tell';
}

function isRight({ right }: Check): boolean {
  return right;
}

function isFalseMatch({ given, right }: Check): boolean {
  return given.verdict === 'match' && !right;
}

/** The part of some checks that is so, with its interval over the tables. */
function share(
  name: string,
  tables: readonly (readonly Check[])[],
  among: (check: Check) => boolean,
  isSo: (check: Check) => boolean,
  bar: Figure['bar'],
  note: string,
): Figure {
  const groups = tables.map((checks) => {
    const whole = checks.filter(among);
    return { part: whole.filter(isSo).length, whole: whole.length };
  });
  const part = groups.reduce((sum, group) => sum + group.part, 0);
  const whole = groups.reduce((sum, group) => sum + group.whole, 0);
  const [low, high] = intervalOf(groups);
  const told = `${part} of ${whole}; 95 % interval ${low.toFixed(1)} to ${high.toFixed(1)}`;
  return { name, value: (100 * part) / whole, unit: '%', bar, note: `${told}; ${note}` };
}

/** How true the stated uncertainty of a difference is. */
function errorFigures(near: readonly Check[]): Figure[] {
  const off = (checks: readonly Check[]): number[] =>
    checks.map(({ given, apart }) => (given.difference - apart) / given.uncertainty);
  const all = off(near).map(Math.abs);
  const within = (times: number): number =>
    (100 * all.filter((value) => value <= times).length) / all.length;
  return [
    {
      name: 'differences off by less than one stated uncertainty',
      value: within(1),
      unit: '%',
      bar: null,
      note: `truly within 10; by less than two: ${within(2).toFixed(0)} %`,
    },
    {
      name: 'true error of a difference over its stated uncertainty, root mean square',
      value: rootMeanSquare(off(near)),
      unit: 'times',
      bar: null,
      note: `truly within 10; where the palette holds the colour that is truly nearest: ${rootMeanSquare(off(near.filter(({ sameColour }) => sameColour))).toFixed(2)}`,
    },
  ];
}

/** The same supplies photographed on another day, beside another white card, which nothing can tell. */
function otherCardFigures(tables: readonly Tables[]): Figure[] {
  const checks = checksOf(tables, 'again');
  const note = 'supplies and papers each beside a white card of its own: reported, no bar';
  return [
    share(
      'another white card: verdict right, of those decided',
      checks,
      isDecided,
      isRight,
      null,
      note,
    ),
    share(
      'another white card: false match',
      checks,
      () => true,
      isFalseMatch,
      null,
      'of all checks',
    ),
  ];
}

/** What was not found is not checked above. */
function squaresFound(tables: readonly Tables[]): Figure {
  const found = tables.reduce(
    (sum, { supplies, again }) => sum + supplies.length + again.length,
    0,
  );
  const laid = 2 * SQUARES * tables.length;
  return {
    name: 'squares of cardstock found',
    value: (100 * found) / laid,
    unit: '%',
    bar: null,
    note: `${found} of ${laid} in ${2 * tables.length} pictures; the checks above are of those that were found`,
  };
}

/** Pairs of squares within 12 of each other: both from one photo, or one from each of two. */
function pictureFigures(tables: readonly Tables[]): Figure[] {
  const pairs = tables.flatMap(({ supplies, again }) =>
    supplies.flatMap((one, index) =>
      supplies
        .slice(index + 1)
        .filter((other) => difference(one.lab, other.lab) < 12)
        .map((other) => ({
          one,
          other,
          later: again.find(({ supply }) => supply.id === other.supply.id),
        })),
    ),
  );
  const together = pairs.map(({ one, other }) => errorOf(one, other));
  const apart = pairs.flatMap(({ one, later }) =>
    later === undefined ? [] : [errorOf(one, later)],
  );
  const [near, far] = [rootMeanSquare(together), rootMeanSquare(apart)];
  const stated = rootMeanSquare(
    pairs.map(({ one, other }) =>
      uncertaintyOfDifference(
        one.supply,
        { ...other, share: 1, role: 'ground', uncertainty: other.supply.uncertainty },
        'one photo',
      ),
    ),
  );
  return [
    {
      name: 'error of a difference, two pictures over one',
      value: far / near,
      unit: 'times',
      bar: { at: 'least', value: 2 },
      note: `${pairs.length} pairs of cardstock; ${far.toFixed(2)} and ${near.toFixed(2)} CIELAB units; stated for one picture ${stated.toFixed(2)} CIEDE2000`,
    },
  ];
}

/** How far the step from one colour to the other is off, in CIELAB units. */
function errorOf(one: KnownSupply, other: KnownSupply): number {
  const step = (a: Lab, b: Lab): Lab => ({ l: b.l - a.l, a: b.a - a.a, b: b.b - a.b });
  const [seen, known] = [step(one.supply.lab, other.supply.lab), step(one.lab, other.lab)];
  return Math.hypot(seen.l - known.l, seen.a - known.a, seen.b - known.b);
}

function rootMeanSquare(values: readonly number[]): number {
  return Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length);
}

function speed(): Figure {
  const chance = chanceOf(1);
  const any = (): Lab => ({
    l: 100 * chance(),
    a: 80 * (chance() - 0.5),
    b: 80 * (chance() - 0.5),
  });
  const many = Array.from({ length: 200 }, () => supplyOf(any(), { photo: 'other' }));
  const sides = Array.from({ length: 48 }, () => {
    const side = sideOf([any(), any(), any(), any(), any(), any()]);
    const colours = side.palette.colours.map((colour) => ({ ...colour, inside: chance() }));
    return { ...side, palette: { colours, tonal: false } };
  });
  const times: number[] = [];
  for (let round = 0; round < 7; round++) {
    const start = process.cpuUsage();
    for (const supply of many) for (const side of sides) matchOf(supply, side);
    const used = process.cpuUsage(start);
    times.push((used.user + used.system) / 1000);
  }
  return {
    name: '200 supplies against 48 sides of six colours',
    value: times.sort((a, b) => a - b)[3]!,
    unit: 'ms',
    bar: { at: 'most', value: 50 },
    note: 'processor time, median of 7, with words and reasons',
  };
}

if (process.argv[1] === fileURLToPath(import.meta.url))
  for (const figure of await supplies())
    console.log(`${figure.name}: ${figure.value.toFixed(2)} ${figure.unit} (${figure.note ?? ''})`);
