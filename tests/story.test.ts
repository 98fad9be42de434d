import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, test } from 'vitest';
import { difference } from '../server/colour/difference.ts';
import { checkScheme } from '../server/cutting/check-scheme.ts';
import { usualSettings } from '../server/cutting/settings.ts';
import {
  drawCard,
  groupSheets,
  planBatch,
  printGuide,
  readSides,
  readSupplies,
  sheetsOf,
} from '../server/from-photo-to-guide.ts';
import type { PhotoOfSides, PlannedBatch } from '../server/from-photo-to-guide.ts';
import { piecesOf } from '../server/cutting/pieces-of.ts';
import type { GuideAsk } from '../server/guide/ask.ts';
import { drawPng } from '../server/images/draw-png.ts';
import { catalogue } from '../server/layouts/catalogue.ts';
import { papersOf } from '../server/layouts/papers-of.ts';
import { INCH, units } from '../server/lengths/length.ts';
import type { Grouping, Pad, Side } from '../server/pad/pad.ts';
import { checkPlan } from '../server/plan/check.ts';
import type { PlanAsk } from '../server/plan/plan-cards.ts';
import type { Supply } from '../server/supplies/supply.ts';
import type { TruthFile } from '../sample-swatches/truth-file.ts';

/** The whole way on the photos of the demo pad, judged by the truth of how they were rendered. */

const sample = (file: string): Buffer =>
  readFileSync(fileURLToPath(new URL(`../sample-swatches/${file}`, import.meta.url)));
const truth = JSON.parse(sample('truth.json').toString()) as TruthFile;
const SIX_INCHES = { width: units(6 * INCH), height: units(6 * INCH) };
const photosOfPad = truth.photos.filter(
  ({ pad, holds }) => pad === 'Tidewrack' && holds === 'sheets',
);

interface Read {
  readonly photo: (typeof photosOfPad)[number];
  readonly found: PhotoOfSides;
  readonly sides: readonly Side[];
}

const reads: Read[] = [];
const swatches = new Map<string, Uint8Array>();
const supplies: Supply[] = [];
let pad: Pad;
let grouping: Grouping;
let ask: PlanAsk;
let batch: PlannedBatch;

beforeAll(async () => {
  for (const photo of photosOfPad) {
    const found = await readSides(sample(photo.file), SIX_INCHES);
    const sides = found.sides.map((side, at): Side => {
      const id = `${photo.arrangement}-${photo.side}-${at}`;
      swatches.set(id, side.swatch);
      return { ...side, id, photo: photo.file };
    });
    reads.push({ photo, found, sides });
  }
  const facing = (arrangement: string, side: 'front' | 'back'): readonly Side[] =>
    reads.find(({ photo }) => photo.arrangement === arrangement && photo.side === side)!.sides;
  const sheets = ['a', 'b']
    .flatMap((word) => sheetsOf(facing(word, 'front'), facing(word, 'back')))
    .map((sheet, at) => ({ ...sheet, id: `sheet-${at + 1}`, label: `Sheet ${at + 1}` }));
  pad = { id: 'tidewrack', name: 'Tidewrack', sheetSize: SIX_INCHES, sheets };
  grouping = groupSheets(sheets);

  const cardstock = await readSupplies(sample('tidewrack-cardstock.jpg'));
  supplies.push(
    ...cardstock.supplies.map(({ lab, uncertainty }, at): Supply => ({
      id: `stock-${at}`,
      kind: 'cardstock',
      name: `Cardstock ${at + 1}`,
      lab,
      uncertainty,
      photo: 'tidewrack-cardstock.jpg',
      sheets: null,
    })),
  );

  const layouts = catalogue.filter(({ card }) => card.height === units(5.5 * INCH)).slice(0, 12);
  const wishes = layouts.map((layout) => ({ layout, count: 1 }));
  const wish = {
    pad,
    supplies,
    pins: [],
    without: [],
    taste: { contrast: 0, busy: 0, bold: 0 },
    limit: { steps: 20_000 },
  };
  batch = planBatch(wishes, wish, usualSettings('in'));
  ask = { ...wish, cards: batch.cards, scheme: batch.scheme, seed: 1 };
});

describe('photo to swatches', () => {
  test('all 24 sides are found, each where it lies to 1 % of its side', () => {
    for (const { photo, found } of reads) {
      expect(found.sides.length, photo.file).toBe(photo.sheets.length);
      found.sides.forEach((side, at) => {
        const there = photo.sheets[at]!.corners;
        const length = Math.hypot(there[1].x - there[0].x, there[1].y - there[0].y);
        const off = side.corners.map((corner, k) =>
          Math.hypot(corner.x - there[k]!.x, corner.y - there[k]!.y),
        );
        expect(Math.max(...off) / length, `${photo.file} ${at}`).toBeLessThan(0.01);
      });
    }
  });

  test('the white card is found in each', () => {
    expect(reads.map(({ found }) => found.white.kind)).toEqual(reads.map(() => 'found'));
  });

  test('colours of 5 % and more come within 1.5 CIEDE2000 of the printed ones, at the median', () => {
    const errors = reads.flatMap(({ photo, sides }) =>
      photo.sheets.flatMap((sheet, at) =>
        sheet.tonal
          ? []
          : sheet.palette
              .filter(({ share }) => share >= 0.05)
              .map(({ lab }) =>
                Math.min(
                  ...sides[at]!.palette.colours.map((colour) => difference(colour.lab, lab)),
                ),
              ),
      ),
    );
    errors.sort((a, b) => a - b);
    expect(errors.length).toBeGreaterThan(60);
    expect(errors[Math.floor(errors.length / 2)]).toBeLessThan(1.5);
    expect(errors[Math.floor(errors.length * 0.95)]).toBeLessThan(6);
  });

  test('the tonal papers, and only they, are read as tonal', () => {
    const read = reads.flatMap(({ sides }) => sides.map(({ palette }) => palette.tonal));
    const real = reads.flatMap(({ photo }) => photo.sheets.map(({ tonal }) => tonal));
    expect(read).toEqual(real);
  });
});

describe('swatches to pad', () => {
  test('prints repeat as they were drawn, at the median within half a millimetre', () => {
    const errors = reads.flatMap(({ photo, sides }) =>
      photo.sheets.flatMap(({ repeat }, at) => {
        const read = sides[at]!.pattern.repeat;
        return repeat === null || read === null ? [] : [Math.abs(read - repeat)];
      }),
    );
    errors.sort((a, b) => a - b);
    expect(errors.length).toBeGreaterThanOrEqual(15);
    expect(errors[Math.floor(errors.length / 2)]).toBeLessThan(0.5);
  });

  test('each front has the back that was on the other side of it', () => {
    expect(
      pad.sheets.map(({ front, back }) => front?.id.replace('front', 'back') === back?.id),
    ).toEqual(pad.sheets.map(() => true));
  });

  test('the pattern sets are those of the drawings', () => {
    const names = new Map<string, string>();
    reads.forEach(({ photo, sides }) =>
      sides.forEach(({ id }, at) => names.set(id, photo.sheets[at]!.pattern)),
    );
    const pairs = (sets: readonly (readonly string[])[]): Set<string> =>
      new Set(
        sets.flatMap((set) => set.flatMap((a) => set.filter((b) => a < b).map((b) => `${a} ${b}`))),
      );
    const real = pairs([...grouped(names).values()]);
    const found = pairs(grouping.patternSets);
    const right = [...found].filter((pair) => real.has(pair)).length;
    const f1 = (2 * right) / (found.size + real.size);
    expect(f1).toBeGreaterThan(0.9);
  });

  test('two or more sheets tie the others together, and the story has the colours of the pad', () => {
    expect(grouping.bridges.length).toBeGreaterThanOrEqual(2);
    expect(grouping.story.length).toBeGreaterThanOrEqual(5);
  });
});

describe('pad to plan', () => {
  test('the sheets can be cut as the scheme says', () => {
    expect(checkScheme(piecesOf(batch.cards).patterned, batch.scheme, usualSettings('in'))).toEqual(
      [],
    );
  });

  test('the plan stands up to the checker, and is worth at most its bound', () => {
    expect(checkPlan(ask, batch.plan)).toEqual([]);
    expect(batch.plan.value).toBeLessThanOrEqual(batch.plan.bound + 1e-9);
  });

  test('each layer has its paper or cardstock, each card its reason', () => {
    for (const card of batch.plan.cards) {
      const { layout } = batch.cards.find(({ number }) => number === card.number)!;
      expect(card.layers.map(({ layer }) => layer)).toEqual(layout.layers.map(({ id }) => id));
      for (const { layer, choice } of card.layers)
        expect(choice.kind === 'paper').toBe(
          layout.layers.find(({ id }) => id === layer)!.material === 'patterned',
        );
      expect(card.why.length).toBeGreaterThan(20);
    }
  });

  test('no card shows one sheet in two of its papers', () => {
    for (const { number, layers } of batch.plan.cards) {
      const { layout } = batch.cards.find((card) => card.number === number)!;
      const slots = layers.flatMap(({ choice }) => (choice.kind === 'paper' ? [choice.slot] : []));
      expect(new Set(slots).size).toBe(papersOf(layout).length);
    }
  });
});

describe('plan to pictures and guide', () => {
  const guideAsk = (): GuideAsk => ({
    title: 'Thank-you cards',
    pad,
    cards: batch.cards,
    scheme: batch.scheme,
    plan: batch.plan,
    supplies,
    ruler: 'in',
    picture: (side) => (swatches.has(side) ? side : null),
  });

  test('a card is drawn with the colours of its papers', async () => {
    const href = (side: string): string =>
      `data:image/jpeg;base64,${Buffer.from(swatches.get(side)!).toString('base64')}`;
    const svg = drawCard({ ...guideAsk(), picture: href }, 1);
    const png = await drawPng(svg, 320);
    expect([...png.slice(1, 4)]).toEqual([...Buffer.from('PNG')]);
    expect(png.length).toBeGreaterThan(10_000);
  });

  test('the guide is one PDF under 10 MB', async () => {
    const pdf = await printGuide(guideAsk(), swatches, 'letter');
    expect(Buffer.from(pdf.slice(0, 5)).toString()).toBe('%PDF-');
    expect(pdf.length).toBeGreaterThan(100_000);
    expect(pdf.length).toBeLessThan(10_000_000);
  });
});

function grouped(names: ReadonlyMap<string, string>): Map<string, string[]> {
  const groups = new Map<string, string[]>();
  for (const [id, name] of names) groups.set(name, [...(groups.get(name) ?? []), id]);
  return groups;
}
