/**
 * How many sheets are found where finding is hard: a row for each table and each way of laying them.
 *
 *   npx tsx tests/benchmark/photos-situations.ts [--seeds tune|report] [--only WORDS] [--each]
 *
 * Photos of 3 megapixels, drawn by the generator of the samples; six to twelve sheets in each.
 */
import { fileURLToPath } from 'node:url';
import { openPhoto } from '../../server/images/open-photo.ts';
import { findThings } from '../../server/photo/find-things.ts';
import type { Found } from '../../server/photo/picture.ts';
import type { Figure } from './figure.ts';
import { shot } from './photos-cases.ts';
import { cornerErrors, matchQuads, percentile, sum } from './photos-match.ts';
import { SIDE, SITUATIONS, laid } from './photos-tables.ts';
import type { Situation } from './photos-tables.ts';

/** Those whole in the picture count; of the others only that they are reported. */
async function rowOf(
  situation: Situation,
  seeds: readonly number[],
  each: boolean,
): Promise<Figure> {
  let [whole, found, sure, wrong, told] = [0, 0, 0, 0, 0];
  const errors: number[] = [];
  for (const seed of seeds) {
    const { jpeg, truth } = await shot(`${situation.name} ${seed}`, laid(situation, seed));
    const photo = await openPhoto(jpeg);
    const { things, notes } = findThings(photo, {
      look: 'sheets',
      sheetMillimetres: { width: SIDE, height: SIDE },
    });
    const inFrame = truth.sheets.filter(
      ({ corners }) =>
        situation.touch === undefined ||
        situation.whole === undefined ||
        corners.every(({ x, y }) => x >= 0 && y >= 0 && x <= truth.width && y <= truth.height),
    );
    const matched = matchQuads<Found, (typeof inFrame)[number]>(things, inFrame, 0.9);
    const isSure = ({ confidence }: Found): boolean => confidence >= 0.5;
    const off = matched.flatMap((pair) => cornerErrors(pair.found.corners, pair.truth.corners));
    whole += inFrame.length;
    found += matched.length;
    sure += matched.filter((pair) => isSure(pair.found)).length;
    wrong += things.filter(
      (thing) => isSure(thing) && !matched.some((pair) => pair.found === thing),
    ).length;
    if (notes.length > 0 || things.some((thing) => thing.notes.length > 0)) told++;
    errors.push(...off);
    if (each)
      console.log(
        `    seed ${seed}: ${matched.length} of ${inFrame.length}, ${things.length} told, corners up to ${Math.max(0, ...off).toFixed(2)} %; ${notes.join(' ')}`,
      );
  }
  return {
    name: `${situation.name}: sheets found`,
    value: found / whole,
    unit: '',
    bar: null,
    note: `${found} of ${whole}, ${sure} of them sure, ${wrong} sure that are none; something to say in ${told} of ${seeds.length} photos; corners, 95th percentile ${errors.length === 0 ? '-' : percentile(errors, 0.95).toFixed(2)} % of a side`,
  };
}

export async function situationFigures(
  first: number,
  photos: number,
  only = '',
  each = false,
): Promise<Figure[]> {
  const seeds = Array.from({ length: photos }, (_, index) => first + index);
  const figures: Figure[] = [];
  for (const situation of SITUATIONS)
    if (situation.name.includes(only)) {
      figures.push(await rowOf(situation, seeds, each));
      if (each) console.log(line(figures.at(-1)!));
    }
  return figures;
}

function line({ name, value, note }: Figure): string {
  return `${value.toFixed(3)} ${name}: ${note}`;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const after = (flag: string): string | undefined =>
    process.argv.includes(flag) ? process.argv[process.argv.indexOf(flag) + 1] : undefined;
  const first = after('--seeds') === 'report' ? 7000 : 40;
  const each = process.argv.includes('--each');
  const figures = await situationFigures(
    first,
    Number(after('--photos') ?? 2),
    after('--only'),
    each,
  );
  if (!each) for (const figure of figures) console.log(line(figure));
  console.log(`mean ${(sum(figures.map(({ value }) => value)) / figures.length).toFixed(3)}`);
}
