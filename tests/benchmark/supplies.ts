/**
 * Matching supplies to papers: verdicts on photographed tables whose true colours are known, one picture
 * against two, and speed. Also runnable alone: npx tsx tests/benchmark/supplies.ts
 */
import { fileURLToPath } from 'node:url';
import { difference } from '../../server/colour/difference.ts';
import type { Lab } from '../../server/colour/lab.ts';
import { uncertaintyOfDifference } from '../../server/supplies/compared.ts';
import { matchOf } from '../../server/supplies/match-of.ts';
import { LIMITS } from '../../server/supplies/verdict.ts';
import type { Verdict } from '../../server/supplies/verdict.ts';
import { chanceOf } from '../colour/drawn.ts';
import { sideOf, supplyOf } from '../supplies/sides.ts';
import type { Figure } from './figure.ts';
import type { KnownSupply, Tables } from './supplies-tables.ts';
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

function verdictFigures(tables: readonly Tables[]): Figure[] {
  const checks = tables.flatMap(({ sides, supplies }) =>
    supplies.flatMap(({ supply, lab }) =>
      sides.map(({ side, colours }) => {
        const nearest = colours.reduce((a, b) => (difference(lab, b) < difference(lab, a) ? b : a));
        const apart = difference(lab, nearest);
        const given = matchOf(supply, side);
        const sameColour =
          difference(given.nearest.lab, nearest) <= MISREAD ||
          (apart > MISREAD && given.difference > MISREAD);
        return { given, truth: trueVerdict(apart), apart, sameColour };
      }),
    ),
  );
  const decided = checks.filter(({ given }) => given.verdict !== 'cannot tell');
  const right = decided.filter(({ given, truth }) => given.verdict === truth);
  const wellRead = decided.filter(({ sameColour }) => sameColour);
  const falseMatches = checks.filter(
    ({ given, truth }) => given.verdict === 'match' && truth !== 'match',
  );
  const near = checks.filter(({ apart }) => apart < 10);
  const nearUndecided = near.filter(({ given }) => given.verdict === 'cannot tell');
  const note = `${checks.length} checks on ${tables.length} unseen tables, two photos, normal light, white card`;
  return [
    percent('verdict right, of those decided', right, decided, { at: 'least', value: 95 }, note),
    percent(
      'the same, where the palette holds the colour that is truly nearest',
      wellRead.filter(({ given, truth }) => given.verdict === truth),
      wellRead,
      null,
      'the rest are palettes that lack the colour, or show one that is not printed',
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
  const sides = Array.from({ length: 48 }, () =>
    sideOf([any(), any(), any(), any(), any(), any()]),
  );
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
