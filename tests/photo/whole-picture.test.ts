import { describe, expect, test } from 'vitest';
import type { OpenedPixels, Picture } from '../../server/photo/picture.ts';
import { readPhoto } from '../../server/photo/read-photo.ts';

/** Dots on a ground, out to the rim on all sides. */
function print(width: number, height: number): Picture {
  const rgb = new Uint8Array(3 * width * height);
  for (let y = 0, at = 0; y < height; y++)
    for (let x = 0; x < width; x++, at += 3) {
      const dot = Math.hypot((x % 40) - 20, (y % 40) - 20) < 12;
      rgb.set(dot ? [200, 90, 70] : [240, 230, 215], at);
    }
  return { width, height, rgb, primaries: 'srgb' };
}

function opened(picture: Picture): OpenedPixels {
  return { preview: picture, full: picture, scale: 1 };
}

/** ISO 216. */
const A5 = { width: 148, height: 210 };
const A6 = { width: 105, height: 148 };
const SIX_INCHES = { width: 152.4, height: 152.4 };

/** Woven checks, light, middling and dark, as far as the rim less so many pixels of table. */
function checks(width: number, height: number, every: number, table = 0): Picture {
  const rgb = new Uint8Array(3 * width * height);
  for (let y = 0, at = 0; y < height; y++)
    for (let x = 0; x < width; x++, at += 3) {
      const dark = Number(x % every < every / 2) + Number((y + 9) % every < every / 2);
      const isTable = Math.min(x, y, width - 1 - x, height - 1 - y) < table;
      // A little grain: no camera gives two pixels alike.
      const grain = ((x * 7919 + y * 104729) % 5) - 2;
      const colour = isTable
        ? [168, 169, 172]
        : [
            [243, 234, 216],
            [213, 140, 130],
            [184, 69, 58],
          ][dark]!;
      rgb.set(
        colour.map((value) => value + grain),
        at,
      );
    }
  return { width, height, rgb, primaries: 'srgb' };
}

describe('checks that fill a picture', () => {
  const ask = { look: 'sheets', sheetMillimetres: SIX_INCHES } as const;

  test.each([40, 64, 100, 160])('%i pixels wide are no sheets but one, unsure', (every) => {
    const { sheets } = readPhoto(opened(checks(600, 600, every)), ask);
    expect(sheets.map(({ corners }) => corners[2])).toEqual([{ x: 600, y: 600 }]);
    expect(sheets[0]!.confidence).toBeLessThan(0.5);
    expect(sheets[0]!.notes.join(' ')).toContain('drag its corners');
  });

  test('in a picture of another shape are told, and nothing is taken for a sheet', () => {
    const { sheets, notes } = readPhoto(opened(checks(800, 600, 64)), ask);
    expect(sheets).toEqual([]);
    expect(notes.join(' ')).toContain('One print fills the picture out to its rim');
  });

  test('but for a border of table are a sheet with edges of its own', () => {
    const { sheets } = readPhoto(opened(checks(600, 600, 64, 24)), ask);
    expect(sheets).toHaveLength(1);
    const [corner] = sheets[0]!.corners;
    expect(Math.hypot(corner.x - 24, corner.y - 24)).toBeLessThan(3);
  });
});

describe('a picture without an edge of a paper', () => {
  test('of the shape of a sheet is one sheet, unsure, with a word to her', () => {
    const { sheets } = readPhoto(opened(print(600, 600)), {
      look: 'sheets',
      sheetMillimetres: SIX_INCHES,
    });
    expect(sheets.map(({ corners }) => corners.map(({ x, y }) => [x, y]))).toEqual([
      [
        [0, 0],
        [600, 0],
        [600, 600],
        [0, 600],
      ],
    ]);
    expect(sheets[0]!.confidence).toBeLessThan(0.5);
    expect(sheets[0]!.notes.join(' ')).toContain('drag its corners');
  });

  test('of another shape holds no sheet: it may be an empty table', () => {
    const { sheets } = readPhoto(opened(print(800, 600)), {
      look: 'sheets',
      sheetMillimetres: SIX_INCHES,
    });
    expect(sheets).toEqual([]);
  });

  test.each([
    ['lying', 800, 600],
    ['standing', 600, 800],
    ['of another camera', 900, 600],
  ])('%s holds one oblong sheet, unsure, when a print fills it', (_, width, height) => {
    const { sheets } = readPhoto(opened(print(width, height)), {
      look: 'sheets',
      sheetMillimetres: A5,
    });
    expect(sheets).toHaveLength(1);
    expect(sheets[0]!.confidence).toBeLessThan(0.5);
    expect(sheets[0]!.corners[2]).toEqual({ x: width, y: height });
    expect(sheets[0]!.millimetresPerPixel! * sheets[0]!.reading.width).toBeCloseTo(
      width > height ? 210 : 148,
      -1,
    );
  });

  test('holds no oblong sheet when it shows a bare board', () => {
    const board = print(800, 600);
    const { sheets } = readPhoto(
      opened({ ...board, rgb: board.rgb.map((_, at) => 225 - (at % 3) - Math.floor(at / 90000)) }),
      { look: 'sheets', sheetMillimetres: A5 },
    );
    expect(sheets).toEqual([]);
  });

  test.each([
    ['lower', (_x: number, y: number) => y > 520],
    ['right', (x: number) => x > 520],
  ])('is one sheet, unsure, with its own plain border on the %s side', (_, isBorder) => {
    const whole = print(600, 600);
    const rgb = whole.rgb.map((value, at) => {
      const pixel = Math.floor(at / 3);
      return isBorder(pixel % 600, Math.floor(pixel / 600)) ? [70, 110, 120][at % 3]! : value;
    });
    const { sheets } = readPhoto(opened({ ...whole, rgb }), {
      look: 'sheets',
      sheetMillimetres: SIX_INCHES,
    });
    expect(sheets).toHaveLength(1);
    expect(sheets[0]!.corners[2]).toEqual({ x: 600, y: 600 });
    expect(sheets[0]!.confidence).toBeLessThan(0.5);
    expect(sheets[0]!.notes.join(' ')).toContain('plain strip runs along one side');
  });

  test.each([
    ['one side', -60, 640],
    ['two sides', -60, 860],
  ])(
    'is none where a sheet goes out of it on %s: that is told, and no sheet guessed',
    (_, left, right) => {
      const whole = print(800, 600);
      const rgb = whole.rgb.map((value, at) => {
        const pixel = Math.floor(at / 3);
        const [x, y] = [pixel % 800, Math.floor(pixel / 800)];
        return x >= left && x < right && y >= 70 && y < 530 ? value : 150;
      });
      const { sheets, notes } = readPhoto(opened({ ...whole, rgb }), {
        look: 'sheets',
        sheetMillimetres: A6,
      });
      expect(sheets).toEqual([]);
      expect(notes.join(' ')).toContain('outside the picture');
    },
  );

  test('with more things of one shape than sheets are laid shows the print of one paper', () => {
    const rgb = new Uint8Array(3 * 800 * 600).map((_, at) => {
      const pixel = Math.floor(at / 3);
      const isSquare = (pixel % 800) % 100 > 12 && Math.floor(pixel / 800) % 100 > 12;
      return isSquare ? [180, 60, 80][at % 3]! : 235;
    });
    const { sheets, notes } = readPhoto(
      opened({ width: 800, height: 600, rgb, primaries: 'srgb' }),
      { look: 'sheets', sheetMillimetres: SIX_INCHES },
    );
    expect(sheets).toEqual([]);
    expect(notes.join(' ')).toContain('the print of one paper');
  });

  test('of a wash that goes out of it on three sides is told of, and no sheet guessed', () => {
    const rgb = new Uint8Array(3 * 800 * 600).map((_, at) => {
      const [x, y] = [Math.floor(at / 3) % 800, Math.floor(at / 2400)];
      const wash = [120, 125, 80][at % 3]! + 6 * Math.sin(x / 50) * Math.cos(y / 40);
      return x < 540 ? wash : 165;
    });
    const { sheets, notes } = readPhoto(
      opened({ width: 800, height: 600, rgb, primaries: 'srgb' }),
      { look: 'sheets', sheetMillimetres: SIX_INCHES },
    );
    expect(sheets).toEqual([]);
    expect(notes.join(' ')).toContain('outside the picture');
  });
});
