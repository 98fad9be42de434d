import { describe, expect, it } from 'vitest';
import type { OpenedPixels, PhotoAsk, PhotoReading } from '../../server/photo/picture.ts';
import { readPhoto } from '../../server/photo/read-photo.ts';
import { shrink } from '../../server/images/shrink.ts';
import { light, photograph } from './scene.ts';
import type { Paper, Seen } from './scene.ts';
import { PRINTS, TABLES, plainPaint } from './scene-papers.ts';

const HEXES = ['#2d6f77', '#b5443c', '#35506e', '#3f6f52', '#8c3b4a', '#c9a227'];

function opened({ width, height, rgb }: Seen): OpenedPixels {
  const full = { width, height, rgb, primaries: 'srgb' } as const;
  return { full, preview: { ...shrink(full, 1), primaries: 'srgb' }, scale: 1 };
}

/** Papers on a grey desk, seen straight from above in even light; places and sizes in millimetres. */
function read(
  papers: readonly Paper[],
  span: Seen['corners'][0][number],
  ask: PhotoAsk,
): PhotoReading {
  const width = 800;
  const height = Math.round((width * span[1]) / span[0]);
  const seen = photograph({
    width,
    height,
    table: TABLES.greyDesk(),
    papers,
    seen: [
      [0, 0],
      [width, 0],
      [width, height],
      [0, height],
    ],
    span: { width: span[0], height: span[1] },
    light: () => [0.8, 0.8, 0.8],
    noise: 1.5,
    seed: 5,
  });
  return readPhoto(opened(seen), ask);
}

const SQUARES = { look: 'squares', sheetMillimetres: null } as const;

function plain(
  hex: string,
  centre: readonly [number, number],
  width: number,
  height = width,
): Paper {
  return { centre, turned: 1, width, height, paint: plainPaint(light(hex)) };
}

describe('squares beside larger things alike', () => {
  // ISO 216: A6 is 105 mm by 148 mm.
  const cards = [plain('#d8c4a0', [320, 90], 105, 148), plain('#b9a3c9', [320, 250], 105, 148)];

  it('six of 50 mm are the squares, and two A6 papers are none', () => {
    const six = HEXES.map((hex, at) =>
      plain(hex, [60 + 80 * (at % 3), 90 + 100 * Math.floor(at / 3)], 50),
    );
    const { sheets } = read([...six, ...cards], [420, 340], SQUARES);
    expect(sheets).toHaveLength(6);
    for (const { reading } of sheets) expect(reading.width / reading.height).toBeCloseTo(1, 0);
  });

  it('scraps of 20 mm give way to two squares, with a word where none are known', () => {
    const scraps = HEXES.map((hex, at) => plain(hex, [40 + 40 * at, 40], 20));
    const two = [plain('#8c3b4a', [90, 120], 60), plain('#2d6f77', [190, 120], 60)];
    const alone = read([...scraps, ...two], [290, 200], SQUARES);
    expect(alone.sheets).toHaveLength(2);
    expect(alone.notes.join(' ')).toContain('6 smaller things of one size');
    const chipColours = [{ l: 50, a: 0, b: 0 }];
    const tied = read([...scraps, ...two], [290, 200], { ...SQUARES, chipColours });
    expect(tied.sheets).toHaveLength(2);
    expect(tied.notes.join(' ')).not.toContain('smaller things');
  });
});

describe('sheets that are very small in the picture', () => {
  it('six at 0.7 % of it each are told of', () => {
    const side = 152.4;
    const papers = [0, 1, 2, 3, 4, 5].map((at): Paper => ({
      centre: [500 + 450 * (at % 3), 450 + 450 * Math.floor(at / 3)],
      turned: 2,
      width: side,
      height: side,
      paint: PRINTS.dots(at),
    }));
    const { sheets, notes } = read(papers, [2100, 1575], {
      look: 'sheets',
      sheetMillimetres: { width: side, height: side },
    });
    expect(sheets).toEqual([]);
    expect(notes.join(' ')).toContain('6 things have a sheet’s shape');
    expect(notes.join(' ')).toContain('come nearer');
  });
});
