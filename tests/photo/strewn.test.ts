import { describe, expect, it } from 'vitest';
import { shrink } from '../../server/images/shrink.ts';
import type { OpenedPixels, PhotoReading } from '../../server/photo/picture.ts';
import { readPhoto } from '../../server/photo/read-photo.ts';
import { laidOut, SHEET } from './laid-out.ts';
import { light, photograph } from './scene.ts';
import type { Paint, Paper, Scene, Seen } from './scene.ts';
import { TABLES } from './scene-papers.ts';

const SIZE = { width: SHEET, height: SHEET };
const DESK = light('#9a9a98');
const INK = light('#8c3b4a');

/** Motifs on a ground of exactly the desk's colour: without light or edge to tell it, the ground is desk. */
const lost: Paint = (x, y) => (Math.hypot((x % 19) - 9.5, (y % 19) - 9.5) < 4 ? INK : DESK);

function opened({ width, height, rgb }: Seen): OpenedPixels {
  const full = { width, height, rgb, primaries: 'srgb' } as const;
  return { full, preview: { ...shrink(full, 1), primaries: 'srgb' }, scale: 1 };
}

function three(change: (papers: readonly Paper[]) => readonly Paper[]): Scene {
  const scene = laidOut({
    columns: 3,
    rows: 1,
    gap: 20,
    turn: 2,
    table: TABLES.greyDesk(),
    seed: 11,
    width: 900,
    prints: ['bouquet'],
  });
  return { ...scene, papers: change(scene.papers) };
}

const read = (scene: Scene): PhotoReading =>
  readPhoto(opened(photograph(scene)), { look: 'sheets', sheetMillimetres: SIZE });
const noted = (scene: Scene): string => read(scene).notes.join(' ');

describe('a sheet of which only the motifs stand out from the table', () => {
  it('is reported when it lies partly outside the picture', () => {
    const outside = three(([a, b, c]) => [
      a!,
      b!,
      { ...c!, centre: [c!.centre[0] + 90, c!.centre[1]], paint: lost },
    ]);
    expect(noted(outside)).toContain('One paper lies partly outside the picture');
  });

  it('is found by its motifs when it lies whole in the picture, and is not sure of its edges', () => {
    const { sheets } = read(three(([a, b, c]) => [a!, { ...b!, paint: lost }, c!]));
    expect(sheets.map(({ confidence }) => confidence >= 0.5)).toEqual([true, false, true]);
  });

  it('is told of where its rows would have it, even when it looks just like the desk', () => {
    const bare: Paint = () => DESK;
    expect(noted(three(([a, b, c]) => [a!, { ...b!, paint: bare }, c!]))).not.toBe('');
    const five = laidOut({
      columns: 3,
      rows: 2,
      gap: 20,
      turn: 1,
      table: TABLES.greyDesk(),
      seed: 11,
      width: 600,
      prints: ['bouquet'],
    });
    const papers = five.papers.filter((_, index) => index !== 4);
    expect(noted({ ...five, papers })).toContain('One place between the sheets looks empty');
    const atCorner = five.papers.filter((_, index) => index !== 5);
    expect(noted({ ...five, papers: atCorner })).not.toContain('looks empty');
  });

  it('is not made up where the table is bare', () => {
    const gone = three(([a, b]) => [a!, b!]);
    expect(noted(gone)).not.toMatch(/outside the picture|could not be told apart/);
  });
});
