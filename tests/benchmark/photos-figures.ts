/** From readings beside their truth to figures beside their bars. */
import { difference } from '../../server/colour/difference.ts';
import type { Lab } from '../../server/colour/lab.ts';
import type { Figure } from './figure.ts';
import { intervalOf } from './interval.ts';
import { cornerErrors, median, nearest, percentile, share, sum } from './photos-match.ts';
import type { ReadPad, ReadShot } from './photos-read.ts';
import { withoutSharedShift } from './photos-shared-shift.ts';

type Bar = Figure['bar'];

export const most = (value: number): Bar => ({ at: 'most', value });
export const least = (value: number): Bar => ({ at: 'least', value });

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
  /** The picture that it was read in, and the pad whose pictures share one white card with it. */
  readonly picture: string;
  readonly group: string;
  readonly truth: Lab;
  readonly read: Lab;
  readonly off: number;
  /** Standard error that was stated. */
  readonly stated: number;
}

const COUNTS = 0.05;
export const SAME = 6;

export function printedErrors(pads: readonly ReadPad[]): ColourError[] {
  return pads.flatMap((pad) =>
    pad.shots.flatMap((shot) =>
      shot.matched.filter(printed).flatMap(({ found, truth }) =>
        truth.palette
          .filter((colour) => colour.share >= COUNTS)
          .map((colour) => {
            const { off, colour: read } = nearest(colour.lab, found.palette.colours)!;
            return {
              where: `${found.id} ${truth.pattern} share ${colour.share.toFixed(2)}`,
              picture: shot.name,
              group: pad.name,
              truth: colour.lab,
              read: read.lab,
              off,
              stated: read.uncertainty,
            };
          }),
      ),
    ),
  );
}

export function printedSides(pads: readonly ReadPad[]): ReadShot['matched'][number][] {
  return pads.flatMap(({ shots }) => shots.flatMap(({ matched }) => matched.filter(printed)));
}

function printed({ truth }: ReadShot['matched'][number]): boolean {
  return !truth.tonal;
}

/**
 * The 95 % interval of a share of colours, in words: the white of a pad's card moves all of its colours at once, so pads
 * are drawn again and not colours (interval.ts names the sources).
 */
export function intervalAs(
  colours: readonly { readonly group: string; readonly so: boolean }[],
): string {
  const groups = new Map<string, { part: number; whole: number }>();
  for (const { group, so } of colours) {
    const counted = groups.get(group) ?? { part: 0, whole: 0 };
    counted.part += so ? 1 : 0;
    counted.whole++;
    groups.set(group, counted);
  }
  if (groups.size === 0) return '';
  const [low, high] = intervalOf([...groups.values()]);
  return `95 % interval ${low.toFixed(1)} to ${high.toFixed(1)}`;
}

export function colourFigures(pads: readonly ReadPad[], level: Strictness): Figure[] {
  const errors = printedErrors(pads);
  const offs = errors.map(({ off }) => off);
  const sides = printedSides(pads);
  const invented = pads.flatMap((pad) =>
    printedSides([pad]).flatMap(({ found, truth }) =>
      found.palette.colours
        .filter((colour) => colour.share >= COUNTS)
        .map((colour) => ({
          group: pad.name,
          so: nearest(colour.lab, truth.palette)!.off > SAME,
        })),
    ),
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
  const bars = level === 'normal';
  return [
    {
      name: `${level}: printed colours, median`,
      value: median(offs),
      unit: 'CIEDE2000',
      bar: level === 'hard' ? null : most(level === 'scanner' ? 0.6 : 1.5),
      note: `${offs.length} colours of 5 % or more, beside ${pads.length} white cards`,
    },
    {
      name: `${level}: printed colours, median, the shift that a picture's colours share taken out`,
      value: median(withoutSharedShift(errors.filter(({ off }) => off <= SAME))),
      unit: 'CIEDE2000',
      bar: null,
      note: 'what the colour of the white card, which no photo tells, leaves',
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
      note: `none within 6; ${intervalAs(errors.map(({ group, off }) => ({ group, so: off > SAME })))}`,
    },
    {
      name: `${level}: colours invented`,
      value: 100 * share(invented.map(({ so }) => so)),
      unit: '%',
      bar: bars ? most(5) : null,
      note: `of ${invented.length} stated with 5 % or more; ${intervalAs(invented)}`,
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
