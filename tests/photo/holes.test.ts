import { describe, expect, it } from 'vitest';
import type { Quad } from '../../server/geometry/points.ts';
import { polygonArea } from '../../server/geometry/polygon.ts';
import { rectangleQuad } from '../../server/geometry/quad.ts';
import type { Candidate, Overview } from '../../server/photo/find-sheets.ts';
import { holesIn } from '../../server/photo/holes.ts';
import { leftOver } from '../../server/photo/left-over.ts';
import { regionsOf } from '../../server/photo/regions.ts';

const [WIDTH, HEIGHT] = [420, 300];
const SIDE = 100;
const at = (column: number, row: number): Quad<'photo'> =>
  rectangleQuad<'photo'>(30 + 125 * column, 30 + 125 * row, SIDE, SIDE);

const candidate = (corners: Quad<'photo'>): Candidate => ({
  corners,
  fill: 1,
  area: polygonArea(corners),
});

/** What was seen where all is table but these boxes. */
function seen(...things: readonly Quad<'photo'>[]): Overview {
  const of = new Uint8Array(WIDTH * HEIGHT);
  for (const [from, , to] of things)
    for (let y = from.y; y < to.y; y++) of.fill(1, y * WIDTH + from.x, y * WIDTH + to.x);
  const regions = regionsOf({ width: WIDTH, height: HEIGHT, of }, 1);
  return {
    image: { width: WIDTH, height: HEIGHT, lab: new Float32Array(0) },
    table: { reached: of.map((thing) => 1 - thing), roughness: 1, share: 0.5 },
    things: { width: WIDTH, height: HEIGHT, of },
    candidates: [],
    unclear: regions,
    motifs: [],
    blocks: regions,
    cutOff: [],
  } as unknown as Overview;
}

describe('a hole in the rows of sheets', () => {
  const told = [at(0, 0), at(1, 0), at(2, 0), at(0, 1), at(2, 1)];
  const rest = told.map(candidate);

  it('is empty where nothing but table shows', () => {
    const { filled, empty } = holesIn(seen(...told), rest, []);
    expect(filled).toEqual([]);
    expect(empty).toEqual([at(1, 1)]);
  });

  it('is filled where a tenth of the place is no table', () => {
    const motif = rectangleQuad<'photo'>(180, 180, 40, 30);
    const { filled, empty } = holesIn(seen(...told, motif), rest, []);
    expect(filled.map(({ corners }) => corners)).toEqual([at(1, 1)]);
    expect(empty).toEqual([]);
  });

  it('is looked at where its grain is not the table’s, though all its colours are', () => {
    /** Woven cloth, and one place as smooth as a wash. */
    const woven = (smooth: Quad<'photo'>): Overview['image'] => {
      const lab = new Float32Array(3 * WIDTH * HEIGHT);
      for (let y = 0, pixel = 0; y < HEIGHT; y++)
        for (let x = 0; x < WIDTH; x++, pixel++) {
          const isSmooth =
            x >= smooth[0].x && x < smooth[2].x && y >= smooth[0].y && y < smooth[2].y;
          lab[3 * pixel] = 70 + (isSmooth ? 0 : (x % 4 < 2 ? 2 : -2) + (y % 4 < 2 ? 1 : -1));
        }
      return { width: WIDTH, height: HEIGHT, lab };
    };
    const between = holesIn({ ...seen(...told), image: woven(at(1, 1)) }, rest, []);
    expect(between.filled.map(({ corners }) => corners)).toEqual([at(1, 1)]);
    expect([between.empty, between.otherGrain]).toEqual([[], []]);
    const three = [at(0, 0), at(1, 0), at(0, 1)];
    const corner = (smooth: Quad<'photo'>): readonly Candidate[] =>
      holesIn({ ...seen(...three), image: woven(smooth) }, three.map(candidate), []).otherGrain;
    expect(corner(at(1, 1)).map(({ corners }) => corners)).toEqual([at(1, 1)]);
    expect(corner(at(2, 0))).toEqual([]);
  });

  it('is none where something else accounts for the place, if that is no mere motif', () => {
    const card = rectangleQuad<'photo'>(170, 170, 80, 60);
    const { filled, empty } = holesIn(seen(...told, card), rest, [candidate(card)]);
    expect([filled, empty]).toEqual([[], []]);
    const motif = rectangleQuad<'photo'>(190, 190, 30, 30);
    expect(holesIn(seen(...told, motif), rest, [candidate(motif)]).filled).toHaveLength(1);
  });

  it('is a sheet that reaches out of the picture where what lies in it goes on to the rim', () => {
    const low = (column: number, row: number): Quad<'photo'> =>
      rectangleQuad<'photo'>(30 + 125 * column, 72 + 125 * row, SIDE, SIDE);
    const three = [low(0, 0), low(1, 0), low(0, 1)];
    const stripes = [165, 200, 235].map((x) => rectangleQuad<'photo'>(x, 200, 12, 100));
    const { cutOff, filled } = holesIn(seen(...three, ...stripes), three.map(candidate), []);
    expect(filled).toEqual([]);
    expect(cutOff).toEqual([low(1, 1)]);
    const short = stripes.map(([{ x, y }]) => rectangleQuad<'photo'>(x, y, 12, 85));
    expect(holesIn(seen(...three, ...short), three.map(candidate), []).cutOff).toEqual([]);
  });

  it('is told beyond the end of a row too, where much of a place is no table', () => {
    const sheets = [at(0, 0), at(1, 0)].concat([at(0, 1)]).map(candidate);
    const seenThere = seen(at(0, 0), at(1, 0), at(0, 1), rectangleQuad<'photo'>(300, 50, 50, 50));
    expect(holesIn(seenThere, sheets, []).beyond).toEqual([at(2, 0)]);
    const speck = seen(at(0, 0), at(1, 0), at(0, 1), rectangleQuad<'photo'>(310, 60, 20, 20));
    expect(holesIn(speck, sheets, []).beyond).toEqual([]);
  });
});

describe('what is left over', () => {
  const [sheet] = [candidate(at(0, 0))];

  it('is a thing that no sheet accounts for, with its pixels', () => {
    const other = rectangleQuad<'photo'>(200, 40, 60, 50);
    const left = leftOver(seen(at(0, 0), other), [sheet]);
    expect(left).toHaveLength(1);
    expect(left[0]!.pixels).toBe(60 * 50);
    expect(left[0]!.corners).toEqual(other);
  });

  it('is nothing where the sheets were told', () => {
    expect(leftOver(seen(at(0, 0)), [sheet])).toEqual([]);
  });
});
