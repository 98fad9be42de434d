/** How well patterns were read and fronts paired with backs, beside the bars. */
import type { Figure } from './figure.ts';
import { least, printedSides } from './photos-figures.ts';
import type { Strictness } from './photos-figures.ts';
import { quarterTurns, share } from './photos-match.ts';
import type { ReadPad } from './photos-read.ts';

export function patternFigures(pads: readonly ReadPad[], level: Strictness): Figure[] {
  const bars = level === 'normal';
  const { f1, note } = pairwise(pads);
  const sides = printedSides(pads);
  const repeats = sides.map(({ found, truth }) => {
    const { repeat } = found.pattern;
    return (
      repeat !== null &&
      truth.repeat !== null &&
      Math.abs(repeat - truth.repeat) <= 0.03 * truth.repeat
    );
  });
  const oneWay = sides.filter(
    ({ found, truth }) => truth.direction === 'one-way' && found.pattern.direction === 'one-way',
  );
  const ups = oneWay.map(({ found, truth }) => {
    const turned = (found.pattern.up + 90 * quarterTurns(found.corners, truth.corners)) % 360;
    return turned === 0;
  });
  return [
    {
      name: `${level}: pattern sets, pairwise F1`,
      value: f1,
      unit: '',
      bar: bars ? least(0.97) : null,
      note,
    },
    {
      name: `${level}: fronts paired with their backs`,
      value: share(pads.flatMap(({ pairings }) => pairings)),
      unit: '',
      bar: bars ? least(1) : null,
    },
    {
      name: `${level}: repeat within 3 %`,
      value: share(repeats),
      unit: '',
      bar: null,
      note: `${repeats.length} prints`,
    },
    {
      name: `${level}: direction told rightly`,
      value: share(sides.map(({ found, truth }) => found.pattern.direction === truth.direction)),
      unit: '',
      bar: null,
    },
    {
      name: `${level}: up told rightly`,
      value: share(ups),
      unit: '',
      bar: null,
      note: `${ups.length} one-way prints`,
    },
  ];
}

/** Over all pairs of sides of a pad: were those of one pattern put together, and only those? */
function pairwise(pads: readonly ReadPad[]): { f1: number; note: string } {
  let [both, told, real] = [0, 0, 0];
  for (const { shots, patternSets } of pads) {
    const sides = shots.flatMap(({ matched }) => matched);
    const setOf = new Map(patternSets.flatMap((set, index) => set.map((id) => [id, index])));
    for (const [index, one] of sides.entries())
      for (const other of sides.slice(0, index)) {
        const same = one.truth.pattern === other.truth.pattern;
        const set = setOf.get(one.found.id);
        const together = set !== undefined && set === setOf.get(other.found.id);
        if (same) real++;
        if (together) told++;
        if (same && together) both++;
      }
  }
  return {
    f1: (2 * both) / (told + real),
    note: `${real} true pairs, ${told} told, ${both} of them true`,
  };
}
