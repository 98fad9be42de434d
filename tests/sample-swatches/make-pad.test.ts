import { describe, expect, it } from 'vitest';
import { tidewrack } from '../../sample-swatches/pad/demo-pads.ts';
import { makePad } from '../../sample-swatches/pad/make-pad.ts';
import type { PaperPad } from '../../sample-swatches/pad/paper-pad.ts';
import { patternOf } from '../../sample-swatches/paper/paper-side.ts';
import { difference } from '../../server/colour/difference.ts';
import { labFromHex } from '../../server/colour/spaces.ts';

const SEEDS = [1, 2, 3, 17, 400, 5000];

describe('a made-up pad', () => {
  it('is the same for the same seed and another for another', () => {
    expect(makePad(7)).toEqual(makePad(7));
    expect(JSON.stringify(makePad(7).sheets)).not.toBe(JSON.stringify(makePad(8).sheets));
  });

  it.each(SEEDS)('seed %i: has pattern sets, never both faces of one sheet', (seed) => {
    for (const sheets of [6, 12]) {
      const pad = makePad(seed, undefined, sheets);
      expect(pad.sheets).toHaveLength(sheets);
      expect(setsOf(pad).filter((sides) => sides.length > 1).length).toBeGreaterThanOrEqual(1);
      for (const { front, back } of pad.sheets) expect(patternOf(front)).not.toBe(patternOf(back));
    }
  });

  it.each(SEEDS)(
    'seed %i: colours of one print differ clearly, unless they are the same',
    (seed) => {
      for (const side of makePad(seed).sheets.flatMap(({ front, back }) => [front, back])) {
        if (side.design.kind === 'wash') continue;
        for (const [index, hex] of side.colours.entries())
          for (const other of side.colours.slice(0, index))
            if (hex !== other)
              expect(difference(labFromHex(hex), labFromHex(other))).toBeGreaterThan(10);
      }
    },
  );
});

describe("the pad 'Tidewrack'", () => {
  it('has twelve sheets, two or more pattern sets, one-way, tonal and kraft papers', () => {
    expect(tidewrack.sheets).toHaveLength(12);
    expect(setsOf(tidewrack).filter((sides) => sides.length > 1).length).toBeGreaterThanOrEqual(2);
    const sides = tidewrack.sheets.flatMap(({ front, back }) => [front, back]);
    expect(
      sides.some(({ design }) => design.kind === 'print' && design.drawing === 'harbour'),
    ).toBe(true);
    expect(sides.some(({ design }) => design.kind === 'wash')).toBe(true);
    expect(sides.some(({ stock }) => stock === 'kraft')).toBe(true);
  });

  it('has two sheets or more that carry at least four of its six colours on one face', () => {
    const story = ['#6b7136', '#e5735c', '#155862', '#e6d2a8', '#f8ede2', '#5f7080'];
    const carried = tidewrack.sheets.map(({ front, back }) =>
      Math.max(
        ...[front, back].map(({ colours }) => story.filter((hex) => colours.includes(hex)).length),
      ),
    );
    expect(carried.filter((count) => count >= 4).length).toBeGreaterThanOrEqual(2);
  });
});

function setsOf(pad: PaperPad): string[][] {
  const sets = new Map<string, string[]>();
  for (const side of pad.sheets.flatMap(({ front, back }) => [front, back]))
    sets.set(patternOf(side), [...(sets.get(patternOf(side)) ?? []), side.id]);
  return [...sets.values()];
}
