import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cutScheme } from '../../server/cutting/cut-scheme.ts';
import { cutSteps, settingsOf } from '../../server/cutting/cut-steps.ts';
import type { CutStep, TrimmerStep } from '../../server/cutting/cut-steps.ts';
import { slants } from '../../server/cutting/finishing-steps.ts';
import { leftovers } from '../../server/cutting/leftovers.ts';
import type { Piece } from '../../server/cutting/piece.ts';
import { stacksOf } from '../../server/cutting/stacks.ts';
import { formatLength, formatSize } from '../../server/lengths/format-length.ts';
import { parseSize } from '../../server/lengths/parse-size.ts';
import { corners } from '../layouts/worlds.ts';
import { randomBatch } from './drawn.ts';
import { INCHES, piece } from './worlds.ts';

const anyBatch = fc.integer({ min: 1, max: 1_000_000 }).map(randomBatch);

fc.configureGlobal({ seed: 20 });
const SIX = parseSize('6 x 6 in');

function steps(...pieces: readonly Piece[]): CutStep[] {
  return cutSteps(cutScheme(pieces, SIX, INCHES).slots[0]!);
}

describe('the steps of the hands', () => {
  it('cuts the sheet first, and every part only once it lies free', () => {
    fc.assert(
      fc.property(anyBatch, ({ pieces, sheet, settings }) => {
        for (const slot of cutScheme(pieces, sheet, settings).slots) {
          const free = new Set(['sheet']);
          const out: string[] = [];
          for (const step of trimmer(cutSteps(slot))) {
            expect(free.delete(step.part)).toBe(true);
            for (const one of [step.first, step.second]) {
              if (one.kind === 'part') free.add(one.name);
              if (one.kind === 'piece') out.push(one.piece);
            }
          }
          if (slot.cuts.kind === 'piece') continue;
          expect([...free]).toEqual([]);
          expect(out.sort()).toEqual(slot.pieces.map((placed) => placed.piece.id).sort());
        }
      }),
      { numRuns: 60 },
    );
  });

  it('numbers from 1 and says when to turn and when the ruler stays', () => {
    const four = [1, 2, 3, 4].map((card) => piece(card, 'square', '3 x 3 in'));
    const found = trimmer(steps(...four));
    expect(found.map((step) => step.number)).toEqual([1, 2, 3]);
    expect(found.map((step) => formatLength(step.at, 'in'))).toEqual(['3 in', '3 in', '3 in']);
    expect(found.map((step) => step.turn)).toEqual([false, true, false]);
    expect(found.map((step) => step.sameSetting)).toEqual([false, true, true]);
    expect(settingsOf(found)).toBe(1);
  });

  it('sets the ruler once for strips of one width', () => {
    const strips = [1, 2, 3, 4, 5].map((card) => piece(card, 'strip', '1 x 6 in'));
    expect(settingsOf(steps(...strips))).toBe(1);
    expect(trimmer(steps(...strips))).toHaveLength(5);
  });

  it('marks a slant by two points measured from named corners', () => {
    const band = parseSize('100 x 50 mm');
    const shape = corners([0, 20], [100, 0], [100, 30], [0, 50]);
    const said = slants(shape, band).map((pair) =>
      pair.map(
        ({ corner, edge, distance }) =>
          `${formatLength(distance, 'mm')} from ${corner} along ${edge}`,
      ),
    );
    expect(said).toEqual([
      ['20 mm from upper left along left', '0 mm from upper right along right'],
      ['20 mm from lower right along right', '0 mm from lower left along left'],
    ]);
  });

  it('leaves the edges that lie on the rectangle to the trimmer, and numbers slants after it', () => {
    const half = piece(1, 'half', '3 x 4 in', { shape: corners([0, 0], [76.2, 0], [0, 101.6]) });
    const found = steps(half);
    expect(found.map((step) => step.kind)).toEqual(['cut', 'cut', 'slant']);
    expect(found.map((step) => step.number)).toEqual([1, 2, 3]);
  });

  it('names round pieces for finishing by hand', () => {
    const disc = piece(1, 'disc', '2 x 2 in', { shape: { kind: 'circle' } });
    expect(steps(disc).at(-1)).toMatchObject({
      kind: 'finish',
      piece: 'card-1-disc',
      shape: { kind: 'circle' },
    });
  });
});

describe('what is left over', () => {
  it('stays in one piece where it can, and is listed with its size', () => {
    const scheme = cutScheme([piece(1, 'panel', '4 x 6 in')], SIX, INCHES);
    expect(leftovers(scheme).map(({ slot, size }) => `${slot} ${formatSize(size, 'in')}`)).toEqual([
      'slot-1 2 x 6 in',
    ]);
  });

  it('adds up with the pieces to the sheets', () => {
    fc.assert(
      fc.property(anyBatch, ({ pieces, sheet, settings }) => {
        const scheme = cutScheme(pieces, sheet, settings);
        const area = (sizes: readonly { width: number; height: number }[]): number =>
          sizes.reduce((sum, { width, height }) => sum + width * height, 0);
        const cut =
          area(pieces.map(({ size }) => size)) + area(leftovers(scheme).map(({ size }) => size));
        expect(cut).toBe(scheme.slots.length * sheet.width * sheet.height);
      }),
      { numRuns: 60 },
    );
  });
});

describe('stacks', () => {
  it('lays sheets that are cut alike on each other, so many at once and no more', () => {
    const panels = [1, 2, 3, 4, 5].map((card) => piece(card, 'panel', '4 x 5 in'));
    const scheme = cutScheme([...panels, piece(6, 'square', '5 x 5 in')], SIX, INCHES);
    expect(
      stacksOf(scheme, 4)
        .map(({ slots }) => slots.length)
        .sort(),
    ).toEqual([1, 1, 4]);
  });
});

function trimmer(all: readonly CutStep[]): TrimmerStep[] {
  return all.filter((step) => step.kind === 'cut');
}
