/** From readings beside their truth to figures beside their bars. */
import { difference } from '../../server/colour/difference.ts';
import type { Lab } from '../../server/colour/lab.ts';
import type { Figure } from './figure.ts';
import {
  cornerErrors,
  median,
  nearest,
  percentile,
  quarterTurns,
  share,
  sum,
} from './photos-match.ts';
import type { ReadPad, ReadShot, ReadSupplies } from './photos-read.ts';

type Bar = Figure['bar'];

const most = (value: number): Bar => ({ at: 'most', value });
const least = (value: number): Bar => ({ at: 'least', value });

export type Strictness = 'scanner' | 'normal' | 'hard';

export function sheetFigures(pads: readonly ReadPad[], level: Strictness): Figure[] {
  const shots = pads.flatMap((pad) => pad.shots);
  const truths = sum(shots.map((shot) => shot.truths.length));
  const matched = sum(shots.map((shot) => shot.matched.length));
  const sure = shots.flatMap((shot) =>
    shot.sides.filter((side) => side.confidence >= 0.5 || hit(shot, side.id)),
  );
  const right = sure.filter((side) => shots.some((shot) => hit(shot, side.id))).length;
  const unsure = shots.flatMap((shot) =>
    shot.truths
      .filter((truth) => !shot.matched.some((match) => match.truth === truth))
      .map((truth) => shot.sides.some((side) => side.confidence < 0.5 && touches(side, truth))),
  );
  const corners = shots.flatMap(({ matched: pairs }) =>
    pairs.flatMap(({ found, truth }) => cornerErrors(found.corners, truth.corners)),
  );
  const bar = level === 'hard' ? 0.9 : 0.99;
  return [
    {
      name: `${level}: sheets found`,
      value: matched / truths,
      unit: '',
      bar: least(bar),
      note: `${truths} sheets in ${shots.length} photos, overlap >= 0.9`,
    },
    {
      name: `${level}: found that are sheets`,
      value: sure.length === 0 ? NaN : right / sure.length,
      unit: '',
      bar: least(bar),
      note: 'of those it is sure of',
    },
    {
      name: `${level}: missed sheets told as unsure`,
      value: share(unsure),
      unit: '',
      bar: level === 'hard' ? least(0.9) : null,
      note: `${unsure.length} missed`,
    },
    {
      name: `${level}: corner error, median`,
      value: median(corners),
      unit: '% of side',
      bar: level === 'hard' ? null : most(0.3),
      note: `95th percentile ${percentile(corners, 0.95).toFixed(2)}`,
    },
    {
      name: `${level}: white card found`,
      value: share(shots.map(({ white }) => white === 'found')),
      unit: '',
      bar: null,
    },
  ];
}

function hit(shot: ReadShot, id: string): boolean {
  return shot.matched.some(({ found }) => found.id === id);
}

function touches(side: ReadShot['sides'][number], truth: ReadShot['truths'][number]): boolean {
  const middle = (quad: readonly { x: number; y: number }[]): { x: number; y: number } => ({
    x: sum(quad.map((p) => p.x)) / 4,
    y: sum(quad.map((p) => p.y)) / 4,
  });
  const [p, q] = [middle(side.corners), middle(truth.corners)];
  const size = Math.hypot(
    truth.corners[2].x - truth.corners[0].x,
    truth.corners[2].y - truth.corners[0].y,
  );
  return Math.hypot(p.x - q.x, p.y - q.y) < size / 2;
}

/** A colour that was read, beside the truth. */
export interface ColourError {
  readonly where: string;
  readonly truth: Lab;
  readonly off: number;
  /** Standard error that was stated. */
  readonly stated: number;
}

const COUNTS = 0.05;
const SAME = 6;

export function printedErrors(pads: readonly ReadPad[]): ColourError[] {
  return printedSides(pads).flatMap(({ found, truth }) =>
    truth.palette
      .filter((colour) => colour.share >= COUNTS)
      .map((colour) => {
        const { off, colour: read } = nearest(colour.lab, found.palette.colours)!;
        return {
          where: `${found.id} ${truth.pattern} share ${colour.share.toFixed(2)}`,
          truth: colour.lab,
          off,
          stated: read.uncertainty,
        };
      }),
  );
}

function printedSides(pads: readonly ReadPad[]): ReadShot['matched'][number][] {
  return pads
    .flatMap(({ shots }) => shots.flatMap(({ matched }) => matched))
    .filter(({ truth }) => !truth.tonal);
}

export function colourFigures(pads: readonly ReadPad[], level: Strictness): Figure[] {
  const errors = printedErrors(pads);
  const offs = errors.map(({ off }) => off);
  const sides = printedSides(pads);
  const invented = sides.flatMap(({ found, truth }) =>
    found.palette.colours
      .filter((colour) => colour.share >= COUNTS)
      .map((colour) => nearest(colour.lab, truth.palette)!.off > SAME),
  );
  const shares = sides.flatMap(({ found, truth }) =>
    truth.palette
      .filter((colour) => colour.share >= COUNTS)
      .map((colour) => {
        const own = found.palette.colours.filter(
          ({ lab }) => nearest(lab, truth.palette)!.colour === colour,
        );
        return 100 * Math.abs(sum(own.map((read) => read.share)) - colour.share);
      }),
  );
  const grounds = sides.map(({ found, truth }) => {
    const ground = found.palette.colours.find(({ role }) => role === 'ground');
    return ground !== undefined && nearest(ground.lab, truth.palette)!.colour.role === 'ground';
  });
  const all = pads.flatMap(({ shots }) => shots.flatMap(({ matched }) => matched));
  const tones = all
    .filter(({ truth }) => truth.tonal)
    .map(({ found, truth }) => difference(meanOf(found.palette.colours), truth.palette[0]!.lab));
  const medianBar = level === 'hard' ? null : most(level === 'scanner' ? 0.6 : 1.5);
  const bars = level === 'normal';
  return [
    {
      name: `${level}: printed colours, median`,
      value: median(offs),
      unit: 'CIEDE2000',
      bar: medianBar,
      note: `${offs.length} colours of 5 % or more`,
    },
    {
      name: `${level}: printed colours, 95th percentile`,
      value: percentile(offs, 0.95),
      unit: 'CIEDE2000',
      bar: bars ? most(5) : null,
    },
    {
      name: `${level}: colours missed`,
      value: 100 * share(offs.map((off) => off > SAME)),
      unit: '%',
      bar: bars ? most(3) : null,
      note: 'none within 6',
    },
    {
      name: `${level}: colours invented`,
      value: 100 * share(invented),
      unit: '%',
      bar: bars ? most(5) : null,
      note: `of ${invented.length} stated with 5 % or more`,
    },
    {
      name: `${level}: share of a colour, median error`,
      value: median(shares),
      unit: 'points',
      bar: null,
      note: `95th percentile ${percentile(shares, 0.95).toFixed(1)}`,
    },
    { name: `${level}: ground told rightly`, value: share(grounds), unit: '', bar: null },
    {
      name: `${level}: tonal or printed told rightly`,
      value: share(all.map(({ found, truth }) => found.palette.tonal === truth.tonal)),
      unit: '',
      bar: null,
    },
    {
      name: `${level}: mean colour of tonal papers, median`,
      value: median(tones),
      unit: 'CIEDE2000',
      bar: null,
      note: `${tones.length} papers`,
    },
  ];
}

function meanOf(colours: readonly { readonly lab: Lab; readonly share: number }[]): Lab {
  const whole = sum(colours.map((colour) => colour.share));
  const mean = (axis: keyof Lab): number =>
    sum(colours.map((colour) => colour.lab[axis] * colour.share)) / whole;
  return { l: mean('l'), a: mean('a'), b: mean('b') };
}

/** Within one stated standard error should lie 68 %, within two 95 %; missed colours were not read at all. */
export function calibrationFigures(
  errors: readonly ColourError[],
  what: string,
  slack: number | null,
  furthest = SAME,
): Figure[] {
  const read = errors.filter(({ off }) => off <= furthest);
  return (
    [
      [1, 68],
      [2, 95],
    ] as const
  ).map(([times, aim]) => {
    const within = 100 * share(read.map(({ off, stated }) => off <= times * stated));
    return {
      name: `${what}: errors within ${times === 1 ? 'one' : 'two'} stated, off ${aim} % by`,
      value: Math.abs(within - aim),
      unit: 'points',
      bar: slack === null ? null : most(slack),
      note: `${within.toFixed(0)} % of ${read.length}`,
    };
  });
}

export function supplyFigures(
  supplies: readonly ReadSupplies[],
  kind: string,
  bar: number | null,
): Figure[] {
  const truths = sum(supplies.map((one) => one.truths.length));
  const matched = supplies.flatMap((one) => one.matched);
  const offs = supplyErrors(supplies).map(({ off }) => off);
  return [
    {
      name: `${kind}: found`,
      value: matched.length / truths,
      unit: '',
      bar: null,
      note: `${truths} in ${supplies.length} photos; ${sum(supplies.map((one) => one.found)) - matched.length} found that are none`,
    },
    {
      name: `${kind}: colour, median`,
      value: median(offs),
      unit: 'CIEDE2000',
      bar: bar === null ? null : most(bar),
      note: `95th percentile ${percentile(offs, 0.95).toFixed(2)}`,
    },
  ];
}

export function supplyErrors(supplies: readonly ReadSupplies[]): ColourError[] {
  return supplies.flatMap(({ name, matched }) =>
    matched.map(({ found, truth }) => ({
      where: `${name} ${truth.name}`,
      truth: truth.lab,
      off: difference(found.lab, truth.lab),
      stated: found.uncertainty,
    })),
  );
}

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
