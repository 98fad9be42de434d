import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { labFromHex } from '../../server/colour/spaces.ts';
import type { Lab } from '../../server/colour/lab.ts';
import { createColourTable } from '../../server/plan/coordination/look.ts';
import { pairScore } from '../../server/plan/coordination/pair-score.ts';
import { lookOfSolid } from '../../server/plan/coordination/shown.ts';
import { NO_TASTE } from '../../server/plan/coordination/taste.ts';
import { chance } from '../../server/plan/network/local-search.ts';
import type { Figure } from './figure.ts';

/**
 * How often the score prefers colours that people put together to colours recombined at random from the
 * same collection (area under the ROC curve; 0.5 is chance). Flat colours share nothing and have no
 * pattern, so only near misses, grounds and contrast can speak; reported, without a bar.
 */
export function peoplesColours(): Figure[] {
  return [
    figure('1,000 top-rated palettes (nice-color-palettes)', palettes()),
    figure(
      'combinations of a 1930s dictionary (dictionary-of-colour-combinations)',
      combinations(),
    ),
  ];
}

const require = createRequire(import.meta.url);

function palettes(): Lab[][] {
  const file = require.resolve('nice-color-palettes/1000.json');
  return (JSON.parse(readFileSync(file, 'utf8')) as string[][]).map((hexes) =>
    hexes.map((hex) => labFromHex(hex)),
  );
}

function combinations(): Lab[][] {
  const colours = require('dictionary-of-colour-combinations') as {
    readonly hex: string;
    readonly combinations: readonly number[];
  }[];
  const groups = new Map<number, Lab[]>();
  for (const { hex, combinations: numbers } of colours) {
    for (const number of numbers)
      groups.set(number, [...(groups.get(number) ?? []), labFromHex(hex)]);
  }
  return [...groups.values()].filter((group) => group.length > 1);
}

function figure(name: string, real: readonly Lab[][]): Figure {
  const random = chance(1);
  const all = real.flat();
  const mixed = real.map((colours) => colours.map(() => all[Math.floor(random() * all.length)]!));
  return {
    name: `preference for colours that people combined: ${name}`,
    value: areaUnderCurve(real.map(scoreOf), mixed.map(scoreOf)),
    unit: '',
    bar: null,
    note: `${real.length} combinations against as many recombined at random; 0.5 is chance`,
  };
}

function scoreOf(colours: readonly Lab[]): number {
  const table = createColourTable();
  const looks = colours.map((lab) => lookOfSolid({ lab, uncertainty: 0 }, table));
  let sum = 0;
  let pairs = 0;
  looks.forEach((a, at) => {
    for (const b of looks.slice(at + 1)) {
      sum += pairScore(a, b, table, NO_TASTE, true);
      pairs++;
    }
  });
  return sum / pairs;
}

function areaUnderCurve(right: readonly number[], wrong: readonly number[]): number {
  let wins = 0;
  for (const a of right) for (const b of wrong) wins += a > b ? 1 : a === b ? 0.5 : 0;
  return wins / (right.length * wrong.length);
}
