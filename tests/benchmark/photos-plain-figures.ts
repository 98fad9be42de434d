/** How well stated errors are borne out, and plain colours read, beside the bars. */
import { difference } from '../../server/colour/difference.ts';
import type { Figure } from './figure.ts';
import { SAME, intervalAs, most } from './photos-figures.ts';
import type { ColourError } from './photos-figures.ts';
import { median, percentile, share, sum } from './photos-match.ts';
import type { ReadSupplies } from './photos-read.ts';

/** Within one stated standard error should lie 68 %, within two 95 %; missed colours were not read at all. */
export function calibrationFigures(
  errors: readonly ColourError[],
  what: string,
  slack: number | null,
  furthest = SAME,
  groups = 'white cards',
): Figure[] {
  const read = errors.filter(({ off }) => off <= furthest);
  const beside = `${new Set(read.map(({ group }) => group)).size} ${groups}`;
  return (
    [
      [1, 68],
      [2, 95],
    ] as const
  ).map(([times, aim]) => {
    const borne = read.map(({ group, off, stated }) => ({ group, so: off <= times * stated }));
    const within = 100 * share(borne.map(({ so }) => so));
    return {
      name: `${what}: errors within ${times === 1 ? 'one' : 'two'} stated, off ${aim} % by`,
      value: Math.abs(within - aim),
      unit: 'points',
      bar: slack === null ? null : most(slack),
      note: `${within.toFixed(0)} % of ${read.length}, beside ${beside}; ${intervalAs(borne)}`,
    };
  });
}

export function supplyFigures(
  supplies: readonly ReadSupplies[],
  kind: string,
  bar: number | null,
  many = '',
): Figure[] {
  const truths = sum(supplies.map((one) => one.truths.length));
  const matched = supplies.flatMap((one) => one.matched);
  const offs = supplyErrors(supplies).map(({ off }) => off);
  return [
    {
      name: `${kind}${many}: found`,
      value: matched.length / truths,
      unit: '',
      bar: null,
      note: `${truths} in ${supplies.length} photos; ${sum(supplies.map((one) => one.found)) - matched.length} found that are none`,
    },
    {
      name: `${kind}${many}: colour, median`,
      value: median(offs),
      unit: 'CIEDE2000',
      bar: bar === null ? null : most(bar),
      note: `95th percentile ${percentile(offs, 0.95).toFixed(2)}; beside ${supplies.length} white cards`,
    },
  ];
}

export function supplyErrors(supplies: readonly ReadSupplies[]): ColourError[] {
  return supplies.flatMap(({ name, matched }) =>
    matched.map(({ found, truth }) => ({
      where: `${name} ${truth.name}`,
      picture: name,
      group: name,
      truth: truth.lab,
      read: found.lab,
      off: difference(found.lab, truth.lab),
      stated: found.uncertainty,
    })),
  );
}
