import { describe, expect, test } from 'vitest';
import { cutSteps } from '../../server/cutting/cut-steps.ts';
import { finishingSteps, slants } from '../../server/cutting/finishing-steps.ts';
import type { Corner, FinishingStep, Side } from '../../server/cutting/finishing-steps.ts';
import type { Piece, PlacedPiece, Slot } from '../../server/cutting/piece.ts';
import { cutPicture } from '../../server/guide/cut-picture.ts';
import { factsOf } from '../../server/guide/facts.ts';
import { finishLines } from '../../server/guide/finish-lines.ts';
import { CUT } from '../../server/guide/look.ts';
import type { Spot } from '../../server/guide/drawing.ts';
import type { Turn } from '../../server/guide/paint.ts';
import { lyingOf } from '../../server/guide/slot-pages.ts';
import { stepWords } from '../../server/guide/step-words.ts';
import { dashesOf, spotOn } from '../../server/guide/track.ts';
import { INCH, toMillimetres, units } from '../../server/lengths/length.ts';
import { parseSize } from '../../server/lengths/parse-size.ts';
import { flat } from './flat.ts';
import { guideWorld, layoutsOf } from './world.ts';

const at = (x: number, y: number): { x: typeof INCH; y: typeof INCH } => ({
  x: units(x * INCH),
  y: units(y * INCH),
});

/** 4 x 2 in; its upper edge climbs from 3/4 in down the left side to a mark 1 in before the right end. */
const SLANTED: Piece = {
  id: '1-band',
  card: 1,
  layer: 'band',
  role: 'strip',
  paper: 'a',
  size: parseSize('4 x 2 in'),
  shape: { kind: 'corners', points: [at(0, 0.75), at(3, 0), at(4, 0), at(4, 2), at(0, 2)] },
};

const CORNERS: readonly Corner[] = ['upper left', 'upper right', 'lower right', 'lower left'];
/** An edge joins two corners. */
const ENDS: Record<Side, readonly [Corner, Corner]> = {
  upper: ['upper left', 'upper right'],
  right: ['upper right', 'lower right'],
  lower: ['lower right', 'lower left'],
  left: ['lower left', 'upper left'],
};

/**
 * Where a corner of the piece, as it lies on the card, is on the sheet, in mm: worked out with corners alone,
 * no coordinates turned. A piece turned clockwise by a quarter had its upper left corner at the lower left; on
 * a sheet seen from its other side, left and right change.
 */
function cornerOnSheet(corner: Corner, placed: PlacedPiece, turn: Turn, other: boolean): Spot {
  const [w, h] = [placed.piece.size.width, placed.piece.size.height].map(toMillimetres);
  const [width, height] = placed.turned ? [h!, w!] : [w!, h!];
  const shown = CORNERS[(CORNERS.indexOf(corner) + 4 - turn / 90) % 4]!;
  const right = shown.endsWith('right') !== other;
  return {
    x: toMillimetres(placed.x) + (right ? width : 0),
    y: toMillimetres(placed.y) + (shown.startsWith('lower') ? height : 0),
  };
}

type Slant = Extract<FinishingStep, { kind: 'slant' }>;

/** From the named corner, so far along the named edge towards its other end. */
function markOnSheet(mark: Slant['from'], placed: PlacedPiece, turn: Turn, other: boolean): Spot {
  const [one, two] = ENDS[mark.edge];
  const from = cornerOnSheet(mark.corner, placed, turn, other);
  const to = cornerOnSheet(mark.corner === one ? two : one, placed, turn, other);
  const part = toMillimetres(mark.distance) / Math.hypot(to.x - from.x, to.y - from.y);
  return { x: from.x + part * (to.x - from.x), y: from.y + part * (to.y - from.y) };
}

const near = ({ x, y }: Spot): Record<'x' | 'y', unknown> => ({
  x: expect.closeTo(x, 6) as unknown,
  y: expect.closeTo(y, 6) as unknown,
});

function slotWith(...pieces: PlacedPiece[]): Slot {
  return { id: 'slot-1', pieces, cuts: { kind: 'piece', piece: pieces[0]!.piece.id } };
}

describe('a slant as it lies on the sheet', () => {
  test.each([
    [false, 0, false],
    [false, 0, true],
    [false, 180, false],
    [false, 180, true],
    [true, 90, false],
    [true, 90, true],
    [true, 270, false],
    [true, 270, true],
  ] as const)('turned %s, by %d, showing the other side %s', (turned, turn, other) => {
    const placed = { piece: SLANTED, x: units(INCH), y: units(INCH / 2), turned };
    const slot = slotWith(placed);
    const [step] = finishingSteps(slot, 4) as Slant[];
    const lying = { turnOf: () => turn, showsOther: () => other };
    const [line] = finishLines([step!], slot, lying);
    expect(line!.number).toBe(5);
    expect([step!.from.distance, step!.to.distance]).toEqual([0.75 * INCH, INCH]);
    const ends = [step!.from, step!.to].map((mark) => markOnSheet(mark, placed, turn, other));
    expect(line!.marks).toEqual(ends.map(near));
    expect(line!.tracks).toEqual([ends.map(near)]);
  });

  test('a slant that climbs to the right falls on the sheet of which the other side lies up', () => {
    const placed = { piece: SLANTED, x: units(0), y: units(0), turned: false };
    const slot = slotWith(placed);
    const steps = finishingSteps(slot, 0);
    const climbs = (other: boolean): number => {
      const lying = { turnOf: () => 0 as const, showsOther: () => other };
      const [from, to] = finishLines(steps, slot, lying)[0]!.marks;
      return ((to!.y - from!.y) * (to!.x - from!.x)) / Math.hypot(to!.x - from!.x);
    };
    expect(climbs(false)).toBeLessThan(0);
    expect(climbs(true)).toBeGreaterThan(0);
  });
});

describe.each(['us', 'a6', 'square'])('on the sheets of all our %s layouts', (suffix) => {
  const world = guideWorld(layoutsOf(suffix));
  // All fronts lie up, so that every other sheet gives its pieces from the side that lies down.
  const up = Object.fromEntries(world.scheme.slots.map(({ id }) => [id, 'front' as const]));
  const ask = { ...world, plan: { ...world.plan, up } };
  const facts = factsOf(ask);

  test('every finish has its line and its number; marks lie as the words say', () => {
    let [slanted, behind] = [0, 0];
    for (const one of facts.slots) {
      const lying = lyingOf(facts, one);
      const steps = cutSteps(one.slot);
      const finishes = steps.filter((step) => step.kind !== 'cut');
      const lines = finishLines(steps, one.slot, lying);
      expect(lines.map(({ number }) => number)).toEqual(finishes.map(({ number }) => number));
      for (const [index, step] of finishes.entries()) {
        if (step.kind !== 'slant') continue;
        const placed = one.slot.pieces.find(({ piece }) => piece.id === step.piece)!;
        const [turn, other] = [lying.turnOf(placed)!, lying.showsOther(placed)];
        const ends = [step.from, step.to].map((mark) => markOnSheet(mark, placed, turn, other));
        expect(lines[index]!.marks).toEqual(ends.map(near));
        slanted += 1;
        behind += other ? 1 : 0;
      }
    }
    expect(slanted).toBeGreaterThan(0);
    if (suffix !== 'square') expect(behind).toBeGreaterThan(0);
  });

  test('two triangles of one rectangle are parted by one and the same line', () => {
    let pairs = 0;
    for (const one of facts.slots) {
      const lying = lyingOf(facts, one);
      for (const { piece, pair } of one.slot.pieces) {
        if (pair === undefined) continue;
        const lines = [piece.id, pair.with].map((id) => {
          const own = one.slot.pieces.find((placed) => placed.piece.id === id)!.piece;
          const [[from, to] = []] = slants(own.shape, own.size);
          const step = { kind: 'slant', number: 1, piece: id, from: from!, to: to! } as const;
          return finishLines([step], one.slot, lying)[0]!.marks.map(near);
        });
        expect([lines[0], [...lines[0]!].reverse()]).toContainEqual(lines[1]);
        pairs += 1;
      }
    }
    if (suffix !== 'square') expect(pairs).toBeGreaterThan(0);
  });

  test('every cut and every finish has its number on the drawing, once', () => {
    for (const one of facts.slots) {
      const steps = cutSteps(one.slot);
      const marks = cutPicture({
        slot: one.slot,
        sheet: ask.scheme.sheet,
        steps,
        scale: 0.7,
        face: [],
        ...lyingOf(facts, one),
      });
      const discs = flat(marks).filter(({ mark }) => mark.kind === 'area' && mark.fill === CUT);
      expect(discs).toHaveLength(steps.length);
    }
  });
});

test('a circle is cut all round, a notch along its two sides, round corners each for themselves', () => {
  const tracks = (shape: Piece['shape']): readonly (readonly Spot[])[] => {
    const slot = slotWith({
      piece: { ...SLANTED, shape },
      x: units(0),
      y: units(0),
      turned: false,
    });
    const lying = { turnOf: () => 0 as const, showsOther: () => false };
    return finishLines(finishingSteps(slot, 0), slot, lying)[0]!.tracks;
  };
  const [round, ...more] = tracks({ kind: 'circle' });
  expect(more).toEqual([]);
  expect(round![0]).toEqual(round!.at(-1));
  expect(tracks({ kind: 'banner', notch: units(INCH) })).toEqual([
    [
      { x: 101.6, y: 0 },
      { x: 76.2, y: 25.4 },
      { x: 101.6, y: 50.8 },
    ].map(near),
  ]);
  expect(tracks({ kind: 'rounded', radius: units(INCH / 4) })).toHaveLength(4);
});

test('a place on a track is told by a part of its length; dashes go on around its corner', () => {
  const track = [
    { x: 0, y: 0 },
    { x: 4, y: 0 },
    { x: 4, y: 4 },
  ];
  expect(spotOn(track, 0)).toEqual({ x: 0, y: 0 });
  expect(spotOn(track, 0.25)).toEqual({ x: 2, y: 0 });
  expect(spotOn(track, 0.75)).toEqual({ x: 4, y: 2 });
  expect(spotOn(track, 1)).toEqual({ x: 4, y: 4 });
  expect(dashesOf(track, 2, 1)).toEqual([
    { from: { x: 0, y: 0 }, to: { x: 2, y: 0 } },
    { from: { x: 3, y: 0 }, to: { x: 4, y: 0 } },
    { from: { x: 4, y: 0 }, to: { x: 4, y: 1 } },
    { from: { x: 4, y: 2 }, to: { x: 4, y: 4 } },
  ]);
});

test('dashes reach from end to end of a track, whatever its length and direction', () => {
  for (let turn = 1; turn <= 60; turn++) {
    const to = { x: 31.7 * Math.cos(turn), y: 7 * turn * Math.sin(turn) };
    const dashes = dashesOf([{ x: 0, y: 0 }, to], 2, 1.2);
    const whole = Math.hypot(to.x, to.y);
    const drawn = dashes.map(({ from, to: end }) => Math.hypot(end.x - from.x, end.y - from.y));
    const left = whole % 3.2;
    const expected = 2 * Math.floor(whole / 3.2) + Math.min(2, left);
    expect(drawn.reduce((sum, length) => sum + length, 0)).toBeCloseTo(expected, 6);
  }
});

test('a slant that ends in a corner needs one mark, and is cut from there to the corner', () => {
  const points = [at(0, 1), at(4, 0), at(4, 2), at(0, 2)];
  const piece: Piece = { ...SLANTED, shape: { kind: 'corners', points } };
  const slot = slotWith({ piece, x: units(0), y: units(0), turned: false });
  for (const [ruler, length] of [
    ['in', '1 in'],
    ['mm', '25 mm'],
  ] as const)
    expect(stepWords(finishingSteps(slot, 0), slot, ruler)[0]!.small).toContain(
      `Make a mark on the left edge, ${length} below the upper left corner. Cut from there to the upper right corner.`,
    );
});

test('a slanted piece is laid by its arrow, turned over where it lay so; plain cardstock by its size', () => {
  const slot = slotWith({ piece: SLANTED, x: units(0), y: units(0), turned: false });
  const steps = finishingSteps(slot, 0);
  const said = (turn: Turn | null, other: boolean): string =>
    stepWords(steps, slot, 'in', { turnOf: () => turn, showsOther: () => other })[0]!.small;
  expect(said(0, false)).toMatch(
    /^Shown side up, its arrow up\. Make a mark on the left edge, 3\/4 in below the upper left corner, and another on the upper edge, 1 in to the left of the upper right corner\. Cut from mark to mark\./,
  );
  expect(said(0, true)).toMatch(
    /^Turn it over: shown side up, its arrow up\. Make a mark on the left edge, 3\/4 in/,
  );
  expect(said(null, false)).toMatch(
    /^Lay it 4 in wide and 2 in high\. Make a mark on the left edge, 3\/4 in/,
  );
});
