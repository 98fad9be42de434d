import { describe, expect, it } from 'vitest';
import { labFromHex } from '../../server/colour/spaces.ts';
import { difference } from '../../server/colour/difference.ts';
import { readSolid } from '../../server/colour/read-solid.ts';
import type { OpenedPixels, PhotoReading } from '../../server/photo/picture.ts';
import { readPhoto } from '../../server/photo/read-photo.ts';
import { shrink } from '../../server/images/shrink.ts';
import { laidOut, SHEET } from './laid-out.ts';
import { light, photograph } from './scene.ts';
import type { Corner, Scene, Seen } from './scene.ts';
import { CARD_WHITE, TABLES, plainPaint } from './scene-papers.ts';

const SIZE = { width: SHEET, height: SHEET };

function opened(seen: Seen): OpenedPixels {
  const raw = { width: seen.width, height: seen.height, rgb: seen.rgb };
  return {
    full: { ...raw, primaries: 'srgb' },
    preview: { ...shrink(raw, 1), primaries: 'srgb' },
    scale: 1,
  };
}

/** Largest corner error over the side, for the sheet that fits best, whichever corner it starts with. */
function worstCorner(truth: readonly Corner[], reading: PhotoReading): number {
  const side = Math.hypot(truth[1]![0] - truth[0]![0], truth[1]![1] - truth[0]![1]);
  const errors = reading.sheets.flatMap(({ corners }) =>
    [0, 1, 2, 3].map((turn) =>
      Math.max(
        ...truth.map(([x, y], k) => {
          const corner = corners[(k + turn) % 4]!;
          return Math.hypot(corner.x - x, corner.y - y);
        }),
      ),
    ),
  );
  return Math.min(...errors) / side;
}

function scene(change: Partial<Parameters<typeof laidOut>[0]>): Scene {
  return laidOut({
    columns: 2,
    rows: 1,
    gap: 20,
    turn: 6,
    table: TABLES.greyDesk(),
    seed: 11,
    width: 760,
    card: true,
    ...change,
  });
}

describe('finding sheets', () => {
  it.each([
    ['a white board', TABLES.whiteBoard(), 4],
    ['a grey desk', TABLES.greyDesk(), 5],
    ['wood', TABLES.wood(), 6],
    ['a dark mat with grid lines', TABLES.darkMat(), 7],
    ['a patterned cloth', TABLES.cloth(), 23],
  ] as const)('finds both sheets on %s, and the white card', (_, table, seed) => {
    const shot = scene({ table, seed, prints: ['dots', 'bouquet', 'gingham', 'darkEdge'] });
    const seen = photograph(shot);
    const reading = readPhoto(opened(seen), { look: 'sheets', sheetMillimetres: SIZE });
    expect(reading.sheets).toHaveLength(2);
    for (const truth of seen.corners.slice(0, 2))
      expect(worstCorner(truth, reading)).toBeLessThan(0.006);
    expect(reading.white.kind).toBe('found');
  });

  it('finds a white-ground sheet on a white board by its faint edge', () => {
    const seen = photograph(scene({ table: TABLES.whiteBoard(), prints: ['sparse'], seed: 21 }));
    const reading = readPhoto(opened(seen), { look: 'sheets', sheetMillimetres: SIZE });
    expect(reading.sheets).toHaveLength(2);
    for (const truth of seen.corners.slice(0, 2))
      expect(worstCorner(truth, reading)).toBeLessThan(0.01);
  });

  it.each([
    ['a white board', TABLES.whiteBoard(), 31],
    ['a grey desk', TABLES.greyDesk(), 32],
  ] as const)('finds six sheets that lie 2 mm apart on %s', (_, table, seed) => {
    const seen = photograph(
      scene({ columns: 3, rows: 2, gap: 2, turn: 0.2, table, seed, card: false, width: 800 }),
    );
    const reading = readPhoto(opened(seen), { look: 'sheets', sheetMillimetres: SIZE });
    expect(reading.sheets).toHaveLength(6);
    for (const truth of seen.corners) expect(worstCorner(truth, reading)).toBeLessThan(0.04);
  });

  it('leaves the empty place in a block of sheets empty', () => {
    const shot = scene({ columns: 3, rows: 2, gap: 2, turn: 0.2, seed: 33, card: false });
    const seen = photograph({ ...shot, papers: shot.papers.slice(0, 5) });
    const reading = readPhoto(opened(seen), { look: 'sheets', sheetMillimetres: SIZE });
    expect(reading.sheets).toHaveLength(5);
    for (const truth of seen.corners) expect(worstCorner(truth, reading)).toBeLessThan(0.04);
  });

  it('tells sheets in reading order, corners clockwise from the upper left', () => {
    const seen = photograph(
      scene({ columns: 2, rows: 2, card: false, prints: ['plain'], seed: 3 }),
    );
    const { sheets } = readPhoto(opened(seen), { look: 'sheets', sheetMillimetres: SIZE });
    expect(sheets).toHaveLength(4);
    seen.corners.forEach((truth, index) => {
      const { x, y } = sheets[index]!.corners[0];
      expect(Math.hypot(x - truth[0]![0], y - truth[0]![1])).toBeLessThan(4);
    });
  });

  it('leaves out a sheet that lies partly outside the picture, and says so', () => {
    const shot = scene({ columns: 2, rows: 1, card: false, prints: ['bouquet'], seed: 5 });
    const [first, second] = shot.papers;
    const outside = { ...second!, centre: [second!.centre[0] + 110, second!.centre[1]] as const };
    const seen = photograph({ ...shot, papers: [first!, outside] });
    const reading = readPhoto(opened(seen), { look: 'sheets', sheetMillimetres: SIZE });
    expect(reading.sheets).toHaveLength(1);
    expect(reading.notes.join(' ')).toContain('partly outside the picture');
  });

  it('takes the corners that she dragged instead of looking', () => {
    const seen = photograph(scene({ seed: 12 }));
    const shown = seen.corners[1]!.map(([x, y]) => ({ x, y }));
    const corners = [shown[0]!, shown[1]!, shown[2]!, shown[3]!] as const;
    const reading = readPhoto(opened(seen), {
      look: 'sheets',
      sheetMillimetres: SIZE,
      tap: { corners: [corners] },
    });
    expect(reading.sheets.map((sheet) => sheet.corners)).toEqual([corners]);
  });
});

describe('light and white', () => {
  const hex = '#c0705f';
  const plain = (gains: Scene['light'], card: boolean): Seen => {
    const shot = scene({ columns: 1, rows: 1, card, seed: 9, cast: 0, width: 480 });
    const [sheet, ...rest] = shot.papers;
    return photograph({
      ...shot,
      papers: [{ ...sheet!, paint: plainPaint(light(hex)) }, ...rest],
      light: gains,
    });
  };
  const lamp: Scene['light'] = (u, v) => {
    const level = 0.75 * (1.25 - 0.45 * u - 0.15 * v);
    return [1.15 * level, level, 0.72 * level];
  };

  it('undoes lamp light that falls off, by the table and the white card', () => {
    const reading = readPhoto(opened(plain(lamp, true)), {
      look: 'sheets',
      sheetMillimetres: SIZE,
    });
    const [sheet] = reading.sheets;
    const { lab, darkest, lightest } = readSolid(sheet!.reading, sheet!.error);
    // The card of the scene is a little lighter than the paper white that is assumed.
    expect(difference(lab, labFromHex(hex))).toBeLessThan(3);
    expect(lightest.l - darkest.l).toBeLessThan(6);
  });

  it('without a white card says so and claims less', () => {
    const withCard = readPhoto(opened(plain(lamp, true)), {
      look: 'sheets',
      sheetMillimetres: SIZE,
    });
    const without = readPhoto(opened(plain(lamp, false)), {
      look: 'sheets',
      sheetMillimetres: SIZE,
    });
    expect(without.white.kind).toBe('none');
    expect(without.notes.join(' ')).toContain('white card');
    expect(without.sheets[0]!.error.reference).toBeGreaterThan(
      2 * withCard.sheets[0]!.error.reference,
    );
  });

  it('takes a tapped white', () => {
    const seen = plain(lamp, true);
    const card = seen.corners[1]!.map(([x, y]) => ({ x, y }));
    const white = [card[0]!, card[1]!, card[2]!, card[3]!] as const;
    const reading = readPhoto(opened(seen), {
      look: 'sheets',
      sheetMillimetres: SIZE,
      tap: { white },
    });
    expect(reading.white.kind).toBe('tapped');
    const { lab } = readSolid(reading.sheets[0]!.reading, reading.sheets[0]!.error);
    expect(difference(lab, labFromHex(hex))).toBeLessThan(3);
  });
});

describe('cardstock and ink', () => {
  it('finds squares of cardstock beside a white card, in reading order', () => {
    const inks = ['#b5443c', '#e0b04a', '#3f6f52', '#35506e'];
    const shot = scene({ columns: 4, rows: 1, card: false, seed: 2 });
    const papers = shot.papers.map((paper, index) => ({
      ...paper,
      paint: plainPaint(light(inks[index]!)),
    }));
    const card = { ...papers[3]!, width: 60, height: 110, paint: plainPaint(CARD_WHITE) };
    const seen = photograph({ ...shot, papers: [...papers.slice(0, 3), card] });
    const { sheets, white } = readPhoto(opened(seen), { look: 'squares', sheetMillimetres: null });
    expect(white.kind).toBe('found');
    expect(sheets).toHaveLength(3);
    sheets.forEach(({ reading, error }, index) => {
      expect(difference(readSolid(reading, error).lab, labFromHex(inks[index]!))).toBeLessThan(3);
    });
  });

  it('finds smears on white card and reads what is covered', () => {
    const inks = ['#2d6f77', '#b5443c'];
    const shot = scene({ columns: 1, rows: 1, card: false, seed: 2, prints: ['plain'] });
    const seen = photograph({
      ...shot,
      papers: shot.papers.map((paper) => ({
        ...paper,
        paint: (x, y) => {
          const wave = 3 * Math.sin(x / 6);
          if (x < 30 || x > 120 + wave) return CARD_WHITE;
          if (Math.abs(y - 45 + wave) < 14) return light(inks[0]!);
          return Math.abs(y - 105 - wave) < 14 ? light(inks[1]!) : CARD_WHITE;
        },
      })),
    });
    const { sheets, white } = readPhoto(opened(seen), { look: 'squares', sheetMillimetres: null });
    expect(white.kind).toBe('found');
    expect(sheets).toHaveLength(2);
    sheets.forEach(({ reading, error }, index) => {
      expect(difference(readSolid(reading, error).lab, labFromHex(inks[index]!))).toBeLessThan(3);
    });
  });
});
