/**
 * The photo benchmark: how well photos are read, against truth.
 *
 *   npx tsx tests/benchmark/photos.ts [--full] [--seeds tune|report] [--only TOPIC,TOPIC] [--worst]
 *                                     [--folder FOLDER] [--pictures N]
 *
 * Topics: sheets, colours, many (colours beside many white cards, part of colours), patterns, supplies, samples, real,
 * situations, time, kmeans. Seeds below 1000 are for tuning, the reported figures come from seeds of 11000 and above
 * that no tuning has seen. `--worst` lists the colours that are furthest off. `--folder` measures a folder with a
 * truth.json instead. `--pictures` says how many pictures each of the situations has.
 */
import { fileURLToPath } from 'node:url';
import type { Figure, Topic } from './figure.ts';
import { misses } from './figure.ts';
import { REPORTED, folderCases, padCase, samples, smallCase, supplyCase } from './photos-cases.ts';
import type { Case } from './photos-cases.ts';
import { colourFigures, printedErrors, sheetFigures } from './photos-figures.ts';
import type { ColourError } from './photos-figures.ts';
import { kmeansFigures } from './photos-kmeans.ts';
import { manyCardFigures, mixedFigures } from './photos-many-figures.ts';
import { patternFigures } from './photos-pattern-figures.ts';
import { calibrationFigures, supplyErrors, supplyFigures } from './photos-plain-figures.ts';
import { readPadCase, readSupplyCase } from './photos-read.ts';
import type { ReadPad, ReadSupplies } from './photos-read.ts';
import { realFigures } from './photos-real.ts';
import { situationFigures } from './photos-situations.ts';
import { timeFigures } from './photos-time.ts';

interface Ask {
  readonly full: boolean;
  readonly seeds: 'tune' | 'report';
  readonly only: ReadonlySet<string> | null;
  readonly folder: string | null;
  /** Pictures of each situation. */
  readonly pictures: number;
  /** Called with every colour that was read. */
  readonly watch?: (errors: readonly ColourError[]) => void;
}

const LEVELS = ['scanner', 'normal', 'hard'] as const;
/**
 * Pictures of 7 megapixels: a phone takes 12, and smaller ones lose fine strokes before any reading begins. What the
 * white card of one picture happens to be moves all of its colours, so figures of plain colours need several.
 */
const QUICK = { pads: { scanner: 8, normal: 6, hard: 3 }, supplies: 6, pixels: 3024 };
const FULL = { pads: { scanner: 8, normal: 20, hard: 10 }, supplies: 8, pixels: 3024 };
/** Pictures of each situation unless said. */
const PICTURES = process.argv.includes('--full') ? 6 : 3;
/**
 * Small pictures besides, held to the same bars, each with a white card of its own: so many that a share is known to
 * within 10 points.
 */
const MANY = { scanner: 36, normal: 40, hard: 24, cardstock: 30, ink: 30 };
/** Seeds of inks lie so far from those of squares, whose white cards they would share. */
const INKS = 100;
const SUPPLIES_PIXELS = 1800;

async function measure(ask: Ask): Promise<Figure[]> {
  const wants = (topic: string): boolean => ask.only?.has(topic) ?? true;
  if (ask.folder !== null) return ofCases(folderCases(ask.folder), ask, 'normal');
  const size = ask.full ? FULL : QUICK;
  const first = ask.seeds === 'tune' ? 1 : REPORTED;
  const figures: Figure[] = [];
  const printed = new Map<string, readonly ColourError[]>();
  for (const level of LEVELS) {
    if (!['sheets', 'colours', 'many', 'patterns', 'supplies'].some(wants)) break;
    const cases: Case[] = [];
    if (['sheets', 'colours', 'patterns'].some(wants))
      for (let seed = first; seed < first + size.pads[level]; seed++)
        cases.push(await padCase(seed, level, size.pixels));
    if (level === 'normal' && wants('supplies'))
      cases.push(...(await supplyCases(first, () => size.supplies, size.pixels)));
    figures.push(...(await ofCases(cases, ask, level)));
    if (level === 'normal' && wants('supplies'))
      figures.push(
        ...(await ofCases(
          await supplyCases(first, (kind) => MANY[kind], SUPPLIES_PIXELS),
          ask,
          level,
          ', many white cards',
        )),
      );
    if (!wants('colours') && !wants('many')) continue;
    const small: ReadPad[] = [];
    for (let seed = first; seed < first + MANY[level]; seed++)
      small.push(await readPadCase(await smallCase(seed, level)));
    printed.set(level, printedErrors(small));
    ask.watch?.(printed.get(level)!);
    figures.push(...manyCardFigures(small, level));
  }
  const [straight, bent] = [printed.get('normal'), printed.get('hard')];
  if (straight !== undefined && bent !== undefined) figures.push(...mixedFigures(straight, bent));
  if (wants('samples'))
    for (const figure of await ofCases(samples(), { ...ask, only: null }, 'normal'))
      figures.push({ ...figure, name: `samples, ${figure.name}` });
  if (wants('real')) figures.push(...(await realFigures()));
  if (wants('situations'))
    figures.push(...(await situationFigures(ask.seeds === 'tune' ? 40 : REPORTED, ask.pictures)));
  if (wants('time')) figures.push(...(await timeFigures(first)));
  if (wants('kmeans')) figures.push(...kmeansFigures());
  return figures;
}

/** Squares, then smears, each picture beside a white card of its own. */
async function supplyCases(
  first: number,
  count: (kind: 'cardstock' | 'ink') => number,
  pixels: number,
): Promise<Case[]> {
  const cases: Case[] = [];
  for (const kind of ['cardstock', 'ink'] as const) {
    const from = kind === 'ink' ? first + INKS : first;
    for (let seed = from; seed < from + count(kind); seed++)
      cases.push(await supplyCase(seed, 'normal', kind, pixels));
  }
  return cases;
}

/** `many` is added to the names of the rows of supplies, when their pictures are the small ones. */
async function ofCases(
  cases: readonly Case[],
  ask: Ask,
  level: (typeof LEVELS)[number],
  many = '',
): Promise<Figure[]> {
  const wants = (topic: string): boolean => ask.only?.has(topic) ?? true;
  const pads: ReadPad[] = [];
  const cardstock: ReadSupplies[] = [];
  const inks: ReadSupplies[] = [];
  for (const one of cases)
    if (one.kind === 'pad') pads.push(await readPadCase(one));
    else (one.kind === 'ink' ? inks : cardstock).push(await readSupplyCase(one));
  const printed = printedErrors(pads);
  const plain = supplyErrors([...cardstock, ...inks]);
  ask.watch?.([...printed, ...plain]);
  return [
    ...(pads.length > 0 && wants('sheets') ? sheetFigures(pads, level) : []),
    ...(pads.length > 0 && wants('colours')
      ? [
          ...colourFigures(pads, level),
          ...calibrationFigures(
            printed,
            `${level}: printed colours`,
            level === 'normal' ? 7 : null,
          ),
        ]
      : []),
    ...(pads.length > 0 && wants('patterns') ? patternFigures(pads, level) : []),
    ...(cardstock.length > 0 ? supplyFigures(cardstock, 'cardstock', 1, many) : []),
    ...(inks.length > 0 ? supplyFigures(inks, 'ink', null, many) : []),
    ...(plain.length > 0 ? calibrationFigures(plain, `cardstock and ink${many}`, 7) : []),
  ];
}

export const photos: Topic = () =>
  measure({
    full: process.argv.includes('--full'),
    seeds: 'report',
    only: null,
    folder: null,
    pictures: PICTURES,
  });

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const after = (flag: string): string | undefined =>
    process.argv.includes(flag) ? process.argv[process.argv.indexOf(flag) + 1] : undefined;
  const seen: ColourError[] = [];
  const start = performance.now();
  const figures = await measure({
    full: process.argv.includes('--full'),
    seeds: after('--seeds') === 'tune' ? 'tune' : 'report',
    only: after('--only') === undefined ? null : new Set(after('--only')!.split(',')),
    folder: after('--folder') ?? null,
    pictures: Number(after('--pictures') ?? PICTURES),
    watch: (errors) => seen.push(...errors),
  });
  for (const figure of figures) {
    const bar = figure.bar === null ? '' : `  (bar: at ${figure.bar.at} ${figure.bar.value})`;
    console.log(
      `${misses(figure) ? 'x' : ' '} ${figure.name}: ${Number(figure.value.toFixed(3))} ${figure.unit}${bar}  ${figure.note ?? ''}`,
    );
  }
  if (process.argv.includes('--worst'))
    for (const { where, off, stated, truth } of seen.sort((p, q) => q.off - p.off).slice(0, 40))
      console.log(
        `${off.toFixed(2)} off, ${stated.toFixed(2)} stated: ${where}, truth ${[truth.l, truth.a, truth.b].map((v) => v.toFixed(0)).join(' ')}`,
      );
  console.log(`${((performance.now() - start) / 1000).toFixed(0)} s`);
}
