import { describe, expect, it } from 'vitest';
import { shrink } from '../../server/images/shrink.ts';
import { difference } from '../../server/colour/difference.ts';
import { readSolid } from '../../server/colour/read-solid.ts';
import { labFromHex } from '../../server/colour/spaces.ts';
import type { OpenedPixels, PhotoReading } from '../../server/photo/picture.ts';
import { readPhoto } from '../../server/photo/read-photo.ts';
import { light, photograph } from './scene.ts';
import type { Paint, Paper, Seen } from './scene.ts';
import { CARD_WHITE, TABLES, plainPaint } from './scene-papers.ts';

const SIDE = 60;
const COLOURS = ['#b5443c', '#e0b04a', '#3f6f52', '#35506e', '#8c3b4a', '#5a6672'];
const PALE = ['#efe3d6', '#dfe8ea', '#f0ead2', '#e6dfe8', '#e4ebdc', '#eee0dc'];

/** In place of a colour: no square lies there. */
const NONE = '';

interface Laid {
  readonly hexes: readonly string[];
  /** Millimetres between squares. */
  readonly gap: number;
  readonly table: Paint;
  readonly card: 'under' | 'beside' | 'none';
}

/** Squares in rows of three, seen from straight above. */
function seen({ hexes, gap, table, card }: Laid): Seen {
  const [left, top] = [45, 45];
  const columns = Math.min(3, hexes.length);
  const rows = Math.ceil(hexes.length / columns);
  const across = columns * (SIDE + gap) - gap;
  const down = rows * (SIDE + gap) - gap;
  const squares = hexes.flatMap((hex, index): Paper[] =>
    hex === NONE
      ? []
      : [
          {
            centre: [
              left + SIDE / 2 + (index % columns) * (SIDE + gap),
              top + SIDE / 2 + Math.floor(index / columns) * (SIDE + gap),
            ],
            turned: 0.4 * ((index % 3) - 1),
            width: SIDE,
            height: SIDE,
            paint: plainPaint(light(hex)),
          },
        ],
  );
  const white = { turned: 0.5, paint: plainPaint(CARD_WHITE) };
  const under: Paper = {
    ...white,
    centre: [left + across / 2, top + down / 2],
    width: across + 36,
    height: down + 36,
  };
  const beside: Paper = {
    ...white,
    centre: [left + across + 45, top + 40],
    width: 46,
    height: 80,
  };
  const span = { width: across + (card === 'beside' ? 160 : 90), height: down + 90 };
  const width = 800;
  const height = Math.round((width * span.height) / span.width);
  return photograph({
    width,
    height,
    table,
    // What comes first lies on top.
    papers:
      card === 'none' ? squares : card === 'under' ? [...squares, under] : [...squares, beside],
    seen: [
      [0, 0],
      [width, 0],
      [width, height],
      [0, height],
    ],
    span,
    light: (u) => [0.8 - 0.1 * u, 0.8 - 0.1 * u, 0.8 - 0.1 * u],
    noise: 1.5,
    seed: 4,
  });
}

function read(laid: Laid): { reading: PhotoReading; picture: Seen } {
  const picture = seen(laid);
  const { width, height, rgb } = picture;
  const full = { width, height, rgb, primaries: 'srgb' } as const;
  const photo: OpenedPixels = {
    full,
    preview: { ...shrink(full, 1), primaries: 'srgb' },
    scale: 1,
  };
  return { reading: readPhoto(photo, { look: 'squares', sheetMillimetres: null }), picture };
}

/** The most, in pixels, that a corner of a square is off the truth. */
function worstCorner({ reading, picture }: ReturnType<typeof read>, squares: number): number {
  return Math.max(
    ...picture.corners
      .slice(0, squares)
      .map((truth) =>
        Math.min(
          ...reading.sheets.map(({ corners }) =>
            Math.max(
              ...truth.map(([x, y]) =>
                Math.min(...corners.map((corner) => Math.hypot(corner.x - x, corner.y - y))),
              ),
            ),
          ),
        ),
      ),
  );
}

describe('squares of cardstock a few millimetres apart', () => {
  it.each([
    ['on a white card', 3, 'under', TABLES.greyDesk()],
    ['on a grey desk beside a white card', 3, 'beside', TABLES.greyDesk()],
    ['on wood beside a white card', 4, 'beside', TABLES.wood()],
  ] as const)('are found one by one and read %s', (_, gap, card, table) => {
    const found = read({ hexes: COLOURS, gap, table, card });
    expect(found.reading.sheets).toHaveLength(6);
    expect(found.reading.white.kind).toBe('found');
    expect(worstCorner(found, 6)).toBeLessThan(3);
    found.reading.sheets.forEach(({ reading, error }, index) => {
      expect(difference(readSolid(reading, error).lab, labFromHex(COLOURS[index]!))).toBeLessThan(
        4,
      );
    });
  });

  it('are none of them taken for the white card when all are pale and none lies there', () => {
    for (const hexes of [PALE.slice(0, 2), PALE]) {
      const found = read({ hexes, gap: 4, table: TABLES.greyDesk(), card: 'none' });
      expect(found.reading.sheets).toHaveLength(hexes.length);
      expect(found.reading.white.kind).toBe('none');
      expect(worstCorner(found, hexes.length)).toBeLessThan(3);
    }
  });

  it('are told of where a row has a hole, for a square of just the table’s colour is not seen', () => {
    const noted = (hexes: readonly string[]): string =>
      read({ hexes, gap: 14, table: TABLES.greyDesk(), card: 'none' }).reading.notes.join(' ');
    const [a, b, c, ...rest] = COLOURS;
    expect(noted([a!, NONE, c!, ...rest])).toContain('One place between the squares looks empty');
    expect(noted([a!, b!, c!, ...rest])).not.toContain('looks empty');
  });

  it('are found where the last row is not full', () => {
    const found = read({
      hexes: COLOURS.slice(0, 5),
      gap: 3,
      table: TABLES.greyDesk(),
      card: 'none',
    });
    expect(found.reading.sheets).toHaveLength(5);
    expect(worstCorner(found, 5)).toBeLessThan(3);
  });
});
