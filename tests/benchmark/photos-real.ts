/** Eight real phone photographs of 24 known colours on white paper, where they are present. */
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { difference } from '../../server/colour/difference.ts';
import type { Lab } from '../../server/colour/lab.ts';
import { readSolid } from '../../server/colour/read-solid.ts';
import { applyHomography, homographyOf } from '../../server/geometry/homography.ts';
import type { Quad } from '../../server/geometry/points.ts';
import { rectangleQuad } from '../../server/geometry/quad.ts';
import { openPhoto } from '../../server/images/open-photo.ts';
import { labFromLinear, labOfBytes, linearFromLab } from '../../server/colour/spaces.ts';
import type { Picture } from '../../server/photo/picture.ts';
import { readPhoto } from '../../server/photo/read-photo.ts';
import { tieByChips } from '../../server/photo/tie-by-chips.ts';
import type { Light3 } from '../../server/photo/tie-by-chips.ts';
import type { Figure } from './figure.ts';
import type { ColourError } from './photos-figures.ts';
import { median, percentile } from './photos-match.ts';
import { calibrationFigures } from './photos-plain-figures.ts';

interface Manifest {
  readonly patches: readonly string[];
  readonly referenceLabD50: readonly (readonly [number, number, number])[];
  readonly photos: readonly {
    readonly file: string;
    readonly quad: readonly (readonly [number, number])[];
  }[];
}

const FOLDER = fileURLToPath(new URL('../../../shared/data/photos/', import.meta.url));
const ACROSS = 6;
const DOWN = 4;
/** Part of a patch left out at each edge. */
const RIM = 0.2;

export async function realFigures(): Promise<Figure[]> {
  if (!existsSync(`${FOLDER}manifest.json`))
    return [
      {
        name: 'real photos',
        value: NaN,
        unit: '',
        bar: null,
        note: 'skipped: ../shared/data/photos is not there',
      },
    ];
  const manifest = JSON.parse(readFileSync(`${FOLDER}manifest.json`, 'utf8')) as Manifest;
  const truths = manifest.referenceLabD50.map(([l, a, b]) => underD65({ l, a, b }));
  const errors: ColourError[] = [];
  const unseen: ColourError[] = [];
  const shots: Shot[] = [];
  const pairs: number[] = [];
  const plainPairs: number[] = [];
  for (const { file, quad } of manifest.photos) {
    const corners = quad.map(([x, y]) => ({ x, y })) as unknown as Quad<'photo'>;
    const read = await patchesOf(readFileSync(FOLDER + file), corners);
    shots.push({ target: file.replace(/-\d+\.jpg$/, ''), read });
    read.forEach((patch, index) => {
      const error = {
        where: `${file} ${manifest.patches[index]!}`,
        picture: file,
        group: file,
        truth: truths[index]!,
        read: patch.lab,
        off: difference(patch.lab, truths[index]!),
        stated: patch.uncertainty,
      };
      errors.push(error);
      if (!LEARNT_FROM.has(file)) unseen.push(error);
      for (let other = 0; other < index; other++) {
        const real = difference(truths[index]!, truths[other]!);
        pairs.push(Math.abs(difference(patch.lab, read[other]!.lab) - real));
        plainPairs.push(Math.abs(difference(patch.plain, read[other]!.plain) - real));
      }
    });
  }
  const offs = errors.map(({ off }) => off);
  return [
    {
      name: 'real photos: colours by white paper alone, median',
      value: median(offs),
      unit: 'CIEDE2000',
      bar: { at: 'most', value: 5.5 },
      note: `${offs.length} patches of ${manifest.photos.length} photos; 95th percentile ${percentile(offs, 0.95).toFixed(1)}`,
    },
    {
      name: 'real photos: difference of two patches in one picture, median error',
      value: median(pairs),
      unit: 'CIEDE2000',
      bar: { at: 'most', value: 2.5 },
      note: `the plain way, straight from the file: ${median(plainPairs).toFixed(2)}`,
    },
    ...byChips(shots, truths),
    ...calibrationFigures(unseen, 'real photos', 7, Infinity, 'photos'),
    ...calibrationFigures(errors, 'real photos, with those learnt from', null, Infinity, 'photos'),
  ];
}

/** The error that a camera's taste brings was learnt from these; the bar is held on the others. */
const LEARNT_FROM = new Set([
  'target-cc-01.jpg',
  'target-cc-03.jpg',
  'target-cc-05.jpg',
  'target-mini-02.jpg',
]);

/** The patches of one photo; two targets were photographed, and only one target's patches are the same. */
interface Shot {
  readonly target: string;
  readonly read: readonly Patch[];
}

const GREYS = [18, 19, 20, 21, 22, 23];
/** White, a grey and black; red, green and blue. */
const CHIPS = [18, 20, 23, 8, 13, 7];

function byChips(shots: readonly Shot[], truths: readonly Lab[]): Figure[] {
  const known: number[] = [];
  const others: number[] = [];
  for (const { read } of shots) {
    const tie = tieOf(
      GREYS,
      read.map(({ lab }) => lab),
      truths,
    );
    read.forEach(({ lab }, index) => {
      const off = difference(tie(lab), truths[index]!);
      known.push(off);
      if (!GREYS.includes(index)) others.push(off);
    });
  }
  const tied: number[] = [];
  const untied: number[] = [];
  for (const first of shots)
    for (const second of shots) {
      if (first === second || first.target !== second.target) continue;
      const [to, from] = [first, second].map(({ read }) => read.map(({ lab }) => lab));
      const tie = tieOf(CHIPS, from!, to!);
      from!.forEach((lab, index) => {
        if (CHIPS.includes(index)) return;
        tied.push(difference(tie(lab), to![index]!));
        untied.push(difference(lab, to![index]!));
      });
    }
  return [
    {
      name: 'real photos: colours by six known greys as chips, median',
      value: median(known),
      unit: 'CIEDE2000',
      bar: { at: 'most', value: 3.2 },
      note: `all 24 patches; the 18 that are no chips: ${median(others).toFixed(2)}`,
    },
    {
      name: 'real photos: the same patch in two photos tied by six chips, median',
      value: median(tied),
      unit: 'CIEDE2000',
      bar: { at: 'most', value: 1.5 },
      note: `the other 18 of ${tied.length / 18} pairs of photos; untied ${median(untied).toFixed(2)}`,
    },
  ];
}

function tieOf(
  chips: readonly number[],
  seen: readonly Lab[],
  wanted: readonly Lab[],
): (lab: Lab) => Lab {
  const tie = tieByChips(
    chips.map((index) => ({
      seen: lightOf(seen[index]!),
      wanted: lightOf(wanted[index]!),
      grey: GREYS.includes(index),
    })),
  );
  return (lab) => {
    const [r, g, b] = tie(lightOf(lab));
    return labFromLinear({ r, g, b });
  };
}

function lightOf(lab: Lab): Light3 {
  const { r, g, b } = linearFromLab(lab);
  return [r, g, b];
}

interface Patch {
  readonly lab: Lab;
  readonly uncertainty: number;
  /** As it stands in the file. */
  readonly plain: Lab;
}

/** The patches in their order, cut where the known corners say; the paper beside the target as white. */
async function patchesOf(bytes: Uint8Array, target: Quad<'photo'>): Promise<Patch[]> {
  const toPhoto = homographyOf(rectangleQuad<'target'>(0, 0, ACROSS, DOWN), target);
  const quad = (x: number, y: number, width: number, height: number): Quad<'photo'> =>
    rectangleQuad<'target'>(x, y, width, height).map((corner) =>
      applyHomography(toPhoto, corner),
    ) as unknown as Quad<'photo'>;
  const corners = Array.from({ length: ACROSS * DOWN }, (_, index) =>
    quad((index % ACROSS) + RIM, Math.floor(index / ACROSS) + RIM, 1 - 2 * RIM, 1 - 2 * RIM),
  );
  const photo = await openPhoto(bytes);
  const white = quad(1.5, -0.8, 3, 0.35);
  const reading = readPhoto(photo, {
    look: 'squares',
    sheetMillimetres: null,
    tap: { white, corners },
  });
  return corners.map((corner) => {
    const at = (sheets: typeof reading.sheets): (typeof reading.sheets)[number] =>
      sheets.reduce((best, sheet) =>
        away(sheet.corners, corner) < away(best.corners, corner) ? sheet : best,
      );
    const { lab, uncertainty } = readSolid(at(reading.sheets).reading, at(reading.sheets).error);
    return { lab, uncertainty, plain: inFile(photo.full, corner) };
  });
}

/** The mean colour between four corners, as the file says. */
function inFile({ width, rgb, primaries }: Picture, corners: Quad<'photo'>): Lab {
  const middle = (axis: 'x' | 'y'): number => corners.reduce((sum, p) => sum + p[axis], 0) / 4;
  const reach = Math.max(
    2,
    Math.floor(Math.hypot(corners[2].x - corners[0].x, corners[2].y - corners[0].y) / 5),
  );
  const bytes: number[] = [];
  for (let y = Math.round(middle('y')) - reach; y <= middle('y') + reach; y++)
    for (let x = Math.round(middle('x')) - reach; x <= middle('x') + reach; x++)
      bytes.push(...rgb.subarray(3 * (y * width + x), 3 * (y * width + x) + 3));
  const lab = labOfBytes(Uint8Array.from(bytes), primaries);
  const mean = (k: number): number => {
    let total = 0;
    for (let at = k; at < lab.length; at += 3) total += lab[at]!;
    return (3 * total) / lab.length;
  };
  return { l: mean(0), a: mean(1), b: mean(2) };
}

/**
 * The same surface under D65 instead of D50, by Bradford's adaptation.
 *
 * Source      matrices and white points: ICC.1:2022, annex E, and CIE 15:2018 (D50 96.42 100 82.49,
 *             D65 95.047 100 108.883, 2 degrees), the numbers from memory.
 */
function underD65({ l, a, b }: Lab): Lab {
  const fy = (l + 16) / 116;
  const [x, y, z] = [fy + a / 500, fy, fy - b / 200].map((f, k) => D50[k]! * cubed(f));
  const adapted = BRADFORD.map((row) => row[0] * x! + row[1] * y! + row[2] * z!);
  const [gx, gy, gz] = adapted.map((value, k) => rooted(value / D65[k]!));
  return { l: 116 * gy! - 16, a: 500 * (gx! - gy!), b: 200 * (gy! - gz!) };
}

const D50 = [0.9642, 1, 0.8249] as const;
const D65 = [0.95047, 1, 1.08883] as const;
const BRADFORD = [
  [0.9555766, -0.0230393, 0.0631636],
  [-0.0282895, 1.0099416, 0.0210077],
  [0.0122982, -0.020483, 1.3299098],
] as const;

function cubed(f: number): number {
  return f > 6 / 29 ? f ** 3 : 3 * (6 / 29) ** 2 * (f - 4 / 29);
}

function rooted(t: number): number {
  return t > (6 / 29) ** 3 ? Math.cbrt(t) : t / (3 * (6 / 29) ** 2) + 4 / 29;
}

function away(a: Quad<'photo'>, b: Quad<'photo'>): number {
  return a.reduce((sum, p, index) => sum + Math.hypot(p.x - b[index]!.x, p.y - b[index]!.y), 0);
}
