/**
 * How near the k-means of palettes comes to the best that many restarts find, and how fast it is beside
 * ml-kmeans alone. Also runnable alone: npx tsx tests/benchmark/photos-kmeans.ts
 */
import { fileURLToPath } from 'node:url';
import { kmeans } from 'ml-kmeans';
import { cluster } from '../../server/colour/cluster.ts';
import { histogramOf } from '../../server/colour/histogram.ts';
import type { Lab } from '../../server/colour/lab.ts';
import { startsOf } from '../../server/colour/starts.ts';
import { chanceOf, normal } from '../colour/drawn.ts';
import type { Figure } from './figure.ts';

const POINTS = 10_000;
const RESTARTS = 100;
const SEEDS = [101, 102, 103, 104, 105];
const K = 6;

/** Points of a print of 5 to 9 colours of uneven share, each with its grain and some soft borders. */
function pointsOf(seed: number): Float32Array {
  const chance = chanceOf(seed);
  const colours = Array.from({ length: 5 + Math.floor(5 * chance()) }, () => ({
    lab: [15 + 80 * chance(), 90 * (chance() - 0.5), 90 * (chance() - 0.5)],
    weight: 0.05 + chance() ** 2,
    grain: 1 + 3 * chance(),
  }));
  const total = colours.reduce((sum, { weight }) => sum + weight, 0);
  const any = (): (typeof colours)[number] => {
    let left = chance() * total;
    return colours.find(({ weight }) => (left -= weight) < 0) ?? colours[0]!;
  };
  const points = new Float32Array(3 * POINTS);
  for (let at = 0; at < points.length; at += 3) {
    const [one, other, mixed] = [any(), any(), chance() < 0.12 ? chance() : 0];
    for (let axis = 0; axis < 3; axis++)
      points[at + axis] =
        one.lab[axis]! * (1 - mixed) + other.lab[axis]! * mixed + one.grain * normal(chance);
  }
  return points;
}

function errorOf(points: Float32Array, centres: readonly (readonly number[])[]): number {
  let sum = 0;
  for (let at = 0; at < points.length; at += 3) {
    let least = Infinity;
    for (const [l, a, b] of centres)
      least = Math.min(
        least,
        (points[at]! - l!) ** 2 + (points[at + 1]! - a!) ** 2 + (points[at + 2]! - b!) ** 2,
      );
    sum += least;
  }
  return sum / POINTS;
}

const asRow = ({ l, a, b }: Lab): number[] => [l, a, b];

function ours(points: Float32Array, seed: number): number[][] {
  const histogram = histogramOf(points, null);
  return cluster(histogram, startsOf(histogram, K, seed), seed).centres.map(asRow);
}

function theirs(rows: number[][], points: Float32Array, restarts: number): number {
  let best = Infinity;
  for (let seed = 1; seed <= restarts; seed++)
    best = Math.min(best, errorOf(points, kmeans(rows, K, { seed }).centroids));
  return best;
}

function timed(run: () => unknown): number {
  const start = performance.now();
  run();
  return performance.now() - start;
}

export function kmeansFigures(): Figure[] {
  const excess: number[] = [];
  const spread: number[] = [];
  const ratios: number[] = [];
  for (const seed of SEEDS) {
    const points = pointsOf(seed);
    const rows = Array.from({ length: POINTS }, (_, i) => [...points.subarray(3 * i, 3 * i + 3)]);
    const best = theirs(rows, points, RESTARTS);
    const found = errorOf(points, ours(points, seed));
    excess.push(100 * (found / best - 1));
    spread.push(100 * (errorOf(points, kmeans(rows, K, { seed }).centroids) / best - 1));
    const plain = timed(() => {
      for (let restart = 1; restart <= 5; restart++) kmeans(rows, K, { seed: restart });
    });
    const own = Array.from({ length: 9 }, () => timed(() => ours(points, seed)));
    ratios.push(plain / own.sort((p, q) => p - q)[4]!);
  }
  const cases = `${SEEDS.length} sets of ${POINTS} points, k = ${K}`;
  return [
    {
      name: 'k-means: quantisation error above the best of 100 restarts, worst case',
      value: Math.max(...excess),
      unit: '%',
      bar: { at: 'most', value: 2 },
      note: `${cases}; one plain run of ml-kmeans: ${Math.max(...spread).toFixed(0)} % at worst`,
    },
    {
      name: 'k-means: times faster than ml-kmeans alone with 5 restarts, slowest case',
      value: Math.min(...ratios),
      unit: 'times',
      bar: { at: 'least', value: 10 },
      note: cases,
    },
  ];
}

if (process.argv[1] === fileURLToPath(import.meta.url)) console.table(kmeansFigures());
