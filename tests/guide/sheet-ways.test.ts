import { describe, expect, test } from 'vitest';
import { sheetWays } from '../../server/guide/sheet-block.ts';
import type { StepWords } from '../../server/guide/step-words.ts';
import { PAGE } from '../../server/guide/page.ts';
import { flat } from './flat.ts';

const PLACE = { picture: { width: 118, height: 150 }, room: 214.5 } as const;

const steps = (count: number): StepWords[] =>
  Array.from({ length: count }, (_, at) => ({
    number: at + 1,
    main: `${at + 1}. from the left`,
    small:
      'Turn the part below cut 1 a quarter. Left: card 7 window, 1 1/2 x 1 3/8 in. Right: keep.',
  }));

const waysOf = (count: number, smallest = 20) =>
  sheetWays(
    {
      title: 'Sheet 3. Lay the front up.',
      draw: (scale) => [
        { kind: 'words', x: 0, y: 0, text: `picture ${(scale * 152.4).toFixed(0)}`, size: 3 },
      ],
      sheet: { width: 152.4, height: 152.4 },
      steps: steps(count),
      smallest,
    },
    PLACE,
  );

/** Where the first line of each step stands. */
function placesOf(marks: ReturnType<ReturnType<typeof waysOf>[0][0]['draw']>) {
  return flat(marks).flatMap(({ mark, place }) => {
    if (mark.kind !== 'words') return [];
    const number = /^(\d+)\. from/.exec(mark.text)?.[1];
    return number === undefined ? [] : [{ number: Number(number), ...place(mark) }];
  });
}

const pictureOf = (way: ReturnType<typeof waysOf>[0][0]): number =>
  flat(way.draw()).flatMap(({ mark }) =>
    mark.kind === 'words' ? (/^picture (\d+)/.exec(mark.text)?.slice(1).map(Number) ?? []) : [],
  )[0]!;

describe('the ways to set a sheet with its cuts', () => {
  test.each([1, 3, 5, 7, 9, 12, 14])(
    'of %d steps: each is there once, and the eye never goes back up to the left',
    (count) => {
      const [ways, ...more] = waysOf(count);
      expect(more).toEqual([]);
      for (const way of ways!) {
        const places = placesOf(way.draw());
        expect(places.map(({ number }) => number)).toEqual(
          steps(count).map(({ number }) => number),
        );
        let lowest = 0;
        places.forEach(({ x, y }, at) => {
          const before = places[at - 1];
          // Down a column, on to the top of one at its right, or to the left only below all that was.
          if (before !== undefined && x < before.x) expect(y).toBeGreaterThan(lowest);
          if (x === before?.x) expect(y).toBeGreaterThan(before.y);
          lowest = Math.max(lowest, y);
          expect(x).toBeLessThan(PAGE.width);
          expect(y).toBeLessThan(way.height);
        });
      }
    },
  );

  test('the larger the picture, the more a way is worth', () => {
    const [ways] = waysOf(5);
    const sizes = ways!.map(pictureOf);
    expect(sizes[0]).toBe(118);
    expect(ways!.length).toBeGreaterThan(5);
    expect(sizes).toEqual(sizes.toSorted((a, b) => b - a));
    expect(ways!.map(({ worth }) => worth)).toEqual(
      ways!.map(({ worth }) => worth).toSorted((a, b) => b - a),
    );
  });

  test('no picture is smaller than 56 mm where it has more than two cuts, or hides a narrow piece', () => {
    for (const count of [3, 6, 10, 14])
      expect(Math.min(...waysOf(count)[0]!.map(pictureOf))).toBeGreaterThanOrEqual(56);
    // A piece of 8 mm is 4.4 mm wide where the sheet of 152 mm is drawn 84 mm wide.
    const narrow = waysOf(5, 8)[0]!.map(pictureOf);
    expect(Math.min(...narrow)).toBeGreaterThanOrEqual(84);
  });

  test('what is too long for a page goes on in parts under its name, nothing lost', () => {
    const parts = waysOf(34);
    expect(parts.length).toBeGreaterThan(1);
    const numbers = parts.flatMap(([way]) => placesOf(way!.draw()).map(({ number }) => number));
    expect(numbers).toEqual(steps(34).map(({ number }) => number));
    for (const [way] of parts.slice(1)) {
      const said = flat(way!.draw()).map(({ mark }) => (mark.kind === 'words' ? mark.text : ''));
      expect(said[0]).toBe('Sheet 3, continued');
    }
    for (const [way] of parts) expect(way!.height).toBeLessThanOrEqual(PLACE.room);
  });
});
