/**
 * Matching supplies to papers: verdicts on photographed tables whose true colours are known, one picture
 * against two, and speed. Also runnable alone: npx tsx tests/benchmark/supplies.ts
 */
import { fileURLToPath } from 'node:url';
import type { ColourTruth } from '../../sample-swatches/paper/render-side.ts';
import { difference } from '../../server/colour/difference.ts';
import type { Lab } from '../../server/colour/lab.ts';
import { uncertaintyOfDifference } from '../../server/supplies/compared.ts';
import { matchOf } from '../../server/supplies/match-of.ts';
import type { MatchVerdict } from '../../server/supplies/match-of.ts';
import { nearestColour } from '../../server/supplies/nearest-colour.ts';
import type { Nearest } from '../../server/supplies/nearest-colour.ts';
import { LIMITS } from '../../server/supplies/verdict.ts';
import type { Verdict } from '../../server/supplies/verdict.ts';
import { chanceOf } from '../colour/drawn.ts';
import { sideOf, supplyOf } from '../supplies/sides.ts';
import type { Figure } from './figure.ts';
import type { KnownSide, KnownSupply, Tables } from './supplies-tables.ts';
import { tablesOf } from './supplies-tables.ts';

/** Seeds that nothing was tuned on. */
const SEEDS = [9101, 9102, 9103, 9104, 9105, 9106];

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

/** A palette colour further than this (CIEDE2000) from the printed one is another colour. */
const MISREAD = 6;

function trueVerdict(apart: number): Verdict {
  if (apart <= LIMITS.accepted) return 'match';
  return apart <= LIMITS.close ? 'close' : 'apart';
}

/** A colour of a print is to be found from this share of its area, as in the figures on photos. */
const SEEN = 0.05;

/**
 * What is true of a supply and a side: by the nearest of the colours that fill a twentieth of it or more,
 * wherever their tone runs; but where the verdict speaks of a smaller colour that is printed as well,
 * by that one.
 */
function truthOf({ lab }: KnownSupply, { printed }: KnownSide, given: MatchVerdict): Truth {
  const to = (colours: readonly ColourTruth[], of: Lab): Nearest =>
    nearestColour(of, {
      colours: colours.map((one) => ({ ...one, uncertainty: 0 })),
      tonal: false,
    });
  const nearest = to(
    printed.filter(({ share }) => share >= SEEN),
    lab,
  );
  const spokenOf = to(printed, given.nearest.lab);
  const small = spokenOf.difference <= MISREAD && spokenOf.colour.share < SEEN;
  return { nearest, ofSmall: small ? to([spokenOf.colour], lab).difference : null };
}

interface Truth {
  readonly nearest: Nearest;
  /** To the smaller colour that the verdict speaks of. */
  readonly ofSmall: number | null;
}

function verdictFigures(tables: readonly Tables[]): Figure[] {
  const checks = tables.flatMap(({ sides, supplies }) =>
    supplies.flatMap((known) =>
      sides.map((one) => {
        const given = matchOf(known.supply, one.side);
        const { nearest, ofSmall } = truthOf(known, one, given);
        const apart = nearest.difference;
        const sameColour =
          ofSmall !== null ||
          difference(given.nearest.lab, nearest.at) <= MISREAD ||
          (apart > MISREAD && given.difference > MISREAD);
        const truth = ofSmall === null ? trueVerdict(apart) : trueVerdict(ofSmall);
        const ofLarge = trueVerdict(apart);
        const right = given.verdict === ofLarge || given.verdict === truth;
        return { given, right, ofLarge, apart, sameColour };
      }),
    ),
  );
  const decided = checks.filter(({ given }) => given.verdict !== 'cannot tell');
  const right = decided.filter((one) => one.right);
  const wellRead = decided.filter(({ sameColour }) => sameColour);
  const falseMatches = decided.filter((one) => one.given.verdict === 'match' && !one.right);
  const near = checks.filter(({ apart }) => apart < 10);
  const nearUndecided = near.filter(({ given }) => given.verdict === 'cannot tell');
  const note = `${checks.length} checks on ${tables.length} unseen tables, two photos, normal light, white card`;
  return [
    percent('verdict right, of those decided', right, decided, { at: 'least', value: 95 }, note),
    percent(
      'the same, where the palette holds the colour that is truly nearest',
      wellRead.filter((one) => one.right),
      wellRead,
      null,
      'the rest are palettes that lack the colour, or show one that is not printed',
    ),
    percent(
      'verdict right by colours of 5 % and more alone',
      decided.filter(({ given, ofLarge }) => given.verdict === ofLarge),
      decided,
      null,
      'a supply that matches a smaller printed colour counts as wrong here',
    ),
    percent(
      'undecided',
      checks.filter(({ given }) => given.verdict === 'cannot tell'),
      checks,
      { at: 'most', value: 15 },
      `of the ${near.length} that are truly within 10: ${Math.round((100 * nearUndecided.length) / near.length)} %`,
    ),
    percent('false match', falseMatches, checks, { at: 'most', value: 1 }, 'of all checks'),
    {
      name: 'true error of a difference over its stated uncertainty, root mean square',
      value: rootMeanSquare(
        near.map(({ given, apart }) => (given.difference - apart) / given.uncertainty),
      ),
      unit: 'times',
      bar: null,
      note: 'truly within 10; below 1 the uncertainty is on the safe side',
    },
  ];
}

function percent(
  name: string,
  part: readonly unknown[],
  whole: readonly unknown[],
  bar: Figure['bar'],
  note: string,
): Figure {
  return { name, value: (100 * part.length) / whole.length, unit: '%', bar, note };
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
