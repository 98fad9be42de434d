/**
 * How sheets, squares and smears are found where finding is hard: a row for each table and each way of laying them.
 *
 *   npx tsx tests/benchmark/photos-situations.ts [--seeds tune|report] [--photos N] [--only WORDS] [--each]
 *
 * Photos of 2 and 3 megapixels, drawn by the generator of the samples; six to twelve sheets or squares in each.
 */
import { fileURLToPath } from 'node:url';
import { openPhoto } from '../../server/images/open-photo.ts';
import { findThings } from '../../server/photo/find-things.ts';
import type { Found } from '../../server/photo/picture.ts';
import type { Figure } from './figure.ts';
import { wilson } from './interval.ts';
import { REPORTED, shot } from './photos-cases.ts';
import { cornerErrors, matchQuads, percentile, sum } from './photos-match.ts';
import { SUPPLY_SITUATIONS } from './photos-squares-tables.ts';
import type { SupplySituation } from './photos-squares-tables.ts';
import { SIDE, SITUATIONS, laid } from './photos-tables.ts';
import type { Situation } from './photos-tables.ts';

/** What became of one photo. */
interface Seen {
  /** Those whole in the picture count; of the others only that they are reported. */
  readonly whole: number;
  readonly found: number;
  readonly told: number;
  /** Found and sure of the edges; of these, with a corner more than 1 % of a side off. */
  readonly sure: number;
  readonly sureAndOff: number;
  /** Sure of something that is none. */
  readonly wrong: number;
  /** Something is missed, and neither a note nor an unsure place says so; or some are cut off, and no note says so. */
  readonly isSilent: boolean;
  /** Corner errors in percent of a side. */
  readonly off: readonly number[];
}

function seenOf(
  things: readonly Found[],
  notes: readonly string[],
  truths: readonly { readonly corners: Found['corners'] }[],
  least: number,
  cutOff = 0,
): Seen {
  const matched = matchQuads(things, truths, least);
  const isSure = ({ confidence }: Found): boolean => confidence >= 0.5;
  // A smear has no corners: its box is laid around what is covered.
  const errors = matched.map((pair) =>
    least === SMEAR ? [] : cornerErrors(pair.found.corners, pair.truth.corners),
  );
  const unmatched = things.filter((thing) => !matched.some((pair) => pair.found === thing));
  return {
    whole: truths.length,
    found: matched.length,
    told: things.length,
    sure: matched.filter((pair) => isSure(pair.found)).length,
    sureAndOff: matched.filter((pair, at) => isSure(pair.found) && Math.max(0, ...errors[at]!) > 1)
      .length,
    wrong: unmatched.filter(isSure).length,
    isSilent:
      (cutOff > 0 && !notes.some(isOnCutOff)) ||
      (matched.length < truths.length &&
        // A paper that is cut off by the frame says nothing of one that is whole.
        notes.every(isOnCutOff) &&
        !unmatched.some((thing) => !isSure(thing))),
    off: errors.flat(),
  };
}

const isOnCutOff = (note: string): boolean => note.includes('outside the picture');

/** Area in common over area of both from which a sheet, a square and a ragged smear are found. */
const SHEET = 0.9;
const SQUARE = 0.85;
const SMEAR = 0.5;

async function sheetsSeen(situation: Situation, seed: number): Promise<Seen> {
  const { jpeg, truth } = await shot(`${situation.name} ${seed}`, laid(situation, seed));
  const { things, notes } = findThings(await openPhoto(jpeg), {
    look: 'sheets',
    sheetMillimetres: { width: SIDE, height: SIDE },
  });
  const inFrame = truth.sheets.filter(
    ({ corners }) =>
      situation.whole === undefined ||
      corners.every(({ x, y }) => x >= 0 && y >= 0 && x <= truth.width && y <= truth.height),
  );
  // Of those cut off by the frame, the ones of which a corner is in sight have to be reported.
  const isInSight = ({ x, y }: { x: number; y: number }): boolean =>
    x > 0 && y > 0 && x < truth.width && y < truth.height;
  const cutOff = truth.sheets.filter(
    (sheet) => !inFrame.includes(sheet) && sheet.corners.some(isInSight),
  );
  return seenOf(things, notes, inFrame, SHEET, cutOff.length);
}

async function suppliesSeen({ name, scene }: SupplySituation, seed: number): Promise<Seen> {
  const { jpeg, truth } = await shot(`${name} ${seed}`, scene(seed));
  const { things, notes } = findThings(await openPhoto(jpeg), {
    look: 'squares',
    sheetMillimetres: null,
  });
  const isInk = truth.smears.length > 0;
  return seenOf(things, notes, isInk ? truth.smears : truth.squares, isInk ? SMEAR : SQUARE);
}

function rowOf(name: string, photos: readonly Seen[]): Figure {
  const total = (of: (seen: Seen) => number): number => sum(photos.map(of));
  const [whole, found, told] = [
    total((seen) => seen.whole),
    total((seen) => seen.found),
    total((seen) => seen.told),
  ];
  const off = photos.flatMap((seen) => seen.off);
  const corner = (part: number): string =>
    off.length === 0 ? '-' : percentile(off, part).toFixed(2);
  const missed = photos.filter((seen) => seen.found < seen.whole);
  const silent = missed.filter(({ isSilent }) => isSilent).length;
  const [low, high] = wilson(found, whole);
  return {
    name: `${name}: found`,
    value: found / whole,
    unit: '',
    bar: null,
    note: [
      `${found} of ${whole} (95 %: ${low.toFixed(2)} to ${high.toFixed(2)}) in ${photos.length} photos`,
      `precision ${found} of ${told}`,
      `${total((seen) => seen.sure)} sure, ${total((seen) => seen.sureAndOff)} of them more than 1 % off, ${total((seen) => seen.wrong)} sure that are none`,
      missed.length === 0
        ? 'nothing missed'
        : `missed in ${missed.length} photos, told in ${missed.length - silent}`,
      `corners ${corner(0.5)} %, 95th percentile ${corner(0.95)} %`,
    ].join('; '),
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
  const all: Seen[] = [];
  const row = async (name: string, see: (seed: number) => Promise<Seen>): Promise<void> => {
    if (!name.includes(only)) return;
    const seen: Seen[] = [];
    for (const seed of seeds) {
      seen.push(await see(seed));
      if (each) console.log(`    ${line(rowOf(`${name}, seed ${seed}`, seen.slice(-1)))}`);
    }
    all.push(...seen);
    figures.push(rowOf(name, seen));
  };
  for (const situation of SITUATIONS)
    await row(situation.name, (seed) => sheetsSeen(situation, seed));
  for (const situation of SUPPLY_SITUATIONS)
    await row(situation.name, (seed) => suppliesSeen(situation, seed));
  if (all.length === 0) return figures;
  const silent = all.filter(({ isSilent }) => isSilent).length;
  return [
    ...figures,
    rowOf('all hard situations', all),
    {
      name: 'all hard situations: photos that lose something without a word',
      value: silent,
      unit: '',
      bar: { at: 'most', value: 0 },
      note: `of ${all.length} photos, ${all.filter((seen) => seen.found < seen.whole).length} of which miss something; a note, or a place to drag the corners of, is a word`,
    },
  ];
}

function line({ name, value, note }: Figure): string {
  return `${value.toFixed(3)} ${name}: ${note}`;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const after = (flag: string): string | undefined =>
    process.argv.includes(flag) ? process.argv[process.argv.indexOf(flag) + 1] : undefined;
  const first = after('--seeds') === 'report' ? REPORTED : 40;
  const figures = await situationFigures(
    first,
    Number(after('--photos') ?? 3),
    after('--only'),
    process.argv.includes('--each'),
  );
  for (const figure of figures) console.log(line(figure));
}
