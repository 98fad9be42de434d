import { describe, expect, test } from 'vitest';
import { toMillimetres } from '../../server/lengths/length.ts';
import { polygonArea } from '../../server/geometry/polygon.ts';
import { guideOnScreen } from '../../server/guide/guide-on-screen.ts';
import { slotsOnScreen } from '../../server/guide/slots-on-screen.ts';
import type { Extent, Spot } from '../../server/guide/drawing.ts';
import { measurePlace } from '../../server/guide/measure-place.ts';
import { parseLength } from '../../server/lengths/parse-length.ts';
import { guideWorld, layoutsOf } from './world.ts';

const ask = guideWorld(layoutsOf('us'));
const slots = slotsOnScreen(ask);
const cardstock = guideOnScreen(ask).cardstock.flatMap(({ sheets }) => sheets);
/** The drawn sheets of 6 in are 118 wide with 3 around, those of 8 1/2 in 140. */
const NEAR = 6;

describe('where a step is on the drawing', () => {
  test.each([
    ['papers', slots],
    ['cardstock', cardstock],
  ] as const)('of %s: a cut runs from edge to edge of the part that it divides', (_, sheets) => {
    for (const { steps, drawing } of sheets)
      for (const { shown } of steps) {
        if (shown.kind !== 'cut') continue;
        const { part, from, to } = shown;
        const [left, top] = [part.x, part.y];
        const [right, low] = [part.x + part.width, part.y + part.height];
        expect(left).toBeGreaterThanOrEqual(3 - 1e-9);
        expect(right).toBeLessThanOrEqual(drawing.width - 3 + 1e-9);
        expect(low).toBeLessThanOrEqual(drawing.height - 3 + 1e-9);
        if (from.x === to.x) {
          expect([from.y, to.y]).toEqual([expect.closeTo(top, NEAR), expect.closeTo(low, NEAR)]);
          expect(from.x).toBeGreaterThan(left);
          expect(from.x).toBeLessThan(right);
        } else {
          expect([from.x, to.x]).toEqual([expect.closeTo(left, NEAR), expect.closeTo(right, NEAR)]);
          expect(from.y).toBeGreaterThan(top);
          expect(from.y).toBeLessThan(low);
        }
      }
  });

  test('a number lies on its cut, and fewer numbers lie under measures than if all stood at one place', () => {
    let [chosen, fixed] = [0, 0];
    for (const { steps } of [...slots, ...cardstock]) {
      const cuts = steps.flatMap(({ shown }) => (shown.kind === 'cut' ? [shown] : []));
      for (const { part, from, to, badge, measure } of cuts) {
        const down = from.x === to.x;
        expect(Math.abs(down ? badge.x - from.x : badge.y - from.y)).toBeLessThan(3);
        const [start, end] = down ? [part.x, from.x] : [part.y, from.y];
        const under = (place: number): boolean =>
          cuts.some(({ badge: other }) => {
            const at = down ? part.y + place * part.height : part.x + place * part.width;
            const [along, across] = down ? [other.x, other.y] : [other.y, other.x];
            const near = along > start && along < end - 3 && Math.abs(across - at) < 2.9;
            return other !== badge && near;
          });
        if (under(measure)) chosen += 1;
        if (under(0.82)) fixed += 1;
      }
    }
    expect(fixed).toBeGreaterThan(0);
    expect(chosen).toBeLessThan(fixed);
  });

  test('a measure keeps clear of a label where there is room beside it', () => {
    const cut = {
      part: { x: 0, y: 0, width: 100, height: 100 },
      from: { x: 80, y: 0 },
      to: { x: 80, y: 100 },
    };
    const label = (y: number): Extent & Spot => ({ x: 20, y, width: 40, height: 10 });
    const placed = (...at: number[]): number =>
      measurePlace(cut, parseLength('4 in'), 'in', at.map(label));
    expect(placed()).toBe(0.82);
    for (const labels of [[77], [77, 13], [77, 13, 45]])
      for (const y of labels)
        expect(Math.abs(100 * placed(...labels) - (y + 5))).toBeGreaterThanOrEqual(9.5);
  });

  test('the first cut divides the whole sheet', () => {
    for (const { steps, drawing } of slots) {
      const { shown } = steps[0]!;
      expect(shown.part.width).toBeCloseTo(drawing.width - 6, NEAR);
      expect(shown.part.height).toBeCloseTo(drawing.height - 6, NEAR);
    }
  });

  test('a slant has two marks on the edges of its piece, and keeps less than the whole', () => {
    const slanted = [...slots, ...cardstock]
      .flatMap(({ steps }) => steps)
      .flatMap(({ shown }) => (shown.kind === 'finish' && shown.marks.length > 0 ? [shown] : []));
    expect(slanted.length).toBeGreaterThan(0);
    for (const { piece, kept, marks } of slanted) {
      expect(marks).toHaveLength(2);
      for (const { x, y } of marks)
        expect(x === 0 || y === 0 || x === piece.width || y === piece.height).toBe(true);
      expect(polygonArea(kept)).toBeLessThan(piece.width * piece.height - 1);
    }
  });

  test('the scores of a base lie on its flat sheet', () => {
    for (const { number, scores } of guideOnScreen(ask).cards) {
      const { fold } = ask.cards.find((card) => card.number === number)!.layout;
      expect(scores.places).toEqual(fold.scores.map(toMillimetres));
      const along = scores.from === 'left' ? scores.flat.width : scores.flat.height;
      for (const place of scores.places) expect(place).toBeLessThan(along);
    }
  });

  test('every piece of a sheet is named with its card', () => {
    for (const { slot, pieces } of slots) {
      const cut = ask.scheme.slots.find(({ id }) => id === slot)!.pieces.map(({ piece }) => piece);
      expect(pieces.map(({ card, layer }) => `${card} ${layer}`).sort()).toEqual(
        cut.map(({ card, layer }) => `${card} ${layer}`).sort(),
      );
    }
  });
});
